import { describe, expect, it } from 'vitest';
import {
  at,
  attended,
  buildStage,
  dated,
  lab,
  lines,
  machine,
  part,
  people,
  play,
  printed,
  workStage,
} from '../fixture/lab.ts';

/** C01 and C02: one part through a weekend; request on Friday, plan from Monday 2025-01-06. */
function weekendLab(requestedAt: string, pausable: boolean) {
  return lab({
    people: [people('technicians', 1, ['all'])],
    machines: [
      machine('printers', {
        setUp: attended('all', 0.5, { pausable }),
        warmUp: { distribution: { kind: 'constant', value: 0.25 }, typicalHours: 0.25 },
        coolDown: {
          duration: { distribution: { kind: 'constant', value: 1 }, typicalHours: 1 },
          where: 'machine',
        },
        unload: attended('all', 0.25, { pausable }),
      }),
    ],
    parts: [
      part(
        'lever',
        [
          workStage('prepare file', attended('all', 1, { pausable })),
          buildStage('build', 'printers'),
          workStage('remove supports', attended('all', 1.5, { pausable })),
          workStage('inspect', attended('all', 0.25, { pausable })),
        ],
        { print: printed(20) },
      ),
    ],
    demand: [dated('lever', [at('fri', requestedAt)])],
  });
}

describe('Simulation', () => {
  it('carries one part through a weekend to the minute (case C01, hand computed)', () => {
    const history = play(weekendLab('14:30', false));
    expect(lines(history)).toEqual([
      'fri 14:30 job arrives job 0',
      'fri 14:30 step starts job 0 prepare file by technicians 1',
      'fri 15:30 step ends job 0 prepare file by technicians 1',
      'fri 15:30 step starts job 0 build set-up on printers 1 by technicians 1',
      'fri 16:00 step ends job 0 build set-up on printers 1 by technicians 1',
      'fri 16:00 step starts job 0 build warm-up on printers 1',
      'fri 16:15 step ends job 0 build warm-up on printers 1',
      'fri 16:15 step starts job 0 build print on printers 1',
      'sat 12:15 step ends job 0 build print on printers 1',
      'sat 12:15 step starts job 0 build cool-down on printers 1',
      'sat 13:15 step ends job 0 build cool-down on printers 1',
      'week 2 mon 08:00 step starts job 0 build unload on printers 1 by technicians 1',
      'week 2 mon 08:15 step ends job 0 build unload on printers 1 by technicians 1',
      'week 2 mon 08:15 step starts job 0 remove supports by technicians 1',
      'week 2 mon 09:45 step ends job 0 remove supports by technicians 1',
      'week 2 mon 09:45 step starts job 0 inspect by technicians 1',
      'week 2 mon 10:00 step ends job 0 inspect by technicians 1',
      'week 2 mon 10:00 job ends job 0',
    ]);
    expect([...(history.jobClasses[0]?.leadTimes ?? [])]).toEqual([67.5 * 3_600_000]);
  });

  it('lets a set-up that misses the end of the shift by a minute wait for Monday (case C02, must fit)', () => {
    const trace = lines(play(weekendLab('14:31', false)));
    expect(trace).toContain('week 2 mon 08:00 step starts job 0 build set-up on printers 1 by technicians 1');
    expect(trace).toContain('week 2 tue 04:45 step ends job 0 build print on printers 1');
    expect(trace.at(-1)).toBe('week 2 tue 10:00 job ends job 0');
  });

  it('lets a set-up that may pause go on where it stopped (case C02, pause at the end of the shift)', () => {
    const trace = lines(play(weekendLab('14:31', true)));
    expect(trace).toContain('fri 15:31 step starts job 0 build set-up on printers 1 by technicians 1');
    expect(trace).toContain('fri 16:00 step pauses job 0 build set-up on printers 1 by technicians 1');
    expect(trace).toContain('week 2 mon 08:01 step ends job 0 build set-up on printers 1 by technicians 1');
    expect(trace).toContain('week 2 tue 04:16 step ends job 0 build print on printers 1');
    expect(trace.at(-1)).toBe('week 2 tue 10:00 job ends job 0');
  });
});
