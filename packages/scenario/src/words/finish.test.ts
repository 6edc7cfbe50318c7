import { describe, expect, it } from 'vitest';
import { refusal } from '../fixture/refusal.ts';
import { finishesOfStage } from './finish.ts';

describe('the finish that a stage is for', () => {
  it('is that one and all that ask for more', () => {
    expect(finishesOfStage('cleaned')).toEqual(['cleaned', 'smooth']);
    expect(finishesOfStage('smooth')).toEqual(['smooth']);
  });

  it('is that one alone with "only"', () => {
    expect(finishesOfStage('only cleaned')).toEqual(['cleaned']);
    expect(finishesOfStage('only as printed')).toEqual(['as printed']);
  });

  it('leaves something out', () => {
    expect(refusal(finishesOfStage, 'as printed')).toMatchObject({
      message: 'Every part is at least as printed: this stage is done for all.',
      write: 'only as printed',
    });
    expect(refusal(finishesOfStage, 'smoth').write).toBe('smooth');
  });
});
