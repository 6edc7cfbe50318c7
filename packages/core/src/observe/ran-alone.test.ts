import { describe, expect, it } from 'vitest';
import { at, buildStage, constant, HOUR, part, people, play, printed } from '../fixture/lab.ts';
import { order, printing } from '../fixture/printing-lab.ts';

const LONG = part('lever', [buildStage('build', 'printers')], { print: printed(6) });

/** Hours in which the only machine ran with nobody there, in two weeks of people who are there from 08:00 to 16:00. */
function hoursAlone(startsAt: number, more: Parameters<typeof printing>[3] = {}): number | undefined {
  const history = play(
    printing(
      { fullShare: 0 },
      [],
      { warmUp: constant(1), coolDown: { duration: constant(2), where: 'machine' } },
      { parts: [LONG], demand: [order('lever', startsAt, 1)], ...more },
    ),
  );
  const [machine] = history.machines;
  return machine === undefined ? undefined : machine.ranAlone / HOUR;
}

describe('The hours in which a machine ran with nobody there', () => {
  it('are those of warm-up, print and cool-down outside the windows of people', () => {
    // From 14:00 it warms up for 1 h, prints for 6 h and cools for 2 h: 2 of 9 h before 16:00.
    expect(hoursAlone(at('mon', '14:00'))).toBe(7);
    expect(hoursAlone(at('tue', '08:00'))).toBe(1);
  });

  it('are none while somebody is there day and night', () => {
    expect(
      hoursAlone(at('mon', '14:00'), { people: [people('guards', 1, ['all'], { calendar: 'always' })] }),
    ).toBe(0);
  });
});
