import { formatPlain, HOURS, unnamed } from '@buildweek/charts';
import { differenceSentences, type HandEstimate, type Results } from '@buildweek/results';
import { type Content, type Html, html, nameText } from '../html.ts';
import { Reasons } from '../reasons.ts';
import { table } from '../table.ts';
import { estimateCell } from '../words.ts';

/** Rough lead times by formulas beside the simulated ones, and why they differ where they do much. */
export function handLeadTimes({ handLeadTimes: leadTimes, jobs }: Results): Html {
  if (leadTimes.length === 0) return html``;
  const differences = differenceSentences(leadTimes);
  const reasons = new Reasons();
  const body = html`
<h3>Lead times by hand</h3>
${
  differences.length === 0
    ? ''
    : html`<ul class="notes">${differences.map((sentence) => html`<li>${sentence}</li>`)}</ul>`
}
${table(
  'hand-lead-time-table',
  'Lead time by hand calculation beside the simulated mean, hours of an average job',
  [
    { title: 'Part' },
    { title: 'By hand, h', numeric: true },
    { title: 'Simulated, h', numeric: true },
    { title: 'Stages', numeric: true },
    { title: 'Trouble', numeric: true },
    { title: 'Requester', numeric: true },
    { title: 'Batch', numeric: true },
    { title: 'Machines, stations', numeric: true },
    { title: 'People', numeric: true },
  ],
  leadTimes.map(({ part, estimate }) => {
    const mean = jobs.find((one) => one.part === part && one.priority === 'all')?.meanLeadTime;
    return [
      part === null ? 'all jobs' : nameText(part),
      estimate.kind === 'refused'
        ? estimateCell(estimate, HOURS, { reasons })
        : formatPlain(estimate.leadTimeHours),
      mean === undefined ? '' : estimateCell(mean, unnamed(HOURS), { reasons }),
      ...partsOf(estimate),
    ];
  }),
  true,
)}
<p class="note">Formulas of waiting: stages by their means, trouble (breakdowns, builds in vain), the wait for a batch to fill,
queues for machines, stations and people by the approximation of Sakasegawa. A rough figure. It knows no shifts (a wait for people counts hours in which somebody is on duty), no carriers, no changes of material, no
absence and no rush.</p>`;
  return html`${body}${reasons.list()}`;
}

function partsOf(estimate: HandEstimate): Content[] {
  if (estimate.kind === 'refused') return ['', '', '', '', '', ''];
  const { stageHours, troubleHours, requesterHours, batchHours, equipmentHours, peopleHours } = estimate;
  return [stageHours, troubleHours, requesterHours, batchHours, equipmentHours, peopleHours].map(formatPlain);
}
