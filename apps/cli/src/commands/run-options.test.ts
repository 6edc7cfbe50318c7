import type { StudySettings } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { precisionOption } from './option-values.ts';
import { settingsFrom } from './run-options.ts';

const fixed: StudySettings = {
  seed: 'a',
  weeks: 13,
  ignoredWeeks: 'auto',
  capWeeks: 13,
  replications: 100,
  precision: null,
  replicationLimit: 1000,
  level: 0.95,
};
const precision = { measure: 'p90 lead time', relativeHalfWidth: 0.05 } as const;
const searching: StudySettings = { ...fixed, replications: null, precision };
const none = { with: [], queueWaits: false, force: false };

describe('settingsFrom', () => {
  it('takes from the scenario what no option says', () => {
    expect(settingsFrom(fixed, none)).toEqual(fixed);
    expect(settingsFrom(searching, none)).toEqual(searching);
  });

  it('lets a number of replications take the place of a precision, and the other way round', () => {
    expect(settingsFrom(searching, { ...none, replications: 40 })).toMatchObject({
      replications: 40,
      precision: null,
    });
    expect(settingsFrom(fixed, { ...none, precision, atMost: 60 })).toMatchObject({
      replications: null,
      precision,
      replicationLimit: 60,
    });
  });

  it('refuses a limit where nothing is searched for', () => {
    expect(() => settingsFrom(fixed, { ...none, atMost: 60 })).toThrow(
      '--at-most limits the search for a precision',
    );
  });
});

describe('precisionOption', () => {
  it('reads a share of a measure, of p90 when none is named', () => {
    expect(precisionOption('2.5 % of mean lead time')).toEqual({
      measure: 'mean lead time',
      relativeHalfWidth: 0.025,
    });
    expect(precisionOption('5%')).toEqual(precision);
  });

  it.each(['', '5', '0 %', '100 %', '5 % of p99 lead time', 'five %'])('refuses "%s"', (text) => {
    expect(() => precisionOption(text)).toThrow('Give it as "5 % of p90 lead time"');
  });
});
