import { createHash } from 'node:crypto';
import { explanations } from './glossary.ts';
import { Html, html } from './html.ts';
import type { LivePart } from './live/live-part.ts';
import { liveStyle } from './live/live-style.ts';
import { style as pageStyle } from './style.ts';

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
  /** What lets the page answer back; null or left out: the page holds no code. */
  readonly live?: LivePart | null;
}

/** A link for each section that is on the page, by its heading. */
function contents(sections: Html): Html {
  const links = [...sections.source.matchAll(/<section id="([^"]+)"[^>]*>\s*<h2[^>]*>([^<]*)<\/h2>/g)];
  return html`
<nav aria-label="Contents"><ul>
${links.map((link) => html`<li><a href="#${link[1] ?? ''}">${link[2] ?? ''}</a></li>\n`)}</ul></nav>`;
}

/**
 * What a page may do: show its own style sheet, which is allowed by hash, and nothing else. One that answers back may
 * run its own script, allowed by hash, and workers that this makes of what stands in the page; where text becomes markup
 * or code, it has to go through a policy of the page.
 */
function policyOf(style: string, script: string | null): string {
  const hash = (text: string): string => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
  const rules = [`default-src 'none'`, `style-src ${hash(style)}`, `base-uri 'none'`, `form-action 'none'`];
  if (script !== null) {
    rules.push(`script-src ${hash(script)}`, 'worker-src blob:', 'trusted-types buildweek');
    rules.push(`require-trusted-types-for 'script'`);
  }
  return rules.join('; ');
}

/**
 * One HTML document that opens from disk and needs nothing else. Without a live part it holds no code at all; its policy
 * forbids any network.
 */
export function pageOf({ title, version, head, sections, footer, data, live = null }: PageParts): string {
  const script = live?.script ?? null;
  const style = script === null ? pageStyle : `${pageStyle}${liveStyle}`;
  const policy = policyOf(style, script);
  const words = explanations([head, sections]);
  const all = html`${sections}${words.section}`;
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
${contents(all)}
<main id="main">
${all}
</main>
</div>
<footer><p>${footer}</p></footer>${words.popovers}
${data}
${live?.data ?? null}
${script === null ? null : html`<script>${new Html(script)}</script>`}
</body>
</html>
`.source;
}
