import type { ComparisonAnswer } from '@buildweek/results';
import { type Html, html, nameText } from '../html.ts';

/** What was changed, and the scenarios in full. */
export function scenariosSection({ plans }: ComparisonAnswer): Html {
  return html`
<section id="scenarios" aria-labelledby="scenarios-title">
<h2 id="scenarios-title">The plans in full</h2>
${plans.map(
  ({ name, changes, scenario }) => html`
<details><summary>${nameText(name)}${changes.length === 0 ? null : ': what is changed, and the scenario'}</summary>
${changes.length === 0 ? null : html`<ul class="notes">${changes.map((change) => html`<li><bdi>${change}</bdi></li>`)}</ul>`}
<pre role="group" aria-label="Scenario of ${name}" tabindex="0"><bdi>${scenario.text}</bdi></pre></details>`,
)}
</section>`;
}

/** How the plans were played. */
export function planOrigin({
  program,
  run,
  plans,
}: Pick<ComparisonAnswer, 'program' | 'run'> & {
  readonly plans: readonly { readonly scenario: { readonly hash: string } }[];
}): Html {
  const facts: readonly (readonly [string, string])[] = [
    ['Program', `${program.name} ${program.version}`],
    ['Seed', run.seed],
    ['Replications of each plan', String(run.replications)],
    ['Measured weeks', String(run.weeks)],
    ['Ignored weeks', `${run.ignoredWeeks.weeks}: ${run.ignoredWeeks.note}`],
    ['Weeks to finish', String(run.capWeeks)],
    ['Scenarios, SHA-256', plans.map(({ scenario }) => scenario.hash.slice(0, 16)).join(', ')],
  ];
  return html`
<section id="origin" aria-labelledby="origin-title">
<h2 id="origin-title">How this was computed</h2>
<p class="lede">Every plan was played on the same random numbers: replication by replication the same jobs come at the
same times, and what exists in both plans has the same luck. So differences are much surer than the values themselves.
The time within which nine of ten jobs are finished is that of one period of the measured weeks, averaged over periods.
People are at work for a share of their hours on duty, machines for a share of the clock. The weeks
that are left out before the measured ones are those of the first plan, for all plans.</p>
<dl class="origin">${facts.map(([term, value]) => html`<div><dt>${term}</dt><dd><bdi>${value}</bdi></dd></div>`)}</dl>
</section>`;
}
