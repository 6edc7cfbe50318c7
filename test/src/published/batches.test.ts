import { describe, it } from 'vitest';
import { BATCHES } from './cases/index.ts';
import { expectAgreement, PATIENCE } from './expect-agreement.ts';

describe('Published values of batches, from scenario to results', () => {
  it.each(BATCHES)('agree: $title', expectAgreement, PATIENCE);
});
