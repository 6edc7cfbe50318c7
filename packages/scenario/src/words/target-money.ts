import { amount, type Currency, perYear } from './money.ts';
import { readPart, WordingError } from './wording-error.ts';

/** A target on money as it is worded. */
export type MoneyTargetWording =
  | { readonly kind: 'budget'; readonly of: 'purchases' | 'year'; readonly atMost: number }
  | { readonly kind: 'cost per part'; readonly atMost: number };

export const BUDGET_EXAMPLE = 'budget at most 40000';
export const COST_EXAMPLE = 'cost per part at most 12';

/** `budget at most 40000`, `budget at most 250000 per year`; null for another sentence. @throws WordingError */
export function budget(text: string, sentence: string, currency: Currency): MoneyTargetWording | null {
  const parts = /^budget\s+at\s+(least|most)\s+(.+)$/i.exec(sentence);
  if (parts === null) return null;
  const [, bound = '', money = ''] = parts;
  refuseLeast(text, bound);
  if (/\bper\b|\//i.test(money)) {
    const atMost = readPart(text, money, perYear(currency, '250000 per year'));
    return { kind: 'budget', of: 'year', atMost };
  }
  const expected = 'an amount for what is bought, or an amount per year';
  return {
    kind: 'budget',
    of: 'purchases',
    atMost: readPart(text, money, amount({ currency, expected, example: '40000' })),
  };
}

/** `cost per part at most 12`; null for another sentence. @throws WordingError */
export function costPerPart(text: string, sentence: string, currency: Currency): MoneyTargetWording | null {
  const parts = /^costs?\s+per\s+(?:part|piece)\s+at\s+(least|most)\s+(.+)$/i.exec(sentence);
  if (parts === null) return null;
  const [, bound = '', money = ''] = parts;
  refuseLeast(text, bound);
  const words = {
    currency,
    expected: 'an amount for each part',
    example: '12',
    per: ['part'],
    orZero: false,
  };
  return { kind: 'cost per part', atMost: readPart(text, money, amount(words)) };
}

function refuseLeast(text: string, bound: string): void {
  if (bound.toLowerCase() === 'most') return;
  throw new WordingError(
    'Nobody has to spend so much: it takes "at most".',
    '"at most"',
    text.replace(/\bat\s+least\b/i, 'at most'),
  );
}
