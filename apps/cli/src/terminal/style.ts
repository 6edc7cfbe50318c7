/** Where text goes: standard output, standard error. */
export interface TextStream {
  readonly isTTY?: boolean;
  write(text: string): unknown;
}

/** Emphasis in text, on a terminal; plain text everywhere else, and when NO_COLOR is set. */
export interface Style {
  heading(text: string): string;
  faint(text: string): string;
  warning(text: string): string;
}

/** Select Graphic Rendition of ECMA-48, section 8.3.117: begin and end of each emphasis. */
const BOLD = [1, 22] as const;
const FAINT = [2, 22] as const;
const YELLOW = [33, 39] as const;

/** @see https://no-color.org for the variable NO_COLOR */
export function styleFor(stream: TextStream): Style {
  const { NO_COLOR: noColour = '', TERM: terminal } = process.env;
  const plain = stream.isTTY !== true || noColour !== '' || terminal === 'dumb';
  const styled =
    ([begin, end]: readonly [number, number]) =>
    (text: string) =>
      plain ? text : `\u001b[${begin}m${text}\u001b[${end}m`;
  return { heading: styled(BOLD), faint: styled(FAINT), warning: styled(YELLOW) };
}

/** Text of a file on a terminal: what could steer the terminal comes out as a middle dot. */
export function harmless(text: string): string {
  return text.replace(/[\p{Cc}\p{Bidi_Control}]/gu, '·');
}
