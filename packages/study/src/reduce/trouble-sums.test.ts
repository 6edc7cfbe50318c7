import type { History } from '@buildweek/core';
import { describe, expect, it } from 'vitest';
import { benchHours, history, jobClass, machineHistory } from '../fixture/history.ts';
import { TroubleSums } from './trouble-sums.ts';

function sumsOf(first: Partial<History>, second: Partial<History>): TroubleSums {
  const sums = new TroubleSums(history(0, first));
  for (let replication = 0; replication < 20; replication++) {
    sums.add(history(replication, replication % 2 === 0 ? first : second));
  }
  return sums;
}

describe('TroubleSums', () => {
  it('adds up what stopped the machines of a group, a week of all of them together', () => {
    const trouble = sumsOf(
      {
        machines: [
          machineHistory('printer', { down: 6 }, { breakdowns: 2, failures: 1 }),
          machineHistory('printer', { down: 2, maintenance: 3 }, { breakdowns: 1 }),
          machineHistory('sinter', {}),
        ],
      },
      {
        machines: [
          machineHistory('printer', {}),
          machineHistory('printer', {}),
          machineHistory('sinter', {}),
        ],
      },
    ).results(0.95);
    expect(trouble.equipment).toHaveLength(1);
    expect(trouble.equipment[0]).toMatchObject({
      group: 'printer',
      count: 2,
      breakdownsPerWeek: { value: 1.5 },
      failedBuildsPerWeek: { value: 0.5 },
      hoursDownPerWeek: { value: 4 },
      hoursOfMaintenancePerWeek: { value: 1.5 },
    });
  });

  it('counts parts made again, cancelled jobs and waits that were too long', () => {
    const bad = {
      partHours: [{ ...benchHours('lever', 3, 9, {}), repeatedPieces: 4, waitsTooLong: Float64Array.of(2) }],
      jobClasses: [
        jobClass('lever', false, [1], { cancelled: 1 }),
        jobClass('lever', true, [], { cancelled: 2 }),
      ],
    };
    const good = {
      partHours: [benchHours('lever', 3, 9, {})],
      jobClasses: [jobClass('lever', false, [1]), jobClass('lever', true, [])],
    };
    expect(sumsOf(bad, good).results(0.95).parts).toMatchObject([
      {
        part: 'lever',
        repeatedPartsPerWeek: { value: 2 },
        cancelledJobsPerWeek: { value: 1.5 },
        waitedTooLong: [{ stage: 'sand', jobsPerWeek: { value: 1 } }],
      },
    ]);
  });

  it('says nothing of equipment and parts to which nothing happened', () => {
    const calm = {
      machines: [machineHistory('printer', { print: 100 })],
      partHours: [benchHours('lever', 3, 9, {})],
    };
    expect(sumsOf(calm, calm).results(0.95)).toEqual({ equipment: [], parts: [] });
  });
});
