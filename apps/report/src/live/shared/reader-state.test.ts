import {
  constantFrom,
  dictionary,
  integer,
  option,
  property,
  assert as propertyHolds,
  string,
} from 'fast-check';
import { expect, test } from 'vitest';
import { AS_PLANNED, fragmentOf, isAsPlanned, type StateBounds, stateOf } from './reader-state.ts';

const BOUNDS: StateBounds = {
  counts: [
    { id: 'people/technicians', low: 0, high: 5, present: 2 },
    { id: 'machines/<b>&=#%', low: 1, high: 4, present: 1 },
  ],
  factors: [{ id: 'demand', low: 50, high: 200 }],
  hours: [{ name: 'one of technicians from 10:00' }],
};

test('What is changed comes back from an address as it was.', () => {
  const state = {
    counts: { 'people/technicians': 3, 'machines/<b>&=#%': 4 },
    factors: { demand: 125 },
    hours: 'one of technicians from 10:00',
  };
  expect(stateOf(fragmentOf(state), BOUNDS)).toEqual(state);
  expect(isAsPlanned(state)).toBe(false);
});

test.each([
  ['another part of the page', '#hours'],
  ['nothing', ''],
  ['more than any state of the page', `#what-if?people%2Ftechnicians=3&${'x'.repeat(4000)}`],
])('An address with %s holds no state.', (_, fragment) => {
  expect(stateOf(fragment, BOUNDS)).toBeNull();
});

test.each([
  ['a control that is not there', '#what-if?machines%2Fresin=3'],
  ['a number beyond its bounds', '#what-if?people%2Ftechnicians=6&of%20demand=201'],
  ['a number with something behind it', '#what-if?people%2Ftechnicians=3e0'],
  ['a fraction', '#what-if?people%2Ftechnicians=2.5'],
  ['hours that nobody offers', '#what-if?hours=never'],
  ['the property of every object', '#what-if?__proto__=3&constructor=3'],
  ['broken encoding', '#what-if?%E0%A4%A=3'],
  ['what the plan has anyway', '#what-if?people%2Ftechnicians=2&of%20demand=100'],
])('From an address with %s nothing is taken.', (_, fragment) => {
  expect(stateOf(fragment, BOUNDS)).toEqual(AS_PLANNED);
});

test('Whatever stands behind the mark, only what can be set comes out of it.', () => {
  const value = option(constantFrom('3', '99', '-1', '<img>', 'one of technicians from 10:00'), { nil: '' });
  const key = constantFrom('people/technicians', 'of demand', 'hours', 'other');
  propertyHolds(
    property(dictionary(key, value), string(), integer(), (pairs, noise, number) => {
      const text = Object.entries(pairs)
        .map(([name, one]) => `${encodeURIComponent(name)}=${encodeURIComponent(one)}`)
        .join('&');
      const state = stateOf(`#what-if?${text}&${noise}=${number}`, BOUNDS);
      for (const [id, count] of Object.entries(state?.counts ?? {})) {
        const control = BOUNDS.counts.find((one) => one.id === id);
        expect(count).toBeGreaterThanOrEqual(control?.low ?? Number.NaN);
        expect(count).toBeLessThanOrEqual(control?.high ?? Number.NaN);
      }
      for (const percent of Object.values(state?.factors ?? {})) {
        expect(percent).toBeGreaterThanOrEqual(50);
        expect(percent).toBeLessThanOrEqual(200);
      }
      expect([null, 'one of technicians from 10:00']).toContain(state?.hours ?? null);
    }),
  );
});
