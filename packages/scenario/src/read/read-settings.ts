import {
  type DispatchRules,
  PRECISION_MEASURES,
  type PrecisionAsked,
  type StudySettings,
  type WorkKind,
} from '@buildweek/model';
import type { Fields } from '../fields.ts';
import { nearest } from '../nearest.ts';
import { anyText, choice, yesNo } from '../words/choice.ts';
import { share, wholeNumber } from '../words/numbers.ts';
import { type Wording, WordingError } from '../words/wording-error.ts';

/** Ten years: clock changes and closing days are worked out so far. */
const MOST_WEEKS = 520;

export function readSettings(fields: Fields): StudySettings {
  const simulate = fields.group('simulate');
  const precision = simulate.read('precision', precisionWording) ?? null;
  const replications = simulate.read(
    'replications',
    wholeNumber(1, '100'),
    simulate.has('precision') ? null : '100',
  );
  if (simulate.has('precision')) {
    simulate.refuse('replications', 'with a precision their number is found out.', 'at most: 1000');
  } else if (!simulate.reading.isMisspelt(simulate.path)) {
    simulate.refuse('at most', 'it limits the search for a precision.', 'precision: 5 % of p90 lead time');
  }
  return {
    seed: simulate.readOr('seed', anyText, 'buildweek'),
    weeks: simulate.readOr('weeks', wholeNumber(1, '13', MOST_WEEKS), '13'),
    ignoredWeeks: simulate.readOr('ignored weeks', ignoredWeeks, 'auto'),
    capWeeks: simulate.readOr('weeks to finish', wholeNumber(0, '13', MOST_WEEKS), '13'),
    replications: precision === null ? (replications ?? 100) : null,
    precision,
    replicationLimit: simulate.has('precision')
      ? simulate.readOr('at most', wholeNumber(20, '1000'), '1000')
      : 1000,
    level: simulate.readOr('level', level, '95 %'),
  };
}

const ignoredWeeks: Wording<number | 'auto'> = (text) => {
  if (/^auto$/i.test(text)) return 'auto';
  try {
    return wholeNumber(0, '4', MOST_WEEKS)(text);
  } catch {
    throw new WordingError(
      `"${text}" is neither a number of weeks nor auto.`,
      'a whole number from 0 up, or auto',
      'auto',
    );
  }
};

const level: Wording<number> = (text) => {
  const value = share(100, true)(text);
  if (value >= 0.5) return value;
  throw new WordingError(
    `A confidence level of ${text} says next to nothing.`,
    'a share from 50 to below 100 %',
    '95 %',
  );
};

const precisionWording: Wording<PrecisionAsked> = (text) => {
  const expected = `a share of one of: ${PRECISION_MEASURES.join(', ')}`;
  const parts = /^(.+?)\s+of\s+(.+)$/.exec(text);
  if (parts === null) {
    throw new WordingError(`"${text}" does not say of which measure.`, expected, '5 % of p90 lead time');
  }
  const relativeHalfWidth = share(100)(parts[1] ?? '');
  const measure = PRECISION_MEASURES.find((candidate) => candidate === parts[2]);
  if (measure === undefined) {
    const meant = nearest(parts[2] ?? '', PRECISION_MEASURES) ?? 'p90 lead time';
    throw new WordingError(
      `"${parts[2]}" is not a measure that can be asked for.`,
      expected,
      `${parts[1]} of ${meant}`,
    );
  }
  if (relativeHalfWidth > 0) return { measure, relativeHalfWidth };
  throw new WordingError('No interval is ever that narrow.', expected, `5 % of ${measure}`);
};

const KINDS: readonly { word: string; kind: WorkKind }[] = [
  { word: 'machines', kind: 'machine' },
  { word: 'stations', kind: 'station' },
  { word: 'benches', kind: 'bench' },
];

export function readDispatch(fields: Fields): DispatchRules {
  const dispatch = fields.group('dispatch');
  const fitOn = dispatch.readOr('fit on', choice('typical', 'drawn'), 'typical');
  const rest = {
    fitOn,
    within: dispatch.readOr('within', choice('promise', 'shortest work'), 'promise'),
    rushInterrupts: dispatch.readOr('rush interrupts', yesNo, 'no'),
  };
  const usual = KINDS.map(({ kind }) => kind);
  if (!dispatch.has('order')) {
    dispatch.assume('order', KINDS.map(({ word }) => word).join(', '));
    return { order: usual, ...rest };
  }
  const words = dispatch.readList('order', choice(...KINDS.map(({ word }) => word)));
  const order = words.flatMap((word) => KINDS.find((entry) => entry.word === word)?.kind ?? []);
  if (new Set(order).size === KINDS.length && order.length === KINDS.length) return { order, ...rest };
  if (words.length === dispatch.length('order')) {
    dispatch.report(
      'order',
      'value',
      'Each of the three kinds of work has to be there once.',
      'machines, stations and benches in some order',
      '[machines, stations, benches]',
    );
  }
  return { order: usual, ...rest };
}
