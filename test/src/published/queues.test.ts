import { describe, it } from 'vitest';
import { QUEUES } from './cases/index.ts';
import { expectAgreement, PATIENCE } from './expect-agreement.ts';

describe('Published values of queues, from scenario to results', () => {
  it.each(QUEUES)('agree: $title', expectAgreement, PATIENCE);
});
