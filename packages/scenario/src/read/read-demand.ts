import type { CountDistribution, ProfileSpan } from '@buildweek/model';
import type { Fields } from '../fields.ts';
import type { ScenarioArrivals, ScenarioDatedJob, ScenarioDemand, ScenarioProfile } from '../scenario.ts';
import { describeNode } from '../source/source-node.ts';
import { anyText, choice, yesNo } from '../words/choice.ts';
import { clockTime, dateTime } from '../words/dates.ts';
import { gap } from '../words/duration.ts';
import { keptJobs } from '../words/kept-jobs.ts';
import { said } from '../words/mended.ts';
import { count, growthPerMonth, perWeek, share, wholeNumber } from '../words/numbers.ts';
import { promise } from '../words/promise.ts';
import { weekdays, windows } from '../words/week.ts';
import { readPart, type Wording, WordingError } from '../words/wording-error.ts';
import { readChanges } from './read-changes.ts';
import { readSentOut, readUsualSendOut } from './read-sent-out.ts';

/** Standard deviation of whole weeks, per cent of the mean: beyond it most weeks bring next to nothing. */
const MOST_WEEK_VARIATION = 200;

/** Key of an endless backlog. */
const KEPT = 'kept in the lab';

const NO_ARRIVALS: ScenarioArrivals = { kind: 'dated', jobs: [] };

export function readDemand(fields: Fields): ScenarioDemand[] {
  const usualSendOut = readUsualSendOut(fields);
  const cutOffForAll = fields.read('cut-off', clockTime, null);
  return fields.names('demand').map((name): ScenarioDemand => {
    const demand = fields.group('demand').group(name);
    const rushShare = demand.readOr('rush', share(100), '0 %');
    const usual = demand.readOr('promise', promise, 'none');
    const cutOffText = demand.has('cut-off') || cutOffForAll === undefined ? undefined : cutOffForAll;
    return {
      name,
      part: demand.read('part', anyText, name) ?? name,
      arrivals: readArrivals(demand),
      pieces: readCount(demand, 'pieces'),
      rushShare,
      promise: usual,
      rushPromise: demand.read('rush promise', promise) ?? usual,
      cutOffHour: cutOffText ?? demand.read('cut-off', clockTime) ?? null,
      changes: readChanges(demand),
      sentOut: readSentOut(demand, usualSendOut),
    };
  });
}

function readArrivals(demand: Fields): ScenarioArrivals {
  const kinds = ['jobs', 'every', 'dates', KEPT].filter((key) => demand.has(key));
  if (kinds.length === 0) {
    demand.missing(
      'jobs',
      'how many jobs arrive (jobs), how far apart (every), when (dates), or how many there always are (kept in the lab)',
      'jobs: 14 per week',
    );
    return NO_ARRIVALS;
  }
  for (const key of kinds.slice(1))
    demand.refuse(key, `"${kinds[0]}" says when jobs arrive.`, 'one of the two');
  if (kinds[0] !== 'jobs') {
    const reason = 'it belongs to "jobs", which says how many arrive at random moments.';
    for (const key of ['when', 'growth', 'varies from week to week'])
      demand.refuse(key, reason, 'jobs: 14 per week');
  }
  switch (kinds[0]) {
    case 'every': {
      const duration = demand.read('every', gap);
      if (duration === undefined) return NO_ARRIVALS;
      return { kind: 'renewal', gap: duration.distribution, jobsAtOnce: readCount(demand, 'jobs at once') };
    }
    case 'dates':
      demand.refuse('jobs at once', 'each date is one job.', 'the date as often as there are jobs');
      return { kind: 'dated', jobs: readDates(demand) };
    case KEPT:
      demand.refuse(
        'jobs at once',
        'whoever leaves is replaced at once.',
        'the number of jobs that are there',
      );
      return { kind: 'kept in the lab', jobs: demand.read(KEPT, keptJobs) ?? 1 };
    default:
      return {
        kind: 'poisson',
        jobsPerWeek: demand.read('jobs', perWeek) ?? 1,
        growthPerMonth: demand.readOr('growth', growthPerMonth, '0 % per month'),
        weekVariation: demand.readOr('varies from week to week', share(MOST_WEEK_VARIATION), '0 %'),
        jobsAtOnce: readCount(demand, 'jobs at once'),
        when: readProfile(demand),
      };
  }
}

/** A number, a range, a distribution, or a list of numbers that are equally likely. */
function readCount(demand: Fields, key: string): CountDistribution {
  if (demand.node(key)?.kind !== 'list') return demand.readOr(key, count, '1');
  const values = demand.readList(key, wholeNumber(1, '1'));
  if (values.length === 0) {
    demand.report(key, 'value', 'There is no number in this list.', 'numbers from 1 up', '[1, 2, 2, 5]');
    return { kind: 'fixed', value: 1 };
  }
  return { kind: 'list', values };
}

