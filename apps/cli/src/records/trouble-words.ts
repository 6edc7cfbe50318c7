import type { RowTrouble } from '@buildweek/records';

/** What is the matter with a row, and what was done with it. */
interface TroubleWords {
  readonly what: string;
  readonly done: string;
}

export const TROUBLE_WORDS: Readonly<Record<RowTrouble, TroubleWords>> = {
  duplicate: { what: 'the same as a row before', done: 'left out' },
  'possible duplicate': {
    what: 'the same as a row before',
    done: 'kept: nothing would tell two requests apart',
  },
  'same job again': { what: 'a number and part that were there before', done: 'the later row counts' },
  empty: { what: 'empty', done: 'left out' },
  open: { what: 'not finished', done: 'open at the end of the log' },
  cancelled: { what: 'cancelled', done: 'counts as asked for, never as finished' },
  'finished before asked': { what: 'finished before it was asked for', done: 'kept without its finish' },
  'no date': { what: 'no date', done: 'left out' },
  'no part': { what: 'no part', done: 'kept as “unnamed part”' },
  'unreadable date': {
    what: 'a date that cannot be read',
    done: 'taken as empty; without the first date the row is left out',
  },
  'unreadable number': { what: 'no number of pieces that can be', done: 'taken as empty' },
  'unknown outcome': { what: 'an outcome that is no known word', done: 'taken as done' },
  'hour shown twice': { what: 'a time that the clock shows twice', done: 'taken as it is written' },
  'hour left out': { what: 'a time that the clock leaves out', done: 'moved an hour on' },
  'too many cells': { what: 'more cells than headings', done: 'what is too much is left out' },
  'stage ends before it starts': {
    what: 'a stage that ends before it starts',
    done: 'kept without its times',
  },
  'run ends before it starts': { what: 'a run that ends before it starts', done: 'left out' },
  'run without an end': { what: 'a run without an end, with others behind it', done: 'left out' },
  'outside the period': {
    what: 'far before or behind all others',
    done: 'left out; a finish alone is forgotten',
  },
  formula: { what: 'a cell that begins like a formula', done: 'taken as plain text' },
};
