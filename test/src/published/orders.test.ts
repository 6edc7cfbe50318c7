import { describe, it } from 'vitest';
import { ORDERS } from './cases/index.ts';
import { expectAgreement, PATIENCE } from './expect-agreement.ts';

describe('Published values of orders of service, from scenario to results', () => {
  it.each(ORDERS)('agree: $title', expectAgreement, PATIENCE);
});
