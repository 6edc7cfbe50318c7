import { describe, expect, it } from 'vitest';
import { createStream } from './streams.ts';

describe('createStream', () => {
  it('gives the same numbers for the same key and others for any other key', () => {
    const first = (key: [string, number, string, string]): number[] => {
      const stream = createStream(...key);
      return [stream(), stream(), stream()];
    };
    const base = first(['spring', 0, 'arrivals', 'lens ring']);
    expect(first(['spring', 0, 'arrivals', 'lens ring'])).toEqual(base);
    const others = [
      first(['summer', 0, 'arrivals', 'lens ring']),
      first(['spring', 1, 'arrivals', 'lens ring']),
      first(['spring', 0, 'quantity', 'lens ring']),
      first(['spring', 0, 'arrivals', 'lens']),
    ];
    for (const other of others) expect(other).not.toEqual(base);
  });

  it('keeps names apart that would run together when joined', () => {
    expect(createStream('s', 1, 'a', 'b|c')()).not.toBe(createStream('s', 1, 'a|b', 'c')());
  });

  it('stays strictly between 0 and 1', () => {
    const stream = createStream('spring', 3, 'work', 'housing');
    for (let draw = 0; draw < 10_000; draw++) {
      const u = stream();
      expect(u > 0 && u < 1).toBe(true);
    }
  });
});
