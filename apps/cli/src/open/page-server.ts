import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';

/** Nobody else than this computer is answered. */
const ADDRESS = '127.0.0.1';
/** Names by which a browser on this computer may ask; another one would be a page elsewhere that points here. */
const HOSTS = [ADDRESS, 'localhost'];

const HEADERS = {
  'Cache-Control': 'no-store',
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'X-Frame-Options': 'DENY',
} as const;

/** What the server shows. */
export interface ServedDocument {
  readonly html: string;
  /** Rises with each document. */
  readonly version: number;
}

/** Serves one page on the loopback address, and tells those who look at it when there is another. */
export class PageServer {
  private readonly server: Server;
  private readonly listeners = new Set<ServerResponse>();
  private document: ServedDocument;

  constructor(first: ServedDocument) {
    this.document = first;
    this.server = createServer((request, response) => this.answer(request, response));
  }

  /**
   * @param port 0 takes a free one
   * @returns the address of the page
   * @throws what the system says when the port cannot be had
   */
  async listen(port: number): Promise<string> {
    await new Promise<void>((resolve, reject) => {
      this.server.once('error', reject);
      this.server.listen({ host: ADDRESS, port, exclusive: true }, resolve);
    });
    return `http://${ADDRESS}:${this.port}/`;
  }

  /** Shows another document from now on. */
  show(document: ServedDocument): void {
    this.document = document;
    this.tell('reload', '');
  }

  /** Says how far the work is to those who wait for it. */
  progress(words: string): void {
    this.tell('progress', words);
  }

  async close(): Promise<void> {
    for (const listener of this.listeners) listener.end();
    await new Promise<void>((resolve) => {
      this.server.close(() => resolve());
      this.server.closeAllConnections();
    });
  }

  private get port(): number {
    return (this.server.address() as AddressInfo).port;
  }

  private answer(request: IncomingMessage, response: ServerResponse): void {
    const { method = '', headers, url = '' } = request;
    if (!HOSTS.some((host) => headers.host === `${host}:${this.port}`)) {
      refuse(response, 403, 'This page is served to this computer alone.');
      return;
    }
    if (method !== 'GET' && method !== 'HEAD') {
      refuse(response, 405, 'This page can only be read.');
      return;
    }
    const { pathname, searchParams } = new URL(url, `http://${ADDRESS}`);
    if (pathname === '/') {
      response.writeHead(200, { ...HEADERS, 'Content-Type': 'text/html; charset=utf-8' });
      response.end(method === 'HEAD' ? undefined : this.document.html);
      return;
    }
    if (pathname === '/changes' && method === 'GET') {
      this.follow(response, searchParams.get('version'));
      return;
    }
    refuse(response, 404, 'There is nothing here.');
  }

  private follow(response: ServerResponse, version: string | null): void {
    response.writeHead(200, { ...HEADERS, 'Content-Type': 'text/event-stream' });
    response.write('retry: 1000\n\n');
    this.listeners.add(response);
    response.on('close', () => this.listeners.delete(response));
    if (version !== String(this.document.version)) sendEvent(response, 'reload', '');
  }

  private tell(event: string, data: string): void {
    for (const listener of this.listeners) sendEvent(listener, event, data);
  }
}

function sendEvent(response: ServerResponse, event: string, data: string): void {
  response.write(`event: ${event}\ndata: ${data.replace(/\s+/g, ' ')}\n\n`);
}

function refuse(response: ServerResponse, status: number, reason: string): void {
  response.writeHead(status, { ...HEADERS, 'Content-Type': 'text/plain; charset=utf-8' });
  response.end(`${reason}\n`);
}
