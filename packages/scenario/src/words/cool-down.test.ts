import { describe, expect, it } from 'vitest';
import { refusal } from '../fixture/refusal.ts';
import { coolDownTime } from './cool-down.ts';

describe('a cool-down', () => {
  it('is a time for builds of any height', () => {
    expect(coolDownTime('30 min')).toMatchObject({ duration: { typicalHours: 0.5 }, hoursPerMillimetre: 0 });
    expect(coolDownTime('4 to 20 h, usually 10')?.duration.distribution.kind).toBe('pert');
    expect(coolDownTime('none')).toBeNull();
  });

  it('may grow with the height of the build', () => {
    expect(coolDownTime('2 h plus 0.06 h per mm')).toMatchObject({
      duration: { typicalHours: 2 },
      hoursPerMillimetre: 0.06,
    });
    expect(coolDownTime('1 to 2 h, usually 1.5, plus 0.6 h per cm of height')).toMatchObject({
      duration: { distribution: { kind: 'pert', low: 1, mode: 1.5, high: 2 } },
      hoursPerMillimetre: 0.06,
    });
    expect(coolDownTime('3 min per mm')).toMatchObject({
      duration: { typicalHours: 0 },
      hoursPerMillimetre: 0.05,
    });
  });

  it.each([
    ['2 h plus 1 h', 'A time for any height is there twice.'],
    ['1 min per mm plus 2 min per mm', 'A time for the height is there twice.'],
    [
      '2 h plus 1 to 3 min per mm, usually 2',
      'What the height adds is one time; the range belongs to the time for any height.',
    ],
    ['2 plus 0.06 h per mm', '"2" has no unit.'],
  ])('is refused: %s', (text, message) => {
    expect(refusal(coolDownTime, text).message).toBe(message);
  });
});