function readProfile(demand: Fields): ScenarioProfile {
  const node = demand.node('when');
  if (node === undefined) return null;
  if (node.kind !== 'map') {
    const name = demand.read('when', anyText);
    return name === undefined ? null : name === 'any time' ? 'any time' : { hours: name };
  }
  const spans: (ProfileSpan & { key: string })[] = [];
  const group = demand.group('when');
  for (const entry of node.entries) {
    try {
      const weight = weightOf(describeNode(entry.node));
      for (const span of said(entry.key, spansOf)) spans.push({ ...span, weight, key: entry.key });
    } catch (error) {
      demand.reading.reportWording(
        group.pathOf(entry.key),
        'key',
        `${entry.key}: ${describeNode(entry.node)}`,
        error,
      );
    }
  }
  spans.sort((a, b) => a.fromHour - b.fromHour);
  spans.forEach((span, index) => {
    const before = spans[index - 1];
    if (before !== undefined && before.toHour > span.fromHour) {
      group.report(
        span.key,
        'key',
        `"${span.key}" overlaps "${before.key}".`,
        'spans that do not overlap',
        'mon-fri 08:00-12:00: 1',
      );
    }
  });
  if (spans.length > 0 && spans.every((span) => span.weight === 0)) {
    demand.report(
      'when',
      'key',
      'Every weight is zero: no job would ever arrive.',
      'at least one weight above zero',
      '1',
    );
  }
  demand.assume(
    'when',
    node.entries.map((entry) => `${entry.key}: ${describeNode(entry.node)}`).join(', '),
    'stated in the scenario',
  );
  return { spans: spans.map(({ fromHour, toHour, weight }) => ({ fromHour, toHour, weight })) };
}

const weightOf: Wording<number> = (text) => {
  const weight = Number(text);
  if (text.trim() !== '' && Number.isFinite(weight) && weight >= 0) return weight;
  throw new WordingError(
    `"${text}" is not a weight.`,
    'a number from 0 up: how dense arrivals are then',
    '2',
  );
};

/** `mon-fri 08:00-12:00`, split at the end of the week. */
const spansOf: Wording<{ fromHour: number; toHour: number }[]> = (text) => {
  const parts = /^(.*?)\s+(\d.*)$/.exec(text);
  if (parts === null) {
    throw new WordingError(`"${text}" is not a span of the week.`, 'days and windows', 'mon-fri 08:00-12:00');
  }
  const spans = readPart(text, parts[2] ?? '', windows);
  return readPart(text, parts[1] ?? '', weekdays).flatMap((day) =>
    spans.flatMap((span) => splitAtSunday(day * 24 + span.fromHour, day * 24 + span.toHour)),
  );
};

/** What reaches over the end of the week comes out as its end and its beginning. */
export function splitAtSunday(fromHour: number, toHour: number): { fromHour: number; toHour: number }[] {
  if (toHour <= 168) return [{ fromHour, toHour }];
  return [
    { fromHour, toHour: 168 },
    { fromHour: 0, toHour: toHour - 168 },
  ];
}

function readDates(demand: Fields): ScenarioDatedJob[] {
  const node = demand.node('dates');
  if (node?.kind === 'scalar') return demand.read('dates', datesFrom(demand)) ?? [];
  if (node?.kind !== 'list') return [];
  const list = demand.group('dates');
  return node.items.flatMap((item, index): ScenarioDatedJob[] => {
    if (item.kind === 'map') {
      const job = list.group(index);
      const at = job.need('at', dateTime, null, 'when it arrives', 'at: 2027-03-01 09:00');
      const pieces = job.read('pieces', wholeNumber(1, '4')) ?? null;
      const rush = job.read('rush', yesNo) ?? null;
      return at === null ? [] : [{ at, pieces, rush }];
    }
    const at = list.read(String(index), dateTime);
    return at === undefined ? [] : [{ at, pieces: null, rush: null }];
  });
}

/** `from orders.csv`: a file with one job on each line: date, then perhaps pieces, then perhaps rush or normal. */
function datesFrom(demand: Fields): Wording<ScenarioDatedJob[]> {
  return (text) => {
    const path = /^from\s+(\S+)$/i.exec(text)?.[1];
    if (path === undefined) {
      throw new WordingError(
        `"${text}" is no list of dates.`,
        'a list of dates, or a file',
        /^\S+\.\S+$/.test(text) ? `from ${text}` : '[2027-03-01 09:00]',
      );
    }
    return demand.reading.files.lines(path).map((line) => {
      const [at = '', pieces, priority] = line.text.split(/\s*[,;\t]\s*/);
      try {
        return {
          at: dateTime(at),
          pieces: pieces === undefined || pieces === '' ? null : wholeNumber(1, '4')(pieces),
          rush:
            priority === undefined || priority === '' ? null : choice('rush', 'normal')(priority) === 'rush',
        };
      } catch (error) {
        if (!(error instanceof WordingError)) throw error;
        throw new WordingError(
          `Line ${line.number} of ${path}: ${error.message}`,
          error.expected,
          error.write,
        );
      }
    });
  };
}
