import { resultsFixture } from '@buildweek/charts/fixture';
import type { Estimate, Results } from '@buildweek/results';
import { expect, test } from 'vitest';
import { drawnCharts } from '../figure.ts';
import { buildsSection } from './builds-section.ts';

const results = resultsFixture();

function withSurplus(value: number, low: number, high: number): Results {
  const surplus: Estimate = { kind: 'estimate', value, low, high, level: 0.95, replications: 200 };
  const builds = results.builds.map((one) =>
    one.powder === null ? one : { ...one, powder: { ...one.powder, surplus } },
  );
  return { ...results, builds };
}

const sourceOf = (some: Results): string => buildsSection(some, drawnCharts(some)).source;

test('Used powder piles up where more comes back than builds take.', () => {
  expect(sourceOf(withSurplus(2.3, 2.1, 2.5))).toContain(
    'Used powder of “<bdi>powder</bdi>” piles up: 2.3\u00a0kg (2.1 to 2.5) a week more comes back',
  );
});

test('Used powder runs out where builds take more than comes back; the amount is no negative number.', () => {
  expect(sourceOf(withSurplus(-1.4, -1.9, -0.9))).toContain(
    'Used powder of “<bdi>powder</bdi>” runs out: builds take 1.4\u00a0kg (0.9 to 1.9) a week more',
  );
});

test('Used powder is in balance where the interval holds nothing at all.', () => {
  expect(sourceOf(withSurplus(0.1, -0.2, 0.4))).toContain('is in balance');
});

test('A lab without powder has no table of powder, and one whose builds are typed has no section.', () => {
  const platforms = { ...results, builds: results.builds.filter((one) => one.kind === 'platform') };
  expect(sourceOf(platforms)).not.toContain('powder-table');
  expect(sourceOf(platforms)).not.toContain('part cake');
  expect(sourceOf({ ...results, builds: [] })).toBe('');
});
