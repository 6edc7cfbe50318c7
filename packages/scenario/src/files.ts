import { WordingError } from './words/wording-error.ts';

/** Gives the text of a file that a scenario names, or null when there is none. */
export type FileResolver = (path: string) => string | null;

const MEASURED = /^measured\s+from\s+([^\s,]+)\s*,?\s*(.*)$/i;

/** A line of a file that a scenario names. */
export interface FileLine {
  readonly number: number;
  readonly text: string;
}

/** A file that a scenario names. */
export interface NamedFile {
  /** As it is written in the scenario. */
  readonly path: string;
  readonly text: string;
}

/** Other files that a scenario may name: lists that would be too long to stand in it. */
export class Files {
  private readonly resolve: FileResolver | null;
  private readonly texts = new Map<string, string>();

  constructor(resolve: FileResolver | null) {
    this.resolve = resolve;
  }

  /** Those that were read so far. */
  get read(): NamedFile[] {
    return [...this.texts].map(([path, text]) => ({ path, text }));
  }

  /**
   * Writes out `measured from times.txt, min` as `measured [12, 15, …] min`; other texts stay as they are.
   *
   * @throws WordingError when there is no such file, or a line of it is not a number
   */
  expand(text: string): string {
    const parts = MEASURED.exec(text);
    if (parts === null) return text;
    const [, path = '', unit = ''] = parts;
    const values = this.lines(path).map((line) => {
      if (/^\d+(\.\d+)?$/.test(line.text)) return line.text;
      const mended = /^\d+,\d+$/.test(line.text) ? line.text.replace(',', '.') : '12.5';
      throw new WordingError(
        `Line ${line.number} of ${path} says "${line.text}", which is not a number.`,
        'one number on each line, decimals with a point',
        mended,
      );
    });
    return `measured [${values.join(', ')}] ${unit}`;
  }

  /**
   * The lines of a file without comments (`# …`) and empty lines.
   *
   * @throws WordingError when there is no such file, or nothing in it
   */
  lines(path: string): FileLine[] {
    const lines = this.text(path)
      .replace(/^\uFEFF/, '')
      .split(/\r?\n/)
      .map((line, index) => ({ number: index + 1, text: line.replace(/#.*/, '').trim() }))
      .filter((line) => line.text !== '');
    if (lines.length === 0)
      throw new WordingError(`The file "${path}" is empty.`, 'one value on each line', path);
    return lines;
  }

  /**
   * The whole text of a file.
   *
   * @throws WordingError when there is no such file
   */
  text(path: string): string {
    const content = this.resolve?.(path) ?? null;
    if (content === null) {
      throw new WordingError(
        `There is no file "${path}" here.`,
        'a file, by its path from the scenario',
        path,
      );
    }
    this.texts.set(path, content);
    return content;
  }
}
