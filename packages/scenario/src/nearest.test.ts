import { describe, expect, it } from 'vitest';
import { listed, nearest, slipsBetween } from './nearest.ts';

describe('the nearest name', () => {
  it('counts letters added, left out, exchanged and swapped', () => {
    expect(slipsBetween('resin', 'resin')).toBe(0);
    expect(slipsBetween('resn', 'resin')).toBe(1);
    expect(slipsBetween('ressin', 'resin')).toBe(1);
    expect(slipsBetween('rasin', 'resin')).toBe(1);
    expect(slipsBetween('reisn', 'resin')).toBe(1);
    expect(slipsBetween('', 'resin')).toBe(5);
    expect(slipsBetween('kitten', 'sitting')).toBe(3);
  });

  it('is proposed when few letters differ, and not otherwise', () => {
    expect(nearest('skils', ['count', 'skills', 'hours'])).toBe('skills');
    expect(nearest('dya', ['day', 'evening'])).toBe('day');
    expect(nearest('Hours', ['hours'])).toBe('hours');
    expect(nearest('machine', ['on', 'by'])).toBeNull();
    expect(nearest('x', ['by', 'on'])).toBeNull();
  });
});

describe('a list in words', () => {
  it('ends in "or" and is cut when it is long', () => {
    expect(listed(['a'])).toBe('a');
    expect(listed(['a', 'b', 'c'])).toBe('a, b or c');
    expect(listed([])).toBe('nothing');
    expect(listed(['a', 'b', 'c'], 2)).toBe('a, b … (3 in all)');
  });
});
