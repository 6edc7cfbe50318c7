import { formatLevel } from '@buildweek/charts';
import { type Assumption, formatNumber, type Results, type Run } from '@buildweek/results';
import { term } from '../glossary.ts';
import { type Content, type Html, html } from '../html.ts';
import { table } from '../table.ts';

function sourceWords(assumption: Assumption): string {
  return assumption.line === null ? assumption.source : `${assumption.source}, line ${assumption.line}`;
}

function assumptionsTable(id: string, caption: string, assumptions: readonly Assumption[]): Html {
  return table(
    id,
    caption,
    [{ title: 'What' }, { title: 'Value' }, { title: 'Where from' }],
    assumptions.map((assumption) => [
      html`<bdi>${assumption.what}</bdi>`,
      html`<bdi>${assumption.value}</bdi>`,
      sourceWords(assumption),
    ]),
  );
}

/** Everything that was taken for granted, and where it came from; what nobody stated comes first. */
export function assumptionsSection(results: Results): Html {
  const from = (source: Assumption['source']): Assumption[] =>
    results.assumptions.filter((one) => one.source === source);
  const stated = from('stated in the scenario');
  const measured = from('measured from a mesh');
  const classes = from('default of a machine class');
  const defaults = from('default of the program');
  return html`
<section id="assumptions" aria-labelledby="assumptions-title">
<h2 id="assumptions-title">Assumptions</h2>
<p class="lede">Stated in the scenario: ${stated.length}.${
    measured.length === 0 ? '' : ` Measured from meshes: ${measured.length}.`
  } Taken from a machine class: ${classes.length}. Defaults of the
program: ${defaults.length}. What nobody stated is common practice at best: replace it by records of your own lab
first.</p>
<details class="more"><summary>What nobody stated (${classes.length + defaults.length})</summary>
${assumptionsTable('defaults-table', 'From machine classes and defaults', [...classes, ...defaults])}
</details>
<details class="more screen-only"><summary>What the scenario states (${stated.length + measured.length})</summary>
${assumptionsTable('stated-table', 'Stated in the scenario, and measured from its meshes', [...stated, ...measured])}
</details>
</section>`;
}

function precisionWords(run: Run): string {
  if (run.precision === null) return 'No precision was asked for.';
  const percent = (share: number): string => `${formatNumber(share * 100, 1)}\u00a0%`;
  const reached = run.precision.reached === null ? 'not known' : `± ${percent(run.precision.reached)}`;
  return `Asked for: ${run.precision.measure} to ± ${percent(run.precision.asked)}; reached: ${reached}.`;
}

/** Differences of less than this are rounding of the computer's arithmetic, hours. */
const ROUNDING = 0.0005;

function differenceWords(hours: number): string {
  return Math.abs(hours) < ROUNDING ? 'none' : formatNumber(hours, 3);
}

/** How the numbers came about, so that anybody can get them again. */
export function originSection(results: Results): Html {
  const { run, program, scenario } = results;
  const facts: readonly (readonly [Content, string])[] = [
    ['Program', `${program.name} ${program.version}`],
    ['Seed', run.seed],
    ['Replications', `${run.replications} of at most ${run.replicationLimit}; ended because: ${run.stopped}`],
    ['Precision', precisionWords(run)],
    ['Measured weeks', String(run.weeks)],
    [
      term('ignored weeks', 'Ignored weeks'),
      `${run.ignoredWeeks.weeks}, ${run.ignoredWeeks.method}. ${run.ignoredWeeks.note}`,
    ],
    [
      'Weeks to finish in',
      `${run.capWeeks} after the measured ones; arrivals go on; a job that is not finished by then counts as later than everything`,
    ],
    ['Confidence level', formatLevel(run.level)],
    ['Hash of the scenario', scenario.hash],
  ];
  return html`
<section id="origin" aria-labelledby="origin-title">
<h2 id="origin-title">How this was computed</h2>
<p class="lede">The lab was played event by event, again and again with fresh luck. Each number is an average over
${term('replications')} or a ${term('percentile')} over all jobs of all replications; its interval rests on the replications, which are
independent of each other, never on single jobs. The same scenario, seed and program version give the same numbers.</p>
<dl class="origin">${facts.map(([term, value]) => html`<div><dt>${term}</dt><dd><bdi>${value}</bdi></dd></div>`)}</dl>
${
  results.checks.length === 0
    ? null
    : table(
        'laws-table',
        'Laws that every replication must obey, and did or did not',
        [
          { title: 'Law' },
          { title: 'Replications', numeric: true },
          { title: 'Largest difference, h', numeric: true },
          { title: 'Verdict' },
        ],
        results.checks.map((check) => [
          check.law,
          check.replications,
          differenceWords(check.largestDifferenceHours),
          check.holds ? 'holds' : html`<strong>broken</strong>`,
        ]),
      )
}
</section>`;
}

/** The scenario file as it was read. */
export function scenarioSection(results: Results): Html {
  return html`
<section id="scenario" aria-labelledby="scenario-title">
<h2 id="scenario-title">The scenario</h2>
<details class="more"><summary>The file as it was read</summary>
<pre role="group" aria-label="Scenario file" tabindex="0">${results.scenario.text}</pre>
</details>
</section>`;
}
