import { formatLevel } from '@buildweek/charts';
import type { AnsweredScenario, PlanRun, Results } from '@buildweek/results';
import { term } from '../glossary.ts';
import { type Html, html, nameText } from '../html.ts';
import { answerInWords } from '../sections/answer-in-words.ts';
import { cautionLine, fact } from '../sections/head.ts';

/** What the answers to questions about one scenario have in common. */
export interface QuestionAnswer {
  readonly program: { readonly name: string; readonly version: string };
  readonly scenario: AnsweredScenario;
  readonly run: PlanRun;
  readonly verdict: readonly string[];
  readonly cautions: Results['cautions'];
}

/**
 * The top of the page: which question, and the answer in words.
 *
 * @param kind of page, behind the name of the program
 * @param question behind the name of the scenario
 * @param facts terms with their values
 * @param picture the chart that shows why; or nothing
 */
export function questionHead(
  { scenario, run, verdict, cautions }: QuestionAnswer,
  kind: string,
  question: string,
  facts: readonly (readonly [string, string])[],
  picture: Html | null,
): Html {
  return html`
<header class="head">
<div class="inside">
<p class="program">Buildweek · ${kind}</p>
<h1>${nameText(scenario.name)}: ${question}</h1>
${answerInWords(verdict)}
${cautionLine(cautions, 'The plan')}
${picture}
<dl class="facts">
${facts.map(([term, value]) => fact(term, value))}
${fact('Played', html`${run.replications} ${term('replications')} of ${run.weeks} weeks each, seed “${nameText(run.seed)}”`)}
${fact('Intervals', html`hold with ${formatLevel(run.level)} ${term('confidence')}`)}
</dl>
</div>
</header>`;
}

/** What arithmetic says of the question that was played. */
export function byHandSection(byHand: readonly string[]): Html {
  if (byHand.length === 0) return html``;
  return html`
<section id="hand" aria-labelledby="hand-title">
<h2 id="hand-title">The same by hand</h2>
<ul class="notes">${byHand.map((one) => html`<li><bdi>${one}</bdi></li>`)}</ul>
</section>`;
}

/** What was taken for granted. */
export function assumptionsSection(assumptions: readonly string[]): Html {
  if (assumptions.length === 0) return html``;
  return html`
<section id="assumptions" aria-labelledby="assumptions-title">
<h2 id="assumptions-title">What was taken for granted</h2>
<ul class="notes">${assumptions.map((one) => html`<li><bdi>${one}</bdi></li>`)}</ul>
</section>`;
}

/** How it was played, with the scenario in full. */
export function questionOrigin({ program, run, scenario }: QuestionAnswer, lede: string): Html {
  const facts: readonly (readonly [string, string])[] = [
    ['Program', `${program.name} ${program.version}`],
    ['Seed', run.seed],
    ['Replications of each lab', String(run.replications)],
    ['Measured weeks', String(run.weeks)],
    ['Ignored weeks', `${run.ignoredWeeks.weeks}: ${run.ignoredWeeks.note}`],
    ['Weeks to finish', String(run.capWeeks)],
    ['Scenario, SHA-256', scenario.hash.slice(0, 16)],
  ];
  return html`
<section id="origin" aria-labelledby="origin-title">
<h2 id="origin-title">How this was computed</h2>
<p class="lede">${lede}</p>
<dl class="origin">${facts.map(([term, value]) => html`<div><dt>${term}</dt><dd><bdi>${value}</bdi></dd></div>`)}</dl>
<details><summary>The scenario</summary>
<pre role="group" aria-label="Scenario file" tabindex="0"><bdi>${scenario.text}</bdi></pre></details>
</section>`;
}

/** The line below a page. */
export function questionFooter({ program, run }: QuestionAnswer): Html {
  return html`Made by buildweek ${program.version}, seed “${run.seed}”, ${run.replications} replications of each lab. All names are
those of the scenario.`;
}
