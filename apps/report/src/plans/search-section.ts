import { formatCount } from '@buildweek/charts';
import type { LookedPlan, PlanAnswer } from '@buildweek/results';
import { type Html, html, nameText } from '../html.ts';
import { table } from '../table.ts';

const VERDICTS: Readonly<Record<LookedPlan['verdict'], string>> = {
  met: 'meets every target',
  missed: 'misses',
  undecided: 'not decided',
  beaten: 'is beaten by',
  left: 'is among the best',
};

/** How far the search went: what was ruled out beforehand, what was played, how it was decided. */
export function searchSection(answer: PlanAnswer): Html {
  const { run, plans, ruledOut, looked, notLookedAt, promise, program } = answer;
  const used = looked.reduce((sum, { replications }) => sum + replications, 0);
  const facts: readonly (readonly [string, string])[] = [
    ['Program', `${program.name} ${program.version}`],
    ['Plans', formatCount(plans)],
    ['Ruled out before anything was played', formatCount(ruledOut.reduce((sum, one) => sum + one.plans, 0))],
    ['Played', formatCount(looked.length)],
    ['Dearer ones not looked at', formatCount(notLookedAt)],
    ['Replications that decided', formatCount(used)],
    ['Replications in all', formatCount(run.replications)],
    ['Measured weeks of each', String(run.weeks)],
    ['Ignored weeks', `${run.ignoredWeeks.weeks}, for all plans: ${run.ignoredWeeks.note}`],
    ['Seed', run.seed],
  ];
  return html`
<section id="origin" aria-labelledby="origin-title">
<h2 id="origin-title">How this was found</h2>
<p class="lede">Plans were taken in order of what they cost in a year whatever they do, and tested one after the other,
each on the same random numbers: after every replication a plan is called good, called bad, or played on. ${promise}
A plan is left out beforehand only when it is certain that it cannot do: that more machines or people always help is
not assumed.</p>
<dl class="origin">${facts.map(([term, value]) => html`<div><dt>${term}</dt><dd><bdi>${value}</bdi></dd></div>`)}</dl>
${
  ruledOut.length === 0
    ? null
    : table(
        'ruled-out-table',
        'Plans ruled out before anything was played',
        [{ title: 'Because such a plan' }, { title: 'Plans', numeric: true }, { title: 'For example' }],
        ruledOut.map((one) => [nameText(one.reason), formatCount(one.plans), nameText(one.example)]),
      )
}
<details><summary>All ${looked.length} plans that were played</summary>
${table(
  'looked-table',
  'Plans in the order in which they were played',
  [
    { title: 'Plan' },
    { title: `${answer.currency ?? 'Cost'} a year`, numeric: true },
    { title: 'Replications', numeric: true },
    { title: 'Verdict' },
  ],
  looked.map((one) => [
    nameText(one.name),
    one.committedCost === null ? '' : formatCount(Math.round(one.committedCost)),
    one.replications,
    html`${VERDICTS[one.verdict]}${one.by === '' ? '' : html` “<bdi>${one.by}</bdi>”`}`,
  ]),
)}
</details>
</section>`;
}

/** The scenario in full. */
export function planScenario({ scenario }: PlanAnswer): Html {
  return html`
<section id="scenario" aria-labelledby="scenario-title">
<h2 id="scenario-title">The scenario</h2>
<details><summary>${nameText(scenario.name)}</summary><pre role="group" aria-label="Scenario file" tabindex="0"><bdi>${scenario.text}</bdi></pre></details>
</section>`;
}
