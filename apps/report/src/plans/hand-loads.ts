import { formatPlain, formatShare } from '@buildweek/charts';
import type { PlanAnswer } from '@buildweek/results';
import { type Html, html, nameText } from '../html.ts';
import { table } from '../table.ts';

type HandFacts = Pick<PlanAnswer, 'handCalculation' | 'handSentence' | 'fewestByHand' | 'varied'>;

/** Loads by hand of a plan that was found by simulation. @param plan its name */
export function handLoads(
  { handCalculation: loads, handSentence, fewestByHand, varied }: HandFacts,
  plan: string,
): Html {
  if (loads.length === 0) return html``;
  return html`
<section id="hand" aria-labelledby="hand-title">
<h2 id="hand-title">The same by hand</h2>
<p class="lede">What a page of arithmetic says about ${nameText(plan)}: hours asked for over hours available. It knows
nothing of waiting, nights and chance, so it tells which plans cannot work, and not which do.</p>
${handSentence === '' ? null : html`<p>${nameText(handSentence)}</p>`}
${fewestLine(fewestByHand, varied)}
${table(
  'hand-table',
  'Load by hand calculation',
  [
    { title: 'Resource' },
    { title: 'Number', numeric: true },
    { title: 'Asked for, h a week', numeric: true },
    { title: 'Available, h a week', numeric: true },
    { title: 'Load', numeric: true },
    { title: 'What the figure rests on' },
  ],
  loads.map((hand) => [
    nameText(hand.name),
    hand.count,
    formatPlain(hand.demandHoursPerWeek),
    formatPlain(hand.availableHoursPerWeek),
    formatShare(hand.load),
    hand.note,
  ]),
  true,
)}
</section>`;
}

/** How many of each a page of arithmetic would have taken. */
function fewestLine(fewest: HandFacts['fewestByHand'], varied: HandFacts['varied']): Html | null {
  const own = fewest.filter(({ name }) => varied.some(({ what }) => what === name));
  if (own.length === 0) return null;
  return html`<p>By loads alone (below 85\u00a0%) one would have taken ${own.map(
    ({ name, comfortable }, index) =>
      html`${index === 0 ? '' : ', '}<bdi>${name}</bdi> ${comfortable ?? '(no number is enough)'}`,
  )}.</p>`;
}
