import { createHash } from 'node:crypto';
import type { Results } from '@buildweek/results';
import { resetSVGDefIds } from 'vega';
import { drawnCharts } from './figure.ts';
import { Html, html, jsonScript } from './html.ts';
import { cautions, warnings } from './sections/cautions.ts';
import { queuesSection, weeksSection } from './sections/flow-sections.ts';
import { handSection } from './sections/hand-section.ts';
import { head } from './sections/head.ts';
import { hoursSection } from './sections/hours-section.ts';
import { keyNumbers } from './sections/key-numbers.ts';
import { leadTimeSection } from './sections/lead-time-section.ts';
import { assumptionsSection, originSection, scenarioSection } from './sections/origin-sections.ts';
import { machinesSection, peopleSection, stationsSection } from './sections/resources-section.ts';
import { troubleSection } from './sections/trouble-section.ts';
import { style } from './style.ts';

/** A link for each section that is on the page, by its heading. */
function contents(sections: Html): Html {
  const links = [...sections.source.matchAll(/<section id="([^"]+)"[^>]*>\s*<h2[^>]*>([^<]*)<\/h2>/g)];
  return html`
<nav aria-label="Contents"><ul>
${links.map((link) => html`<li><a href="#${link[1] ?? ''}">${link[2] ?? ''}</a></li>\n`)}</ul></nav>`;
}

/**
 * The page that leadership reads: one HTML document that opens from disk and needs nothing else. It holds no
 * code at all; its policy forbids scripts and any network. Everything that comes from the scenario is text.
 *
 * @param results the document that a run leaves behind; it is embedded as JSON
 */
export function renderReport(results: Results): string {
  resetSVGDefIds();
  const charts = drawnCharts(results);
  const sections = html`
${keyNumbers(results)}
${warnings(results)}
${leadTimeSection(results, charts)}
${hoursSection(results, charts)}
${cautions(results)}
${peopleSection(results, charts)}
${machinesSection(results, charts)}
${stationsSection(results, charts)}
${troubleSection(results)}
${queuesSection(results, charts)}
${weeksSection(charts)}
${handSection(results, charts)}
${assumptionsSection(results)}
${originSection(results)}
${scenarioSection(results)}`;
  const styleHash = createHash('sha256').update(style).digest('base64');
  const policy = `default-src 'none'; style-src 'sha256-${styleHash}'; base-uri 'none'; form-action 'none'`;
  return html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<meta name="generator" content="buildweek ${results.program.version}">
<meta name="color-scheme" content="light">
<title>${results.scenario.name} · capacity of the lab</title>
<style>${new Html(style)}</style>
</head>
<body>
<a class="skip" href="#main">Go to the numbers</a>
${head(results)}
<div class="page">
${contents(sections)}
<main id="main">
${sections}
</main>
</div>
<footer><p>Made by buildweek ${results.program.version} from the scenario with hash ${results.scenario.hash.slice(0, 12)}…,
seed “${results.run.seed}”, ${results.run.replications} replications. All names and numbers of the scenario are its author’s.</p></footer>
${jsonScript('results', results)}
</body>
</html>
`.source;
}
