import { PERCENT, PLAIN } from '@buildweek/charts';
import type { Results } from '@buildweek/results';
import { type Html, html, nameText } from '../html.ts';
import { Reasons } from '../reasons.ts';
import { table } from '../table.ts';
import { estimateCell } from '../words.ts';

/** What is made outside instead of in the lab. */
export function sentOutSection(results: Results): Html {
  if (results.sentOut.length === 0) return html``;
  const reasons = new Reasons();
  const body = table(
    'sent-out-table',
    'Work sent out: shares of jobs, and what comes back in an average week, with intervals',
    [
      { title: 'Part' },
      { title: 'Jobs sent out, %', numeric: true },
      { title: 'Jobs back, a week', numeric: true },
      { title: 'Parts back, a week', numeric: true },
    ],
    results.sentOut.map(({ part, share, jobsPerWeek, partsPerWeek }) => [
      part === null ? 'All jobs' : nameText(part),
      estimateCell(share, PERCENT, { reasons }),
      estimateCell(jobsPerWeek, PLAIN),
      estimateCell(partsPerWeek, PLAIN),
    ]),
  );
  return html`
<section id="sent-out" aria-labelledby="sent-out-title">
<h2 id="sent-out-title">Sent out</h2>
<p class="lede">Jobs that a rule of the plan has made elsewhere. They take no hours of the lab, and count with the time
that they are away in its lead times and its promises.</p>
${body}${reasons.list()}
</section>`;
}
