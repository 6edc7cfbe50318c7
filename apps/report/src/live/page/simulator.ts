import type { Reply, Request } from '../shared/messages.ts';
import type { PlayBase } from '../shared/play-base.ts';
import type { WorkerStart } from '../worker/worker-start.ts';
import { dataOf } from './element.ts';
import { trusted } from './trusted.ts';

/** More workers than this bring nothing to a lab. */
const MOST_PLAYERS = 8;

/** The workers of the page: one that reads, compares and draws, and some that play. */
export class Simulator {
  private readonly director: Worker;

  private constructor(director: Worker) {
    this.director = director;
  }

  /**
   * Unpacks the simulator and starts its workers.
   * @param onReply called with what the director says
   * @param onFailure called when a worker cannot go on
   */
  static async start(
    onReply: (reply: Reply) => void,
    onFailure: (message: string) => void,
  ): Promise<Simulator> {
    const url = trusted.createScriptURL(URL.createObjectURL(await unpacked('simulator')));
    const failed = (event: ErrorEvent): void => {
      event.preventDefault();
      onFailure(event.message || 'its workers do not start');
    };
    const worker = (): Worker => {
      const made = new Worker(url);
      made.onerror = failed;
      return made;
    };
    const players = Array.from({ length: playerCount() }, () => {
      const { port1, port2 } = new MessageChannel();
      tell(worker(), { kind: 'play', director: port2 }, [port2]);
      return port1;
    });
    const director = worker();
    director.onmessage = ({ data }: MessageEvent<Reply>) => onReply(data);
    const base = JSON.parse(dataOf('play-base')) as PlayBase;
    tell(director, { kind: 'direct', base, players }, players);
    return new Simulator(director);
  }

  ask(request: Request): void {
    this.director.postMessage(request);
  }
}

function tell(worker: Worker, start: WorkerStart, ports: MessagePort[]): void {
  worker.postMessage(start, ports);
}

function playerCount(): number {
  return Math.max(1, Math.min(MOST_PLAYERS, navigator.hardwareConcurrency || 1));
}

/** A script that stands in the page as gzip in base64. */
async function unpacked(id: string): Promise<Blob> {
  const binary = atob(dataOf(id));
  const bytes = new Uint8Array(binary.length);
  for (let index = 0; index < binary.length; index++) bytes[index] = binary.charCodeAt(index);
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));
  return new Blob([await new Response(stream).arrayBuffer()], { type: 'text/javascript' });
}
