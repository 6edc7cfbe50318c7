import { formatPlain, formatShare, PERCENT, unnamed } from '@buildweek/charts';
import {
  momentText,
  type OpenJob,
  type PromiseAnswer,
  type PromiseDay,
  timeOfDayText,
} from '@buildweek/results';
import { type DrawnChart, figure } from '../figure.ts';
import { type Content, type Html, html, nameText } from '../html.ts';
import { Reasons } from '../reasons.ts';
import { table } from '../table.ts';
import { estimateCell } from '../words.ts';
import { dateCell } from './request-section.ts';

const MIDDLE = 0.5;
const TOLD = 0.8;

/** What to start before the lab closes, and what stands then. */
export function daySection({ day }: PromiseAnswer): Html {
  if (day === null) return html``;
  return html`
<section id="today" aria-labelledby="today-title">
<h2 id="today-title">What to start</h2>
<p class="lede">The lab closes on ${momentText(day.closes.at)} and opens again on ${momentText(day.opens.at)}. The list is that of the play
that is most like all others; the shares say in how many plays the same jobs are started together on a machine of the group.</p>
${day.starts.length === 0 ? html`<p>No build of a job that is in the lab now is started before it opens again.</p>` : startsTable(day)}
<h3>When the lab opens again</h3>
${overnightTable(day)}
</section>`;
}

function startsTable({ starts }: PromiseDay): Html {
  return table(
    'starts-table',
    'Builds to start, in their order',
    [
      { title: 'Machine' },
      { title: 'Jobs' },
      { title: 'Usually' },
      { title: 'Start by' },
      { title: 'Who' },
      { title: 'Of the plays', numeric: true },
    ],
    starts.map(({ machine, jobs, start, startBy, by, share }) => [
      nameText(machine),
      jobs.map(
        ({ job, part, pieces }, index) =>
          html`${index === 0 ? '' : ', '}${nameText(job)}: ${pieces} × ${nameText(part)}`,
      ),
      momentText(start.at),
      startBy.at.slice(0, 10) === start.at.slice(0, 10) ? timeOfDayText(startBy.at) : momentText(startBy.at),
      by.map((one, index) => html`${index === 0 ? '' : ' and '}${nameText(one)}`),
      formatShare(share),
    ]),
  );
}

function overnightTable({ overnight }: PromiseDay): Html {
  return table(
    'overnight-table',
    'In which state each machine is in most plays when the lab opens, and how many of the closed hours it prints nothing in the mean',
    [
      { title: 'Machine' },
      { title: 'It' },
      { title: 'Since' },
      { title: 'Holds' },
      { title: 'Hours without print', numeric: true },
      { title: 'Of the plays', numeric: true },
    ],
    overnight.map(({ machine, state, since, jobs, standsHours, share }) => [
      nameText(machine),
      state,
      since === null ? '' : momentText(since.at),
      jobs.map((job, index) => html`${index === 0 ? '' : ', '}${nameText(job)}`),
      formatPlain(standsHours),
      formatShare(share),
    ]),
  );
}

/** The jobs that stand in the lab: chances, dates, and why some may be late. */
export function openJobsSection({ openJobs }: PromiseAnswer, charts: ReadonlyMap<string, DrawnChart>): Html {
  if (openJobs === null) return html``;
  const reasons = new Reasons();
  const told = openJobs.filter(({ risk, moved }) => risk.length + moved.length > 0);
  return html`
<section id="jobs" aria-labelledby="jobs-title">
<h2 id="jobs-title">The jobs in the lab</h2>
${figure(charts, 'open-jobs')}
${table(
  'jobs-table',
  'Chance of being on time, %, and dates',
  [
    { title: 'Job' },
    { title: 'What' },
    { title: 'Stands at' },
    { title: 'Due' },
    { title: 'On time', numeric: true },
    { title: 'Expected, 50 %' },
    { title: 'Ready, 80 %' },
  ],
  openJobs.map((job) => [
    nameText(job.job),
    html`${job.quantity} × ${nameText(job.part)}${job.rush ? ', rush' : ''}`,
    html`${nameText(job.stage)}${job.machine === null ? null : html`, in ${nameText(job.machine)}`}`,
    job.due === null ? '' : momentText(job.due.at),
    job.onTime === null ? '' : estimateCell(job.onTime, unnamed(PERCENT), { reasons }),
    readyCell(job, MIDDLE, reasons),
    readyCell(job, TOLD, reasons),
  ]),
  true,
)}
${reasons.list()}
${
  told.length === 0
    ? null
    : html`<h3>Why they may be late, or have moved</h3>
<ul class="notes">${told.map(({ job, risk, moved }) => html`<li><strong>${nameText(job)}</strong>: <bdi>${[...risk, ...moved].join(' ')}</bdi></li>`)}</ul>`
}
</section>`;
}

function readyCell({ dates }: OpenJob, chance: number, reasons: Reasons): Content {
  const date = dates.find(({ probability }) => probability === chance);
  return date === undefined ? '' : dateCell(date, date.ready, reasons);
}
