import { createHash } from 'node:crypto';
import { Html, html } from './html.ts';
import { style } from './style.ts';

/** What a page is made of; everything but the title is HTML already. */
export interface PageParts {
  readonly title: string;
  /** Version of the program. */
  readonly version: string;
  readonly head: Html;
  readonly sections: Html;
  readonly footer: Html;
  /** The document that the page shows, as data. */
  readonly data: Html;
}

/** A link for each section that is on the page, by its heading. */
function contents(sections: Html): Html {
  const links = [...sections.source.matchAll(/<section id="([^"]+)"[^>]*>\s*<h2[^>]*>([^<]*)<\/h2>/g)];
  return html`
<nav aria-label="Contents"><ul>
${links.map((link) => html`<li><a href="#${link[1] ?? ''}">${link[2] ?? ''}</a></li>\n`)}</ul></nav>`;
}

/**
 * One HTML document that opens from disk and needs nothing else. It holds no code at all; its policy forbids scripts
 * and any network, and allows its own style sheet by hash.
 */
export function pageOf({ title, version, head, sections, footer, data }: PageParts): string {
  const styleHash = createHash('sha256').update(style).digest('base64');
  const policy = `default-src 'none'; style-src 'sha256-${styleHash}'; base-uri 'none'; form-action 'none'`;
  return html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<meta name="generator" content="buildweek ${version}">
<meta name="color-scheme" content="light">
<title>${title}</title>
<style>${new Html(style)}</style>
</head>
<body>
<a class="skip" href="#main">Go to the numbers</a>
${head}
<div class="page">
${contents(sections)}
<main id="main">
${sections}
</main>
</div>
<footer><p>${footer}</p></footer>
${data}
</body>
</html>
`.source;
}
