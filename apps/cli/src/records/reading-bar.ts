import type { TextStream } from '../terminal/style.ts';
import type { TableFile } from './table-file.ts';

const WIDTH = 24;
/** Milliseconds between two drawings. */
const PAUSE = 100;
/** Smaller files are read before anybody could look. */
const SMALL = 5_000_000;

/** How far a large table has been read; nothing at all where there is no terminal. */
export class ReadingBar {
  private readonly stream: TextStream;
  private drawnAt = Number.NEGATIVE_INFINITY;

  constructor(stream: TextStream) {
    this.stream = stream;
  }

  /** Shows progress while a table is read. */
  async during(
    { path, size }: TableFile,
    read: (onBytes: (bytes: number) => void) => Promise<void>,
  ): Promise<void> {
    await read((bytes) => {
      if (size >= SMALL) this.show(path, bytes, size);
    });
    this.clear();
  }

  clear(): void {
    if (this.drawnAt > 0) this.stream.write('\r\u001b[2K');
    this.drawnAt = Number.NEGATIVE_INFINITY;
  }

  private show(path: string, bytes: number, size: number): void {
    const now = performance.now();
    if (this.stream.isTTY !== true || now - this.drawnAt < PAUSE) return;
    this.drawnAt = now;
    const filled = Math.round((WIDTH * bytes) / size);
    const bar = '█'.repeat(filled) + '░'.repeat(WIDTH - filled);
    this.stream.write(`\r\u001b[2KReading ${path} ${bar} ${megabytes(bytes)} of ${megabytes(size)} MB`);
  }
}

function megabytes(bytes: number): number {
  return Math.round(bytes / 1e6);
}
