import { describe, expect, it } from 'vitest';
import { harmlessText } from './harmless-text.ts';

describe('text in a cell of a table', () => {
  it.each(['=HYPERLINK("x")', '+1', '-1+1', '@SUM(A1)', '\t=1', '\r=1', ' =1', '＝1'])(
    'starts no formula: %j',
    (text) => {
      expect(harmlessText(text)).toMatch(/^'/);
    },
  );

  it('stays as it is where it starts none', () => {
    for (const text of ['resin', '– of it', '90 % of jobs', 'a=b', '<img src=x onerror=alert(1)>', '']) {
      expect(harmlessText(text)).toBe(text);
    }
  });

  it('holds no control characters', () => {
    expect(harmlessText('a\u0000b\u0007c\u202ed')).toBe('a\ufffdb\ufffdcd');
  });
});
