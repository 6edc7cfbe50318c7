import { describe, expect, it } from 'vitest';
import { printOverNight } from './cases/calendar-wait.ts';
import { CALENDARS } from './cases/index.ts';
import { expectAgreement, PATIENCE } from './expect-agreement.ts';
import { onTime } from './measures.ts';
import { play } from './play.ts';

describe('Published values of calendars, from scenario to results', () => {
  it.each(CALENDARS)('agree: $title', expectAgreement, PATIENCE);

  it('agree: Q40: the longest lead time of a print over night is 40 h', async () => {
    expect(onTime(await play(printOverNight('40 h'))).value).toBe(1);
    // Two of three jobs come off shift, one in sixteen hours of these in the first hour after it.
    expect(onTime(await play(printOverNight('39 h'))).high).toBeLessThan(1);
  });
});
