import { formatLevel, type ProcessName } from '@buildweek/charts';
import type { Results } from '@buildweek/results';
import { term } from '../glossary.ts';
import { type Html, html, nameText } from '../html.ts';
import { answerInWords } from './answer-in-words.ts';

/** Names of the processes. Source: ISO/ASTM 52900. */
const PROCESSES: Readonly<Record<ProcessName, string | null>> = {
  MEX: 'material extrusion (MEX)',
  VPP: 'vat photopolymerization (VPP)',
  PBF: 'powder bed fusion (PBF)',
  other: null,
};

/** The processes of the lab in full, once on the page. */
function processesFact(results: Results): Html | null {
  const present = new Set(results.machines.map((machine) => machine.process));
  const names = [...present].flatMap((process) => PROCESSES[process] ?? []);
  return names.length === 0 ? null : fact('Processes', names.join(', '));
}

/** Topics that a reader has to know of before anything is decided. */
const FIRST_TOPICS: ReadonlyMap<string, string> = new Map([
  ['Unattended running', 'has machines run with nobody there'],
  ['Lone working', 'has people work alone'],
]);

/** One line that leads to the cautions where the plan has unattended nights or people alone. */
export function cautionLine(cautions: Results['cautions'], subject: string): Html | null {
  const words = cautions.flatMap(({ topic }) => FIRST_TOPICS.get(topic) ?? []);
  if (words.length === 0) return null;
  return html`<p class="beware">${subject} ${words.join(' and ')}: see <a href="#cautions">before this plan is followed</a>.</p>`;
}

/** A fact in the head of a page. */
export function fact(term: string, value: string | number | Html): Html {
  return html`<div><dt>${term}</dt><dd>${value}</dd></div>`;
}

/** The top of the page: whose lab, what was played, and the answer in words. */
export function head(results: Results): Html {
  const { run, lab } = results;
  const units = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;
  const persons = lab.people.reduce((sum, group) => sum + group.count, 0);
  return html`
<header class="head">
<div class="inside">
<p class="program">Buildweek · capacity of a print lab</p>
<h1>${nameText(results.scenario.name)}</h1>
${answerInWords(results.headline)}
${cautionLine(results.cautions, 'The plan')}
<dl class="facts">
${fact('The lab', `${units(results.machines.length, 'machine', 'machines')}, ${units(results.stations.length, 'station', 'stations')}, ${units(persons, 'person', 'persons')}, ${units(lab.parts.length, 'part type', 'part types')}`)}
${fact('The plan', html`${units(run.weeks, 'week', 'weeks')} from ${lab.startDate}, with ${run.ignoredWeeks.weeks} ${term('ignored weeks', run.ignoredWeeks.weeks === 1 ? 'ignored week' : 'ignored weeks')} before`)}
${processesFact(results)}
${fact('Played', html`${run.replications} times with fresh luck each time (${run.replications} ${term('replications')}), seed “${nameText(run.seed)}”`)}
${fact('Intervals', html`hold with ${formatLevel(run.level)} ${term('confidence')}`)}
</dl>
</div>
</header>`;
}
