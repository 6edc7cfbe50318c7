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
  /** The section in which a reader changes the lab and plays it. */
  readonly section: Html;
  /** What the script needs, as data that is not run. */
  readonly data: Html;
  /** The one script of the page. */
  readonly script: string;
}

/** How a lab is called, and what the page has to have of its files. */
export interface LiveOptions {
  /** What this lab is called beside a changed one. */
  readonly name: string;
  /** Texts of other files that the scenario names, by their path as it is written. */
  readonly files?: Readonly<Record<string, string>>;
}

/**
 * Lets a page play on from results: a section to change the lab, and the simulator with what it needs.
 *
 * @returns null when the page cannot read the scenario of the results by itself, or reads another lab of it, so that it
 *   would answer for something else than what it shows
 */
export function livePart(results: Results, { name, files }: LiveOptions): LivePart | null {
  const base = playBaseOf(results, name, files);
  const { plan } = new PlanReader(base);
  if (plan.kind === 'problems' || JSON.stringify(plan.lab) !== JSON.stringify(results.lab)) return null;
  const { page, worker } = bundles();
  return {
    section: liveSection(base, controlsOf(plan, base.text)),
    data: html`${jsonScript('play-base', base)}
${packed('simulator', worker)}`,
    script: page,
  };
}

/** A document inside a page in few bytes: gzip, base64; for what scripts and not people look for. */
export function packedJson(id: string, value: unknown): Html {
  return packed(id, gzipSync(JSON.stringify(value), { level: 9 }).toString('base64'));
}

function packed(id: string, base64: string): Html {
  return html`<script type="application/gzip;base64" id="${id}">${new Html(base64)}</script>`;
}
