import { formatPlain, formatShare, PERCENT, simulatedUse } from '@buildweek/charts';
import type { Results } from '@buildweek/results';
import { type DrawnChart, figure } from '../figure.ts';
import { type Html, html, nameText } from '../html.ts';
import { table } from '../table.ts';
import { estimateCell } from '../words.ts';
import { handLeadTimes } from './hand-lead-times.ts';

/** The hand calculation beside the simulation. */
export function handSection(results: Results, charts: ReadonlyMap<string, DrawnChart>): Html {
  if (results.handCalculation.length === 0) return html``;
  return html`
<section id="hand" aria-labelledby="hand-title">
<h2 id="hand-title">The same by hand</h2>
<p class="lede">What a page of arithmetic says about the same lab: hours asked for over hours available, and lead times
from formulas of waiting. It knows nothing of nights, shifts and rules; where it and the simulation differ much, ask why.</p>
${figure(charts, 'load-by-hand')}
${table(
  'hand-table',
  'Hand calculation beside the simulation',
  [
    { title: 'Resource' },
    { title: 'Number', numeric: true },
    { title: 'Asked for, h a week', numeric: true },
    { title: 'Available, h a week', numeric: true },
    { title: 'Load by hand', numeric: true },
    { title: 'Simulated at work, %', numeric: true },
    { title: 'Simulated held in all, %', numeric: true },
    { title: 'What the hand figure rests on' },
  ],
  results.handCalculation.map((hand) => {
    const use = simulatedUse(results, hand);
    return [
      nameText(hand.name),
      hand.count,
      formatPlain(hand.demandHoursPerWeek),
      formatPlain(hand.availableHoursPerWeek),
      formatShare(hand.load),
      use === null ? '' : estimateCell(use.working, PERCENT),
      use === null || use.held === null ? '' : estimateCell(use.held, PERCENT),
      hand.note,
    ];
  }),
  true,
)}
${handLeadTimes(results)}
</section>`;
}
