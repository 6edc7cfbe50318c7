import { listed, nearest } from '../nearest.ts';
import type { Currency } from './money.ts';
import { someShare } from './numbers.ts';
import {
  BUDGET_EXAMPLE,
  budget,
  COST_EXAMPLE,
  costPerPart,
  type MoneyTargetWording,
} from './target-money.ts';
import { type PeriodsWording, periodsOf } from './target-periods.ts';
import { type TimeAllowedWording, timeAllowed } from './time-allowed.ts';
import { readPart, type Wording, WordingError } from './wording-error.ts';

/** A target as it is worded: names are not looked up. */
export type TargetWording = { readonly wording: string; readonly periods: PeriodsWording | null } & (
  | {
      readonly kind: 'share within';
      /** As `rush jobs` or `housings`. */
      readonly jobs: string;
      readonly share: number;
      readonly within: TimeAllowedWording;
    }
  | { readonly kind: 'on time'; readonly jobs: string; readonly share: number }
  | { readonly kind: 'busy'; readonly who: string; readonly atMost: number }
  | MoneyTargetWording
);

/** What can be asked for, each as it is written. */
export const TARGET_FORMS = [
  '90 % of rush jobs within 2 days',
  'p90 lead time of housing at most 5 days',
  'on time at least 95 %',
  'people busy at most 80 %',
  BUDGET_EXAMPLE,
  COST_EXAMPLE,
] as const;

const EXPECTED = `how many jobs are finished within a time, a percentile of lead times, how many jobs are on time, how busy people, machines or stations are, a budget, or the cost per part: ${listed(TARGET_FORMS.map((form) => `"${form}"`))}`;

/** One target in a sentence. @returns a reader @throws WordingError */
export function target(currency: Currency): Wording<TargetWording> {
  return (text) => {
    const { sentence, periods } = periodsOf(text);
    for (const form of FORMS) {
      const found = form(text, sentence, currency);
      if (found === null) continue;
      if (periods !== null && (found.kind === 'budget' || found.kind === 'cost per part')) {
        throw new WordingError(
          found.kind === 'budget'
            ? 'A budget is known beforehand: it is kept in every period, or in none.'
            : 'The cost per part is that of all parts in the long run, not of each period.',
          'the target alone',
          sentence,
        );
      }
      return { wording: text, periods, ...found };
    }
    throw notUnderstood(text, sentence, currency);
  };
}

type Form = (text: string, sentence: string, currency: Currency) => Distribute<TargetWording> | null;
type Distribute<T> = T extends unknown ? Omit<T, 'wording' | 'periods'> : never;

/** `90 % of rush jobs within 2 days`. */
const shareWithin: Form = (text, sentence) => {
  const parts = /^(.+?)\s+of\s+(?:all\s+)?(.+?)\s+within\s+(.+)$/i.exec(sentence);
  if (parts === null) return null;
  const [, share = '', jobs = '', time = ''] = parts;
  return {
    kind: 'share within',
    jobs,
    share: readPart(text, share, someShare),
    within: readPart(text, time, timeAllowed),
  };
};

/** `p90 lead time of housing at most 5 days`: the share of jobs within that time, said otherwise. */
const percentile: Form = (text, sentence) => {
  const parts = /^(\S+)\s+lead\s+times?(?:\s+of\s+(?:all\s+)?(.+?))?\s+(at\s+most|within)\s+(.+)$/i.exec(
    sentence,
  );
  if (parts === null) return null;
  const [, point = '', jobs = 'jobs', , time = ''] = parts;
  const percent = Number(/^p(\d+(?:\.\d+)?)$/i.exec(point)?.[1]);
  if (!(percent > 0 && percent < 100)) {
    throw new WordingError(
      `"${point} lead time" is no percentile of lead times.`,
      'p with a number above 0 and below 100: p90 is the time within which 90 % of the jobs are finished',
      text.replace(point, 'p90'),
    );
  }
  return { kind: 'share within', jobs, share: percent / 100, within: readPart(text, time, timeAllowed) };
};

