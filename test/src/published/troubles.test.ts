import { describe, expect, it } from 'vitest';
import { TROUBLES } from './cases/index.ts';
import { IN_STEP } from './cases/interference.ts';
import { expectAgreement, PATIENCE } from './expect-agreement.ts';
import { finishedPerHour } from './measures.ts';
import { play } from './play.ts';

describe('Published values of troubles, from scenario to results', () => {
  it.each(TROUBLES)('agree: $title', expectAgreement, PATIENCE);

  it('agree: Q14: eight machines in step with one technician make 8 builds in 11 h', async () => {
    const { value, low, high } = finishedPerHour(await play(IN_STEP));
    expect([low, high]).toEqual([value, value]);
    expect(value / 0.7272727273).toBeCloseTo(1, 2);
  });
});
