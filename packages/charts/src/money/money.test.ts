import { describe, expect, it } from 'vitest';
import { moneyFixture } from '../fixture/money-fixture.ts';
import { resultsFixture } from '../fixture/results-fixture.ts';
import { caseNote, caseRows } from './case-rows.ts';
import { costSplit } from './cost-split.ts';

const plain = (text: string): string => text.replaceAll(/[\u00a0\u202f]/g, ' ');

describe('the split of costs', () => {
  it('shows all costs first, then the largest, with what parts made again cost behind the material', () => {
    const [chart] = costSplit(resultsFixture(), 'wide');
    expect(plain(chart?.title ?? '')).toBe(
      'A finished part costs 15.88 EUR (15.76 to 16.00), most of it people (71 %)',
    );
    expect(plain(chart?.description ?? '')).toBe(
      'Cost of a finished part. all costs: 15.88 EUR (15.76 to 16.00); people: 11.20 EUR (11.15 to 11.25); ' +
        'material: 2.10 EUR (2.01 to 2.19); of it for parts made again: 0.15 EUR (0.09 to 0.21); ' +
        'purchase of equipment: 1.04 EUR (0.99 to 1.09); other costs: 0.60 EUR (0.55 to 0.65); ' +
        'made outside: 0.50 EUR (0.40 to 0.60); upkeep of equipment: 0.36 EUR (0.31 to 0.41); ' +
        'overtime: 0.08 EUR (0.02 to 0.14).',
    );
  });

  it('is left out where nothing is said of money, or no part was finished', () => {
    const money = moneyFixture();
    const refused = { kind: 'refused', reason: 'No part was finished.' } as const;
    expect(costSplit({ ...resultsFixture(), money: null }, 'wide')).toEqual([]);
    const without = { ...money, total: { ...money.total, perPart: refused } };
    expect(costSplit({ ...resultsFixture(), money: without }, 'wide')).toEqual([]);
  });
});

describe('the case against sending everything out', () => {
  const money = moneyFixture();
  const found = money.case;
  if (found.kind !== 'compared') throw new Error('The fixture compares.');

  it('is told line by line', () => {
    expect(caseRows(money).map(({ found: words }) => plain(words))).toEqual([
      '190 000 EUR (188 000 to 192 000)',
      '41 600 EUR (39 700 to 43 500)',
      '45 000 EUR',
      '98 000 EUR (90 400 to 105 600)',
      '1.4 years (1.3 to 1.5)',
      '97 % (95 to 99)',
      '81 % (76 to 86)',
    ]);
  });

  it('says why a figure is not there, and why there is nothing to compare', () => {
    const open = { kind: 'never', reason: 'In 41 of 100 replications …' } as const;
    const rows = caseRows({ ...money, purchases: [], case: { ...found, paybackYears: open } });
    expect(rows[2]?.found).toBe('nothing');
    expect(rows[4]?.found).toBe('open: In 41 of 100 replications …');
    const none = { kind: 'not compared', reason: 'What "lever" costs outside is not stated.' } as const;
    expect(caseRows({ ...money, case: none })).toEqual([]);
    expect(caseNote(none, '13 weeks')).toBe(none.reason);
  });
});
