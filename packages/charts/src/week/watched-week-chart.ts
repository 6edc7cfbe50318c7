import { joinWords, type WatchedJob, type WatchedWeek } from '@buildweek/results';
import { CHART_WIDTH, type Chart, type ChartSize } from '../chart.ts';
import { formatLength } from '../part/spread-words.ts';
import { fitName } from '../text-width.ts';
import { FONT_SIZE, themeFor } from '../theme.ts';
import { hourOfWeekAxis, midnightLayer } from '../time-axes.ts';
import { dateOfWeek } from '../week-dates.ts';
import { DOINGS, type Doing, doingOf } from './doings.ts';
import { jobWayLayers, letterWords } from './job-way.ts';
import {
  doingLayers,
  jobNumberLayer,
  nameLayers,
  pixelAxis,
  placedRows,
  roomForNames,
  shadeLayers,
  tracedLayer,
} from './week-rows.ts';

const NAME_ROOM = 150;
const MARGIN = 16;
/** Room for the way of the traced job above the rows, CSS pixels. */
const WAY_ROOM: Readonly<Record<ChartSize, number>> = { wide: 66, narrow: 84 };
const WAY_MIDDLE: Readonly<Record<ChartSize, number>> = { wide: 26, narrow: 44 };

/**
 * Every machine, station and person as a row over one week, with what they do and wait for; when nobody is there is
 * shaded, and one job is traced through.
 *
 * @param week of one replication
 * @param traced number of a job of the week, from 1; null traces none
 */
export function watchedWeekChart(week: WatchedWeek, traced: number | null, size: ChartSize = 'wide'): Chart {
  const job = week.jobs.find((one) => one.job === traced) ?? null;
  const room = roomForNames(week.rows, size, NAME_ROOM);
  const width = CHART_WIDTH[size] - Math.max(room, job === null || size === 'narrow' ? 0 : 100) - MARGIN;
  const top = job === null ? 0 : WAY_ROOM[size];
  const { placed, bottom } = placedRows(week.rows, size, top);
  const height = bottom + 6;
  const pixelsPerHour = width / week.hours;
  return {
    id: 'watched-week',
    title: titleOf(week, job),
    description: descriptionOf(week, job),
    footnote: footnoteOf(week, job),
    spec: {
      width,
      height,
      config: themeFor(size),
      encoding: { x: hourOfWeekAxis(size, false), y: pixelAxis(height) },
      layer: [
        ...shadeLayers(week, placed, height),
        midnightLayer(),
        ...doingLayers(placed, size),
        ...tracedLayer(placed, traced),
        jobNumberLayer(placed, pixelsPerHour),
        ...nameLayers(placed, size, NAME_ROOM),
        ...(job === null ? [] : wayLayers(job, week, size, pixelsPerHour)),
      ],
    },
  };
}

function wayLayers(job: WatchedJob, week: WatchedWeek, size: ChartSize, pixelsPerHour: number) {
  const y = WAY_MIDDLE[size];
  const wide = size === 'wide';
  return [
    ...jobWayLayers(job, week.hours, y, pixelsPerHour),
    {
      data: { values: [{ y: wide ? y : 2, words: `job ${job.job}` }] },
      mark: {
        type: 'text' as const,
        align: wide ? ('right' as const) : ('left' as const),
        baseline: wide ? ('middle' as const) : ('top' as const),
        x: wide ? -14 : 0,
        fontWeight: 'bold' as const,
      },
      encoding: { y: { field: 'y', type: 'quantitative' as const }, text: { field: 'words' } },
    },
  ];
}

function jobName({ job, part, pieces }: WatchedJob): string {
  return `job ${job} (${pieces} × ${fitName(part, 200, FONT_SIZE.wide)})`;
}

function titleOf({ week, monday }: WatchedWeek, job: WatchedJob | null): string {
  const date = dateOfWeek(monday, 1);
  const when = `Week ${week}${date === null ? '' : `, from ${date.long}`}`;
  if (job === null) return `${when}: what every machine and everybody did`;
  const [wait] = job.waits;
  const waited =
    wait === undefined ? '' : `, ${formatLength(wait.hours)} of them waiting for ${waitWords(wait.cause)}`;
  const whole = formatLength(job.until - job.asked);
  return job.outcome === 'finished'
    ? `${when}: ${jobName(job)} took ${whole}${waited}`
    : `${when}: ${jobName(job)} was ${job.outcome} after ${whole}${waited}`;
}

function waitWords(cause: string): string {
  const words: Readonly<Record<string, string>> = {
    person: 'a person',
    shift: 'the shift',
    machine: 'a machine',
    batch: 'a batch to fill',
    carrier: 'a carrier',
    requester: 'the requester',
    'machine down': 'a repair',
  };
  return words[cause] ?? cause;
}

function descriptionOf(week: WatchedWeek, job: WatchedJob | null): string {
  const told = week.rows.map((row) => {
    const sums = new Map<Doing, number>();
    for (const span of row.spans) {
      const doing = doingOf(span);
      if (doing !== null) sums.set(doing, (sums.get(doing) ?? 0) + span.to - span.from);
    }
    const words = [...sums].map(([doing, hours]) => `${DOINGS[doing].label} ${formatLength(hours)}`);
    return `${fitName(row.name, 200, FONT_SIZE.wide)}: ${words.length === 0 ? 'nothing' : joinWords(words)}.`;
  });
  const way =
    job === null
      ? []
      : [
          `${jobName(job)}: work ${formatLength(job.work)}, ${job.waits
            .map(({ cause, hours }) => `wait for ${waitWords(cause)} ${formatLength(hours)}`)
            .join(', ')}.`,
        ];
  return [...way, ...told].join(' ');
}

function footnoteOf({ replication, seed }: WatchedWeek, job: WatchedJob | null): string {
  const letters = job === null ? '' : letterWords(job);
  return [
    `One week of one replication (number ${replication}, seed “${seed}”) as it was played, not an average: another goes otherwise.`,
    'Taller bars: hands are at work, or a machine stands broken; thin orange: it waits for somebody; thin pale: it waits to fill. Grey ground: nobody is there, or this person is off. Numbers in the bars are jobs.',
    ...(job === null
      ? []
      : [
          `The bar on top is the way of job ${job.job}: tall while something is done, lower while it waits${letters === '' ? '' : ` (${letters})`}; frames below mark where it was.`,
        ]),
  ].join(' ');
}
