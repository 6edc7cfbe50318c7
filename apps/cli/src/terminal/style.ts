import { styleText } from 'node:util';

/** Where text goes: standard output, standard error. */
export interface TextStream {
  readonly isTTY?: boolean;
  readonly columns?: number;
  write(text: string): unknown;
}

/** Emphasis in text, on a terminal; plain text everywhere else, and when NO_COLOR is set. */
export interface Style {
  heading(text: string): string;
  faint(text: string): string;
  warning(text: string): string;
}

/** @see https://no-color.org for the variable NO_COLOR */
export function styleFor(stream: TextStream): Style {
  const { NO_COLOR: noColour = '', TERM: terminal } = process.env;
  const plain = stream.isTTY !== true || noColour !== '' || terminal === 'dumb';
  const styled = (format: Parameters<typeof styleText>[0]) => (text: string) =>
    plain ? text : styleText(format, text);
  return { heading: styled('bold'), faint: styled('dim'), warning: styled('yellow') };
}

/** Text of a file on a terminal: what could steer the terminal comes out as a middle dot. */
export function harmless(text: string): string {
  return text.replace(/[\p{Cc}\p{Bidi_Control}]/gu, '·');
}
