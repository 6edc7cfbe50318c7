import { formatPlain, HOURS, MINUTES } from '@buildweek/charts';
import type { PartAnswer } from '@buildweek/results';
import { type DrawnChart, figure } from '../figure.ts';
import { type Html, html } from '../html.ts';
import { table } from '../table.ts';
import { spreadCell } from '../words.ts';
import { wayName } from './way-name.ts';

function overtakingsTable(answer: PartAnswer): Html {
  if (answer.overtakings.length === 0) {
    return html`<p>No way overtakes another within the numbers of pieces that were looked at.</p>`;
  }
  return table(
    'overtakings-table',
    'From how many pieces on one way is finished before another',
    [
      { title: 'Ahead from then on' },
      { title: 'Ahead until then' },
      { title: 'Typically from, pieces', numeric: true },
      { title: 'In one play of ten already from', numeric: true },
      { title: 'In one play of ten only from', numeric: true },
    ],
    [...answer.overtakings]
      .sort((one, other) => one.quantity - other.quantity)
      .map((one) => [
        wayName(answer, one.faster),
        wayName(answer, one.slower),
        one.quantity,
        one.low,
        one.high ?? 'not at all',
      ]),
  );
}

function quantitiesTable(answer: PartAnswer): Html {
  const quantities = [
    ...new Set(answer.ways.flatMap((way) => way.quantities.map((times) => times.quantity))),
  ].sort((one, other) => one - other);
  const moments = answer.asked.map((asked) => asked.label);
  return table(
    'quantities-table',
    'Typical values with their spread: one play in ten is below, one above',
    [
      { title: 'Way' },
      { title: 'Pieces', numeric: true },
      ...moments.map((label) => ({
        title: `All finished, h, asked for on ${label.replaceAll(' ', '\u00a0')}`,
        numeric: true,
      })),
      { title: 'Hours per part', numeric: true },
      { title: 'Minutes of people per part', numeric: true },
      { title: 'Builds', numeric: true },
    ],
    quantities.flatMap((quantity) =>
      answer.ways.flatMap((way) =>
        way.quantities
          .filter((times) => times.quantity === quantity)
          .map((times) => [
            wayName(answer, way.route),
            times.quantity,
            ...moments.map((label) => {
              const finished = times.finished.find((one) => one.asked === label);
              return finished === undefined ? '' : spreadCell(finished.hours, HOURS);
            }),
            spreadCell(times.hoursPerPart, HOURS),
            spreadCell(times.minutesOfPeoplePerPart, MINUTES),
            formatPlain(times.builds),
          ]),
      ),
    ),
    true,
  );
}

/** Hours per part against the number of pieces, and where one way overtakes another. */
export function hoursPerPartSection(answer: PartAnswer, charts: ReadonlyMap<string, DrawnChart>): Html {
  if (!charts.has('hours-per-part')) return html``;
  return html`
<section id="hours-of-a-part" aria-labelledby="hours-of-a-part-title">
<h2 id="hours-of-a-part-title">How many pieces make the difference</h2>
<p class="lede">What is slowest for one piece can be fastest for a hundred: a build that holds many parts shares its
preparation, warm-up, print and cool-down among them.</p>
${figure(charts, 'hours-per-part')}
${overtakingsTable(answer)}
</section>`;
}

/** Minutes of people per part against the number of pieces. */
export function minutesPerPartSection(charts: ReadonlyMap<string, DrawnChart>): Html {
  if (!charts.has('minutes-per-part')) return html``;
  return html`
<section id="minutes-of-a-part" aria-labelledby="minutes-of-a-part-title">
<h2 id="minutes-of-a-part-title">What it takes of people</h2>
<p class="lede">Hands are what a lab is short of most often. The way that is finished first may be the one that keeps
people busiest.</p>
${figure(charts, 'minutes-per-part')}
</section>`;
}

/** The numbers behind the charts. */
export function quantitiesSection(answer: PartAnswer): Html {
  if (answer.ways.every((way) => way.quantities.length === 0)) return html``;
  return html`
<section id="quantities" aria-labelledby="quantities-title">
<h2 id="quantities-title">The numbers</h2>
${quantitiesTable(answer)}
</section>`;
}
