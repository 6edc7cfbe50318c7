import { formatLevel } from '@buildweek/charts';
import type { Results } from '@buildweek/results';
import { type Html, html, nameText } from '../html.ts';

/** Letters from which on the answer is set smaller. */
const LONG_ANSWER = 90;

/** Seven days, five of them working: the mark of the page. */
function mark(): Html {
  return html`<svg class="mark" viewBox="0 0 34 22" aria-hidden="true" focusable="false"><path d="M0 22V8h4v14zM5 22V3h4v19zM10 22V0h4v22zM15 22V5h4v17zM20 22V9h4v13z"/><path class="weekend" d="M25 22v-4h4v4zM30 22v-4h4v4z"/></svg>`;
}

function fact(term: string, value: string | number | Html): Html {
  return html`<div><dt>${term}</dt><dd>${value}</dd></div>`;
}

/** The top of the page: whose lab, what was played, and the answer in words. */
export function head(results: Results): Html {
  const { run, lab } = results;
  const [first, ...others] = results.headline;
  const units = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;
  const persons = lab.people.reduce((sum, group) => sum + group.count, 0);
  return html`
<header class="head">
<div class="inside">
<p class="program">${mark()} Buildweek · capacity of a print lab</p>
<h1>${nameText(results.scenario.name)}</h1>
${first === undefined ? null : html`<p class="answer ${first.length > LONG_ANSWER ? 'long' : 'short'}">${first}</p>`}
${others.length === 0 ? null : html`<ul class="answers">${others.map((sentence) => html`<li>${sentence}</li>`)}</ul>`}
<dl class="facts">
${fact('The lab', `${units(results.machines.length, 'machine', 'machines')}, ${units(results.stations.length, 'station', 'stations')}, ${units(persons, 'person', 'persons')}, ${units(lab.parts.length, 'part type', 'part types')}`)}
${fact('The plan', `${units(run.weeks, 'week', 'weeks')} from ${lab.startDate}, with ${units(run.ignoredWeeks.weeks, 'ignored week', 'ignored weeks')} before`)}
${fact('Played', `${run.replications} times, seed “${run.seed}”`)}
${fact('Intervals', `hold with ${formatLevel(run.level)} confidence`)}
</dl>
</div>
</header>`;
}
