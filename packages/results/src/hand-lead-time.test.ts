import { describe, expect, it } from 'vitest';
import { differenceSentences, type HandLeadTime } from './hand-lead-time.ts';

function leadTime(part: string | null, sentence: string | null): HandLeadTime {
  return {
    part,
    estimate: { kind: 'refused', reason: 'not asked' },
    difference: sentence === null ? null : { ratio: 3, sentence, hours: [] },
  };
}

describe('differenceSentences', () => {
  it('tells of all jobs and of each part, where there is something to tell', () => {
    const three = [leadTime(null, 'All.'), leadTime('lever', null), leadTime('gear', 'Gear.')];
    expect(differenceSentences(three)).toEqual(['All.', 'Gear.']);
  });

  it('does not say of all jobs what it says of the only part', () => {
    expect(differenceSentences([leadTime(null, 'All.'), leadTime('lever', 'Lever.')])).toEqual(['Lever.']);
  });
});
