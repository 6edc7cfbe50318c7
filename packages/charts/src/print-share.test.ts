import { expect, test } from 'vitest';
import { resultsFixture } from './fixture/results-fixture.ts';
import { printShare } from './print-share.ts';

const results = resultsFixture();

/** Numbers of the whiskers, by row. */
function whiskers(chart: ReturnType<typeof printShare>): { row: number; low: number; high: number }[] {
  const { layer } = chart.spec as unknown as {
    layer: { mark: { type: string }; data: { values: { row: number; low: number; high: number }[] } }[];
  };
  return layer.find((one) => one.mark.type === 'rule')?.data.values ?? [];
}

test('The title says where printing is the least and where it is the most of the lead time.', () => {
  expect(printShare(results, 'wide').title).toMatch(
    /^Printing is from \d+\u00a0% \(“.+”\) to \d+\u00a0% \(“.+”\) of the lead time$/,
  );
});

test('With one part type the title says its share.', () => {
  const one = { ...results, hours: results.hours.slice(0, 1) };
  expect(printShare(one, 'wide').title).toMatch(/^Printing is \d+\u00a0% of the lead time of “lens ring”$/);
});

test('The interval of a share holds the share, and has no width where nothing is uncertain.', () => {
  const shares = results.hours.map((part) => {
    const print = part.steps.find((step) => step.phase === 'print')?.work.value ?? 0;
    const total = part.steps.reduce(
      (sum, step) => sum + step.work.value + step.waits.reduce((all, wait) => all + wait.hours.value, 0),
      0,
    );
    return print / total;
  });
  for (const { row, low, high } of whiskers(printShare(results, 'wide'))) {
    expect(low).toBeLessThan(shares[row] ?? 0);
    expect(high).toBeGreaterThan(shares[row] ?? 1);
  }
  const sure = JSON.parse(JSON.stringify(results), (_, value) =>
    value?.kind === 'estimate' ? { ...value, low: value.value, high: value.value } : value,
  ) as typeof results;
  for (const { row, low, high } of whiskers(printShare(sure, 'wide'))) {
    expect(low).toBeCloseTo(shares[row] ?? 0, 9);
    expect(high).toBeCloseTo(shares[row] ?? 1, 9);
  }
});
