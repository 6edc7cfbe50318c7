import { formatLength, watchedWeekChart } from '@buildweek/charts';
import type { WatchedJob, WatchedStretch, WatchedWeek } from '@buildweek/results';
import type { DrawnChart } from '../figure.ts';
import { figure } from '../figure.ts';
import { type Html, html, nameText } from '../html.ts';
import { type Row, table } from '../table.ts';
import { momentText } from './moment.ts';

const WAITS_FOR: Readonly<Record<string, string>> = {
  requester: 'the requester',
  'machine down': 'a repair',
  machine: 'a free machine or station',
  carrier: 'a carrier',
  batch: 'the batch to fill',
  shift: 'the shift',
  person: 'a person',
  'rest of the job': 'the rest of the job',
};

/** The job of a week that took longest of those that were finished; null in a week without any. */
export function longestJob({ jobs }: WatchedWeek): WatchedJob | null {
  const finished = jobs.filter(
    ({ outcome, until, asked }) => outcome === 'finished' && until <= 168 && asked >= 0,
  );
  const candidates = finished.length > 0 ? finished : jobs;
  return candidates.reduce<WatchedJob | null>(
    (longest, job) =>
      longest === null || job.until - job.asked > longest.until - longest.asked ? job : longest,
    null,
  );
}

/** One week of one replication as a picture, with the way of one job through it in a table. */
export function watchedWeekSection(week: WatchedWeek, traced: number | null): Html {
  const job = week.jobs.find((one) => one.job === traced) ?? null;
  const charts: ReadonlyMap<string, DrawnChart> = new Map([
    [
      'watched-week',
      { wide: watchedWeekChart(week, traced, 'wide'), narrow: watchedWeekChart(week, traced, 'narrow') },
    ],
  ]);
  return html`
<section id="one-week" aria-labelledby="one-week-title">
<h2 id="one-week-title">One week, machine by machine</h2>
<p class="lede">Week ${week.week} of ${week.weeks} of one replication, from Monday ${week.monday}: who did what when, and what it
waited for.</p>
${figure(charts, 'watched-week')}
${job === null ? null : storyTable(week, job)}
</section>`;
}

/** The way of a job, stretch by stretch. */
function storyTable({ monday }: WatchedWeek, job: WatchedJob): Html {
  const promised = job.due === null ? '' : `, promised for ${momentText(monday, job.due)}`;
  return html`
<details><summary>The way of job ${job.job} (${job.pieces} × ${nameText(job.part)}${job.rush ? ', rush' : ''}), step by step</summary>
<p>Asked for ${momentText(monday, job.asked)}${promised}; ${job.outcome} ${momentText(monday, job.until)}.</p>
${table(
  `story-${job.job}`,
  `Job ${job.job}: where it was and what it waited for`,
  [
    { title: 'From' },
    { title: 'To' },
    { title: 'Length', numeric: true },
    { title: 'What' },
    { title: 'Where, by whom' },
  ],
  job.stretches.map((stretch) => storyRow(stretch, monday)),
)}
</details>`;
}

function storyRow({ kind, from, to, step, at, causes }: WatchedStretch, monday: string): Row {
  const waits = causes.map(({ cause, hours }) => `${WAITS_FOR[cause] ?? cause} ${formatLength(hours)}`);
  const words = {
    event: step,
    work: step,
    lost: `${step}, lost to a changed file`,
    wait: `waits for ${waits.join(', ')} (before ${step})`,
  }[kind];
  return [
    momentText(monday, from),
    kind === 'event' ? '' : momentText(monday, to),
    kind === 'event' ? '' : formatLength(to - from),
    nameText(words),
    nameText(at),
  ];
}

/** All jobs that were in the lab in the week, as a table. */
export function jobsOfWeekSection({ jobs, monday }: WatchedWeek): Html {
  return html`
<section id="jobs" aria-labelledby="jobs-title">
<h2 id="jobs-title">Jobs that were in the lab</h2>
${table(
  'jobs-table',
  'By number; times by the clock of the lab',
  [
    { title: 'Job' },
    { title: 'Part' },
    { title: 'Pieces', numeric: true },
    { title: 'Asked for' },
    { title: 'Promised' },
    { title: 'Ended' },
    { title: 'Lead time', numeric: true },
    { title: 'Waited longest for' },
  ],
  jobs.map((job) => {
    const [wait] = job.waits;
    return [
      String(job.job),
      html`${nameText(job.part)}${job.rush ? ', rush' : ''}`,
      String(job.pieces),
      momentText(monday, job.asked),
      job.due === null ? '' : momentText(monday, job.due),
      job.outcome === 'finished' ? momentText(monday, job.until) : job.outcome,
      formatLength(job.until - job.asked),
      wait === undefined ? '' : `${WAITS_FOR[wait.cause] ?? wait.cause}, ${formatLength(wait.hours)}`,
    ];
  }),
)}
</section>`;
}
