import type { EstimateOrRefused, PredictionOrRefused } from '@buildweek/results';

/** One number of the report with all that belongs to it: a row of the table. */
export interface FigureRow {
  /** As in the page, for instance "Where the hours go". */
  readonly section: string;
  /** What the number is about: a part type, a machine, a plan. */
  readonly subject: string;
  /** What was measured. */
  readonly measure: string;
  readonly unit: string;
  /** Null where the number is not given; the note says why. */
  readonly value: number | null;
  readonly low: number | null;
  readonly high: number | null;
  /** What low and high are: an interval for the long run, what one period may bring; empty where there are none. */
  readonly interval: '' | 'confidence' | 'one period';
  /** Confidence of the interval, 0 to 1. */
  readonly level: number | null;
  readonly replications: number | null;
  readonly note: string;
}

/** What a number is, apart from its value. */
export interface FigureName {
  readonly section: string;
  readonly subject: string;
  readonly measure: string;
  readonly unit: string;
  readonly note?: string;
}

/** A number that is known without any uncertainty. */
export function knownRow(name: FigureName, value: number): FigureRow {
  return { note: '', ...name, value, low: null, high: null, interval: '', level: null, replications: null };
}

/** A number that was estimated, or predicted for one period, or why it is not given. */
export function figureRow(name: FigureName, found: EstimateOrRefused | PredictionOrRefused): FigureRow {
  const { note = '' } = name;
  if (found.kind === 'estimate') {
    const { value, low, high, level, replications } = found;
    return { ...name, note, value, low, high, interval: 'confidence', level, replications };
  }
  if (found.kind === 'prediction') {
    const { low, high, level, replications } = found;
    return { ...name, note, value: null, low, high, interval: 'one period', level, replications };
  }
  const reason = `${found.kind === 'never' ? 'later than the plan' : 'not given'}: ${found.reason}`;
  return {
    ...name,
    note: note === '' ? reason : `${reason} ${note}`,
    value: null,
    low: null,
    high: null,
    interval: '',
    level: null,
    replications: null,
  };
}
