import { type JobStory, type JobStretch, stepWords } from '@buildweek/study';
import { paragraph } from '../terminal/paragraph.ts';
import { section } from '../terminal/section.ts';
import { harmless, type Style } from '../terminal/style.ts';
import { numbers, type Row, tableText, words } from '../terminal/table.ts';
import type { StoryClock } from './story-clock.ts';
import { countOf, hoursOf, jobNumber, promiseOf, WAITS_FOR, workOf } from './story-words.ts';

/** Where one job was, what it waited for and how long, and where its lead time went. */
export function storyText(story: JobStory, clock: StoryClock, style: Style): string {
  const title = `Job ${jobNumber(story.job)}: ${countOf(story.pieces, 'piece')} of ${story.part}${story.rush ? ', rush' : ''}`;
  return [
    `${style.heading(harmless(title))}\n${summary(story, clock, style)}`,
    section('What happened', happenings(story, clock, style), style),
    section('Where the lead time went', leadTime(story, style), style),
  ].join('\n\n');
}

function summary(story: JobStory, clock: StoryClock, style: Style): string {
  const { arrivedAt, until, outcome, dueAt } = story;
  const end = {
    finished: `Finished ${clock.moment(until)}, after ${hoursOf(until - arrivedAt)} h by the clock.`,
    cancelled: `Withdrawn by its requester ${clock.moment(until)}, after ${hoursOf(until - arrivedAt)} h.`,
    unfinished: `Not finished when the replication ended, ${clock.moment(until)}, ${hoursOf(until - arrivedAt)} h after it came.`,
  }[outcome];
  const promise = dueAt === null ? 'Nothing was promised.' : promiseText(story, dueAt, clock);
  const lines = [`Arrived ${clock.day(arrivedAt)} ${clock.timeOfDay(arrivedAt)}. ${end}`, promise];
  return lines
    .map((line) => paragraph(line, '  '))
    .map((line, index) => (index === 1 && promiseOf(story) === 'missed' ? style.warning(line) : line))
    .join('\n');
}

function promiseText(story: JobStory, dueAt: number, clock: StoryClock): string {
  const promised = `Promised for ${clock.moment(dueAt)}`;
  const apart = hoursOf(Math.abs(story.until - dueAt));
  switch (promiseOf(story)) {
    case 'kept':
      return `${promised}: kept, with ${apart} h to spare.`;
    case 'missed':
      return `${promised}: missed by ${story.outcome === 'finished' ? '' : 'more than '}${apart} h.`;
    case 'open':
      return `${promised}, which had not come yet.`;
    case '':
      return `${promised}; a job that is withdrawn counts neither as kept nor as missed.`;
  }
}

function happenings(story: JobStory, clock: StoryClock, style: Style): string {
  const columns = [
    words('from'),
    words('to'),
    numbers('hours'),
    words('what'),
    words('where'),
    words('by'),
    numbers('pieces'),
  ];
  return tableText(
    columns,
    story.stretches.map((stretch) => rowOf(stretch, clock)),
    style,
  );
}

function rowOf(stretch: JobStretch, clock: StoryClock): Row {
  const { from, to, unit, persons, pieces, kind, causes } = stretch;
  const isEvent = kind === 'event';
  const cells = [
    clock.moment(from),
    isEvent ? '' : clock.until(to, from),
    isEvent ? '' : hoursOf(to - from),
    whatOf(stretch),
    unit ?? '',
    persons.join(', '),
    String(pieces),
  ];
  if (causes.length < 2) return { cells };
  const under = causes
    .map(({ cause, milliseconds }) => `${hoursOf(milliseconds)} h for ${WAITS_FOR[cause]}`)
    .join(', ');
  return { cells, under };
}

function whatOf(stretch: JobStretch): string {
  const { kind, what, causes } = stretch;
  const step = stepWords(stretch);
  const [cause, ...others] = causes;
  switch (kind) {
    case 'event':
      return EVENTS[what]?.(stretch.stage) ?? what;
    case 'lost':
      return `${step}, for nothing`;
    case 'work':
      return what === '' ? step : `${step}, ${what}`;
    case 'wait':
      if (cause === undefined || what !== '') return what;
      return others.length > 0
        ? `waits before ${step}`
        : `waits for ${WAITS_FOR[cause.cause]}, before ${step}`;
  }
}

const EVENTS: Readonly<Record<string, (stage: string) => string>> = {
  'job arrives': () => 'arrives',
  'job ends': () => 'is finished',
  'job is cancelled': () => 'is withdrawn by its requester',
  'job is revised': () => 'starts again with a changed file',
  'parts are rejected': (stage) => `found bad at ${stage}, made again`,
};

function leadTime(story: JobStory, style: Style): string {
  const { hours, until, arrivedAt, outcome } = story;
  const total = until - arrivedAt;
  const known = hours.beforePlan + hours.work + hours.waits.reduce((sum, wait) => sum + wait.milliseconds, 0);
  const rest = total - known;
  const lines: (readonly [string, number])[] = [
    ...(hours.beforePlan > 0 ? [['before the plan began', hours.beforePlan] as const] : []),
    [workOf(story), hours.work],
    ...hours.waits.map(({ cause, milliseconds }) => [`waits for ${WAITS_FOR[cause]}`, milliseconds] as const),
    // A wait is only told of when it is over, and nobody tells what a withdrawn job would have waited for.
    ...(outcome === 'finished' ? [] : [['not told: was still waiting or lost', rest] as const]),
    [outcome === 'finished' ? 'lead time' : 'time in the lab', total],
  ];
  const table = tableText(
    [words('what'), numbers('hours'), numbers('share')],
    lines.map(([what, milliseconds]) => ({
      cells: [what, hoursOf(milliseconds), total > 0 ? `${((100 * milliseconds) / total).toFixed(1)} %` : ''],
    })),
    style,
  );
  const isSplit = story.stretches.some(({ kind, pieces }) => kind !== 'event' && pieces !== story.pieces);
  if (!isSplit) return table;
  const note = 'Pieces of this job went separate ways; each hour counts by its share of the pieces.';
  return `${table}\n${paragraph(note, '  ')}`;
}