/** `on time at least 95 %`, `rush jobs on time at least 90 %`. */
const onTime: Form = (text, sentence) => {
  const parts = /^(?:(?:all\s+)?(.+?)\s+)?on\s+time\s+at\s+(least|most)\s+(.+)$/i.exec(sentence);
  if (parts === null) return null;
  const [, jobs = 'jobs', bound = '', share = ''] = parts;
  if (bound.toLowerCase() === 'most')
    throw wrongWay(text, '"on time" is a share that has to be reached', 'at least');
  return { kind: 'on time', jobs, share: readPart(text, share, someShare) };
};

/** `people busy at most 80 %`, `resin busy at most 80 %`. */
const busy: Form = (text, sentence) => {
  const parts = /^(?:all\s+)?(.+?)\s+busy\s+at\s+(least|most)\s+(.+)$/i.exec(sentence);
  if (parts === null) return null;
  const [, who = '', bound = '', share = ''] = parts;
  if (bound.toLowerCase() === 'least')
    throw wrongWay(text, '"busy" is a share that is not to be passed', 'at most');
  return { kind: 'busy', who, atMost: readPart(text, share, someShare) };
};

/** A percentile first: what it says reads like a share where it says "within". */
const FORMS: readonly Form[] = [percentile, shareWithin, onTime, busy, budget, costPerPart];

function wrongWay(text: string, rule: string, bound: string): WordingError {
  return new WordingError(
    `${rule}: it takes "${bound}".`,
    `"${bound}"`,
    text.replace(/\bat\s+(least|most)\b/i, bound),
  );
}

/** What is written by habit for the words of this format. */
const HABITS: readonly (readonly [RegExp, string])[] = [
  [/\b(?:mean|average|typical|median|max(?:imum)?)\s+lead\s+time\b/i, 'p90 lead time'],
  [/^lead\s+time\b/i, 'p90 lead time'],
  [/\b(?:utili[sz]ation|utili[sz]ed|used|load|loaded|occupied|at work)\b/i, 'busy'],
  [/\b(?:punctual|in time|promises kept|delivered on time)\b/i, 'on time'],
  [/\b(?:in|under|below|inside|after)\s+(?=\d)/i, 'within '],
  [
    /(?:<=|≤|<|\bbelow\b|\bunder\b|\bup to\b|\bmax(?:imum)?\b|\bno more than\b|\bnot more than\b)/i,
    'at most',
  ],
  [/(?:>=|≥|>|\babove\b|\bover\b|\bmin(?:imum)?\b|\bno less than\b|\bnot less than\b)/i, 'at least'],
];

function notUnderstood(text: string, sentence: string, currency: Currency): WordingError {
  return new WordingError(
    `"${sentence}" asks for nothing that is measured.`,
    EXPECTED,
    rewritten(text, currency) ?? TARGET_FORMS[0],
  );
}

/** The same with words that are known, when that makes a target of it. */
function rewritten(text: string, currency: Currency): string | null {
  const slips = text.replace(/[\p{L}]{4,}/gu, (word) => nearest(word, SINGLE_WORDS) ?? word);
  for (const start of [slips, text]) {
    let write = start;
    for (const [habit, meant] of HABITS) {
      write = write.replace(habit, meant);
      const { sentence } = periodsOf(write);
      if (FORMS.some((form) => isForm(form, write, sentence, currency))) return write;
    }
  }
  return null;
}

const SINGLE_WORDS = ['busy', 'within', 'time', 'lead', 'most', 'least', 'working', 'days', 'jobs'];

function isForm(form: Form, text: string, sentence: string, currency: Currency): boolean {
  try {
    return form(text, sentence, currency) !== null;
  } catch (error) {
    if (error instanceof WordingError) return false;
    throw error;
  }
}
