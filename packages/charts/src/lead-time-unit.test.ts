import { expect, test } from 'vitest';
import { chartsOf } from './charts-of.ts';
import { resultsFixture } from './fixture/results-fixture.ts';
import { leadTimeUnit } from './lead-time-unit.ts';

test('Lead times are told in days of 24 hours by the clock.', () => {
  expect(leadTimeUnit(resultsFixture())).toMatchObject({ size: 24, many: 'days' });
});

test('Where an average job takes less than a day, lead times are told in hours.', () => {
  const results = resultsFixture();
  const jobs = results.jobs.map((one) =>
    one.meanLeadTime.kind === 'estimate' ? { ...one, meanLeadTime: { ...one.meanLeadTime, value: 5 } } : one,
  );
  expect(leadTimeUnit({ ...results, jobs })).toMatchObject({ size: 1, many: 'hours' });
  const [chart] = chartsOf({ ...results, jobs });
  expect(chart?.title).toMatch(/^Nine of ten jobs are finished within [0-9.]+\u00a0hours/);
  expect(JSON.stringify(chart?.spec)).toContain('hours from complete file to last good part');
});
