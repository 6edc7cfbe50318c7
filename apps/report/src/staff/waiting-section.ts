import { formatPlain, shownOption } from '@buildweek/charts';
import type { StaffAnswer, StaffPlan } from '@buildweek/results';
import { type DrawnChart, figure } from '../figure.ts';
import { type Html, html, nameText } from '../html.ts';
import { table } from '../table.ts';

const HOURS_PER_DAY = 24;
const DAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

/** When jobs wait for a person: the maps, and the numbers behind them. */
export function waitingSection(answer: StaffAnswer, charts: ReadonlyMap<string, DrawnChart>): Html {
  const [today] = answer.plans;
  if (today === undefined) return html``;
  const other = shownOption(answer);
  return html`
<section id="waiting" aria-labelledby="waiting-title">
<h2 id="waiting-title">Where a person is missing</h2>
<p class="lede">Jobs that are ready for hands and have nobody to work on them, hour by hour of the week.</p>
${figure(charts, 'waiting-map')}
${figure(charts, 'waiting-by-skill')}
${numbersOf(today, 'today')}
${other === null ? null : numbersOf(other, 'other')}
</section>`;
}

function numbersOf({ name, waiting }: StaffPlan, id: string): Html {
  return html`
<details><summary>The numbers of the map: ${nameText(name)}</summary>
${table(
  `waiting-${id}`,
  `Mean number of jobs that wait for a person, by hour and day: ${name}`,
  [{ title: 'Hour' }, ...DAYS.map((title) => ({ title, numeric: true }))],
  Array.from({ length: HOURS_PER_DAY }, (_, hour) => [
    `${String(hour).padStart(2, '0')}:00`,
    ...DAYS.map((_day, day) => formatPlain(waiting[day * HOURS_PER_DAY + hour] ?? 0)),
  ]),
)}
</details>`;
}
