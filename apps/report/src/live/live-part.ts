import { gzipSync } from 'node:zlib';
import type { Results } from '@buildweek/results';
import { Html, html, jsonScript } from '../html.ts';
import { bundles } from './bundles.ts';
import { liveSection } from './live-section.ts';
import { controlsOf } from './shared/controls.ts';
import { playBaseOf } from './shared/play-base.ts';
import { PlanReader } from './shared/read-plan.ts';

/** What makes a page answer back. */
export interface LivePart {
  /** Where a reader changes the lab and plays it; or a line that says why this page cannot play on. */
  readonly section: Html;
  /** What the script needs, as data that is not run. */
  readonly data: Html;
  /** The one script of the page; null: it holds none. */
  readonly script: string | null;
}

/**
 * Lets a page play on from results: a section to change the lab, and the simulator with what it needs. A page that
 * cannot read the scenario of the results by itself, or reads another lab of it, would answer for something else than
 * what it shows; it says so, and holds no code.
 *
 * @param name what this lab is called beside a changed one
 */
export function livePart(results: Results, name: string): LivePart {
  const base = playBaseOf(results, name);
  const { plan } = new PlanReader(base);
  if (plan.kind === 'problems') {
    return silent('its scenario needs files that did not come along');
  }
  if (JSON.stringify(plan.lab) !== JSON.stringify(results.lab)) {
    return silent('what was played is not the lab of the scenario alone');
  }
  const { page, worker } = bundles();
  return {
    section: liveSection(base, controlsOf(plan, base.text)),
    data: html`${jsonScript('play-base', base)}
${packed('simulator', worker)}`,
    script: page,
  };
}

function silent(reason: string): LivePart {
  return {
    section: html`<p class="lede">This page cannot play a changed lab: ${reason}.</p>`,
    data: html``,
    script: null,
  };
}

/** A document inside a page in few bytes: gzip, base64; for what scripts and not people look for. */
export function packedJson(id: string, value: unknown): Html {
  return packed(id, gzipSync(JSON.stringify(value), { level: 9 }).toString('base64'));
}

function packed(id: string, base64: string): Html {
  return html`<script type="application/gzip;base64" id="${id}">${new Html(base64)}</script>`;
}
