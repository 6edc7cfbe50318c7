import type { Results } from '@buildweek/results';
import { expect, test } from 'vitest';
import { resultsFixture } from './fixture/results-fixture.ts';
import { jobsInLab } from './jobs-in-lab.ts';

/** The title for these jobs in the lab by week, each known to one job more or less; week 1 begins on 1 March 2027. */
function titleFor(value: readonly number[]): string {
  const results = resultsFixture();
  const band = {
    ...results.flow.jobsInLab,
    value: [...value],
    low: value.map((one) => one - 1),
    high: value.map((one) => one + 1),
  };
  const changed: Results = {
    ...results,
    lab: { ...results.lab, startDate: '2027-03-01' },
    flow: { ...results.flow, jobsInLab: band },
  };
  return jobsInLab(changed, 'wide').title;
}

test('A week that stands out is told with its date.', () => {
  expect(titleFor([17, 18, 18, 20, 29, 24, 21, 20, 19, 19, 18, 18, 18])).toBe(
    'Most jobs in the lab in week 5, 29 March: 29 (28 to 30); on average 20 (19 to 21)',
  );
});

test('Jobs that pile up to the end are told from the first to the last weeks.', () => {
  expect(titleFor([10, 12, 14, 16, 18, 20, 22, 24])).toBe(
    'The jobs in the lab grow from 11 (10 to 12) to 23 (22 to 24) in 13 weeks',
  );
});

test('Only where first and last weeks are alike are they called so.', () => {
  expect(titleFor([18, 18, 18.5, 18, 18, 18, 18, 18.2])).toMatch(/in the last weeks no more and no fewer/);
  expect(titleFor([18, 18, 18.5, 19, 19, 20, 20.5, 21])).toMatch(/^The jobs in the lab grow from 18/);
});
