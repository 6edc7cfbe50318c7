import {
  buildStages,
  formatLength,
  HOURS,
  kindOfStretch,
  STRETCH_WORDS,
  stretchName,
} from '@buildweek/charts';
import { type AskedMoment, formatNumber, type PartAnswer, type Timeline } from '@buildweek/results';
import { type DrawnChart, figure } from '../figure.ts';
import { type Html, html } from '../html.ts';
import { table } from '../table.ts';
import { clockTime } from './clock-time.ts';
import { wayName } from './way-name.ts';

function hoursCell(hours: number): string {
  return formatNumber(hours, HOURS.leastDecimals);
}

function sumsTable(answer: PartAnswer): Html {
  return table(
    'timelines-table',
    'One piece from the design to the finished part, hours by the clock; the play in the middle',
    [
      { title: 'Way' },
      { title: 'Asked for on' },
      { title: 'Finished after, h', numeric: true },
      { title: 'Hands, h', numeric: true },
      { title: 'By itself, h', numeric: true },
      { title: 'Waits for somebody, h', numeric: true },
    ],
    answer.asked.flatMap(({ label }) =>
      answer.ways.flatMap((way) =>
        way.timelines
          .filter((one) => one.asked === label)
          .map((one) => [
            wayName(answer, way.route),
            one.asked,
            hoursCell(one.hours),
            hoursCell(one.attendedHours),
            hoursCell(one.unattendedHours),
            hoursCell(one.closedHours),
          ]),
      ),
    ),
  );
}

function stretchesTable(id: string, caption: string, asked: AskedMoment, timeline: Timeline): Html {
  const builds = buildStages(timeline);
  return table(
    id,
    caption,
    [
      { title: 'Stage' },
      { title: 'What happens' },
      { title: 'From', numeric: true },
      { title: 'To', numeric: true },
      { title: 'Length', numeric: true },
    ],
    timeline.stretches.map((stretch) => [
      stretch.kind === 'wait'
        ? html`before <bdi>${stretchName({ ...stretch, kind: 'work' }, builds.has(stretch.stage))}</bdi>`
        : html`<bdi>${stretchName(stretch, builds.has(stretch.stage))}</bdi>`,
      STRETCH_WORDS[kindOfStretch(stretch)],
      clockTime(asked.hour + stretch.fromHour),
      clockTime(asked.hour + stretch.toHour),
      formatLength(stretch.toHour - stretch.fromHour),
    ]),
  );
}

function everyStretch(answer: PartAnswer): Html[] {
  return answer.ways.flatMap((way, wayIndex) =>
    answer.asked.flatMap((asked, askedIndex) => {
      const timeline = way.timelines.find((one) => one.asked === asked.label);
      if (timeline === undefined) return [];
      return [
        stretchesTable(
          `stretches-${wayIndex}-${askedIndex}`,
          `${way.route}, asked for on ${asked.label}: finished after ${formatLength(timeline.hours)}`,
          asked,
          timeline,
        ),
      ];
    }),
  );
}

/** One piece, from the design to the finished part, on each way and for each moment of asking. */
export function timelinesSection(answer: PartAnswer, charts: ReadonlyMap<string, DrawnChart>): Html {
  if (answer.ways.every((way) => way.timelines.length === 0)) return html``;
  return html`
<section id="timelines" aria-labelledby="timelines-title">
<h2 id="timelines-title">From the design to one finished part</h2>
<p class="lede">Hours by the clock from the complete file to the last piece of work on the part: nights and weekends
count. Work by hand goes on only while somebody is there; what ends in the night waits until somebody comes.</p>
${figure(charts, 'stage-timeline')}
${sumsTable(answer)}
<details class="more screen-only"><summary>Every stage with its times</summary>
${everyStretch(answer)}
</details>
</section>`;
}
