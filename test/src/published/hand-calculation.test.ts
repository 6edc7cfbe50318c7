import { formatProblem, readScenario } from '@buildweek/scenario';
import { handAnswer } from '@buildweek/study';
import { describe, expect, it } from 'vitest';
import { THREE_SERVERS } from './cases/several-servers.ts';

describe('The hand calculation of a scenario', () => {
  it('gives a plain queue its published sojourn, within the 3 % that Sakasegawa errs', () => {
    const reading = readScenario(THREE_SERVERS.scenario, 'published.yaml');
    if (reading.kind === 'problems') throw new Error(reading.problems.map(formatProblem).join('\n'));
    const { leadTimes, loads, fewest } = handAnswer(reading.lab, { fromWeek: 0, weeks: 20 });
    // Source: Gross & Harris, section 2.3, example of three servers (from memory): W = 0.4815 h at a load of 2/3.
    expect(loads[0]?.load).toBeCloseTo(2 / 3, 9);
    const [all] = leadTimes;
    if (all?.estimate.kind !== 'by hand') throw new Error('No lead time by hand');
    expect(Math.abs(all.estimate.leadTimeHours / 0.4814814815 - 1)).toBeLessThan(0.03);
    // 2 erlang: three servers for less than 100 and less than 85 %.
    expect(fewest).toEqual([{ name: 'server', kind: 'station', belowFull: 3, comfortable: 3 }]);
  });
});
