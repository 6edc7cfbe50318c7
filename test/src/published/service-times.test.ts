import { describe, it } from 'vitest';
import { SERVICE_TIMES } from './cases/index.ts';
import { expectAgreement, PATIENCE } from './expect-agreement.ts';

describe('Published values of service times, from scenario to results', () => {
  it.each(SERVICE_TIMES)('agree: $title', expectAgreement, PATIENCE);
});
