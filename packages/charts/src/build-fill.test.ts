import { expect, test } from 'vitest';
import { buildFill } from './build-fill.ts';
import { resultsFixture } from './fixture/results-fixture.ts';

const results = resultsFixture();

test('The title names the fullest and the emptiest builds.', () => {
  expect(buildFill(results, 'wide').title).toBe(
    'On average builds of “resin” are 61\u00a0% full and hold 9.2\u00a0parts; builds of “filament” are 38\u00a0% full and hold 3.4\u00a0parts',
  );
});

test('With one machine group the title says its fill alone.', () => {
  expect(buildFill({ ...results, builds: results.builds.slice(2) }, 'wide').title).toBe(
    'On average builds of “powder” are 44\u00a0% full and hold 57\u00a0parts',
  );
});

test('The words say the share of the part cake that is part, for powder alone.', () => {
  const { description } = buildFill(results, 'wide');
  expect(description.match(/of the part cake is part/g)).toHaveLength(1);
  expect(description).toContain('9.1\u00a0% (8.8 to 9.4) of the part cake is part');
});

test('A fill that is not given draws no bar and is said in words.', () => {
  const refused = { kind: 'refused', reason: 'no build was made' } as const;
  const builds = results.builds.map((one) => ({
    ...one,
    meanFill: refused,
    meanHeight: refused,
    partsPerBuild: refused,
  }));
  const chart = buildFill({ ...results, builds }, 'wide');
  expect(chart.title).toBe('How full builds are');
  expect(chart.description).toContain('not given: no build was made');
  expect(JSON.stringify(chart.spec)).toContain('"words":"not given"');
});
