/**
 * A piece of HTML that may stand in a page as it is. Made by {@link html}; by hand only of what the program
 * wrote itself (the style sheet, drawn charts), never of anything from a scenario.
 */
export class Html {
  readonly source: string;

  constructor(source: string) {
    this.source = source;
  }
}

/** What may be put into a piece of HTML: text is escaped, HTML stays, lists are joined, null is nothing. */
export type Content = string | number | Html | null | readonly Content[];

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text as it must be written in HTML, between tags or in a quoted attribute. */
export function escapeText(text: string): string {
  return text.replace(/[&<>"']/g, (letter) => ESCAPES[letter] ?? letter);
}

function sourceOf(content: Content): string {
  if (content === null) return '';
  if (content instanceof Html) return content.source;
  if (typeof content === 'object') return content.map(sourceOf).join('');
  return escapeText(String(content));
}

/** HTML from a template; everything that is put in is escaped unless it is HTML already. */
export function html(strings: TemplateStringsArray, ...contents: readonly Content[]): Html {
  let source = strings[0] ?? '';
  contents.forEach((content, index) => {
    source += sourceOf(content) + (strings[index + 1] ?? '');
  });
  return new Html(source);
}

/** A name from the scenario: text, kept apart so that its writing direction does not turn its surroundings. */
export function nameText(name: string): Html {
  return html`<bdi>${name}</bdi>`;
}

/** A JSON document inside a page, in a script element that is data and is never run. */
export function jsonScript(id: string, value: unknown): Html {
  const json = JSON.stringify(value).replace(/</g, '\\u003c');
  return new Html(`<script type="application/json" id="${escapeText(id)}">${json}</script>`);
}
