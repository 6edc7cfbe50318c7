import { describe, expect, it } from 'vitest';
import { ProgressBar, progressLine } from './progress-bar.ts';
import type { TextStream } from './style.ts';

function recorded(isTTY: boolean): TextStream & { readonly texts: string[] } {
  const texts: string[] = [];
  return { isTTY, texts, write: (text) => texts.push(text) };
}

const half = { stage: 'replications', done: 51, total: 101, mayEndSooner: false } as const;

describe('ProgressBar', () => {
  it('writes nothing where there is no terminal', () => {
    const stream = recorded(false);
    const bar = new ProgressBar(stream, () => 0);
    bar.show(half);
    bar.clear();
    expect(stream.texts).toEqual([]);
  });

  it('is drawn at most ten times a second, and at the end in any case', () => {
    const stream = recorded(true);
    let now = 0;
    const bar = new ProgressBar(stream, () => now);
    for (let done = 1; done <= 100; done++) {
      now = done * 10;
      bar.show({ ...half, done, total: 100 });
    }
    // A second has gone by: one at its beginning, one each 100 ms, one at the end.
    expect(stream.texts.length).toBe(11);
    expect(stream.texts.at(-1)).toContain('100 of 100');
  });

  it('takes itself away', () => {
    const stream = recorded(true);
    const bar = new ProgressBar(stream, () => 0);
    bar.show(half);
    bar.clear();
    bar.clear();
    expect(stream.texts.at(-1)).toBe('\r\u001b[2K');
    expect(stream.texts.length).toBe(2);
  });
});

describe('progressLine', () => {
  it('tells the time left from the time since the first replication', () => {
    // 50 replications since the first in 25 s; 50 more to come.
    expect(progressLine(half, 25_000)).toBe('Playing ████████████░░░░░░░░░░░░ 51 of 101, 25 s left');
    expect(progressLine(half, 100 * 60_000)).toContain(', 1 h 40 min left');
    expect(progressLine(half, 130_500)).toContain(', 2 min 11 s left');
  });

  it('says at most when it may end sooner, and nothing while it cannot tell', () => {
    expect(progressLine({ ...half, mayEndSooner: true }, 25_000)).toContain('at most 25 s left');
    expect(progressLine({ ...half, done: 2 }, 0)).not.toContain('left');
    expect(progressLine({ ...half, stage: 'pilot' }, 0)).toContain('Looking how long the start lasts');
  });
});
