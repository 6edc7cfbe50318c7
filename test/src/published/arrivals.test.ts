import { describe, it } from 'vitest';
import { ARRIVALS } from './cases/index.ts';
import { expectAgreement, PATIENCE } from './expect-agreement.ts';

describe('Published values of arrivals, from scenario to results', () => {
  it.each(ARRIVALS)('agree: $title', expectAgreement, PATIENCE);
});
