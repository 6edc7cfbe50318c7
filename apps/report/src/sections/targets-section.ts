import { confidenceNote, targetConfidence, targetFound, VERDICT_MARKS } from '@buildweek/charts';
import type { Results, TargetResult, TargetVerdict } from '@buildweek/results';
import { type Html, html, nameText } from '../html.ts';
import { table } from '../table.ts';

const CLASSES: Readonly<Record<TargetVerdict, string>> = {
  met: 'met',
  missed: 'missed',
  'not decided': 'open',
};

/** What was promised of the lab, and whether it is kept; nothing where the scenario promises nothing. */
export function targetsSection({ targets, run }: Results): Html {
  if (targets.length === 0) return html``;
  return html`
<section id="targets" aria-labelledby="targets-title">
<h2 id="targets-title">Targets</h2>
${table(
  'targets-table',
  'What the scenario asks of the lab, and what was found, with its interval',
  [{ title: 'Target' }, { title: 'Found' }, { title: 'Verdict' }],
  targets.map((target) => [
    html`<strong>${nameText(target.wording)}</strong><span class="meaning">${nameText(target.meaning)}</span>`,
    targetFound(target, run.weeks),
    verdictMark(target),
  ]),
)}
<p class="note">${confidenceNote(targets)}</p>
</section>`;
}

/** The verdict on a target with its sign, and how clearly the replications speak for it. */
export function verdictMark(target: TargetResult): Html {
  const { verdict } = target;
  return html`<span class="verdict ${CLASSES[verdict]}"><span class="mark" aria-hidden="true">${VERDICT_MARKS[verdict]}</span> ${verdict}</span><span class="meaning">${targetConfidence(target)}</span>`;
}
