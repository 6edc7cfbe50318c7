import { describe, expect, it } from 'vitest';
import { readRuns, rowsWith } from '../fixture/read-rows.ts';

const HEADINGS = ['Machine', 'Start', 'End', 'Result', 'Job'];
const RUN = ['resin 1', '2026-03-04 09:15', '2026-03-04 12:00', 'done', '17'];

function read(...others: string[][]) {
  const ordinary = Array.from({ length: 10 }, (_, index) => [
    'resin 1',
    `2026-02-${index + 10} 09:15`,
    `2026-02-${index + 10} 12:00`,
    'ok',
    String(index),
  ]);
  return readRuns([HEADINGS, ...ordinary, ...others]);
}

describe('RunRows', () => {
  it.each([
    ['failed', 'failed'],
    ['Fehldruck', 'failed'],
    ['broke down', 'broke down'],
    ['Störung', 'broke down'],
    ['ok', 'done'],
    ['', 'done'],
  ])('takes %j for a run that is %s', (word, outcome) => {
    const { runs } = read(RUN.map((cell) => (cell === 'done' ? word : cell)));
    expect(runs.at(-1)).toMatchObject({ machine: 'resin 1', outcome, job: '17' });
  });

  it('takes a run without an end for one that is going on, unless another is behind it', () => {
    const going = ['resin 2', '2026-03-04 13:00', '', '', '18'];
    const lost = ['Resin 1', '2026-03-03 13:00', '', '', '18'];
    const log = read(RUN, going, lost);
    expect(log.runs.at(-1)).toMatchObject({ machine: 'resin 2', end: null, outcome: 'running' });
    expect(rowsWith(log, 'run without an end')).toEqual([14]);
    expect(log.runs).toHaveLength(12);
  });

  it('counts words that it does not know, ends before starts, the same row again, and rows without a date', () => {
    const log = read(
      RUN,
      RUN,
      ['resin 2', '2026-03-04 13:00', '2026-03-04 14:00', 'hm', ''],
      ['resin 2', '2026-03-04 15:00', '2026-03-04 14:00', 'ok', ''],
      ['resin 2', '', '2026-03-04 14:00', 'ok', ''],
      ['', '2026-03-04 15:00', '2026-03-04 16:00', 'ok', ''],
    );
    expect(rowsWith(log, 'duplicate')).toEqual([13]);
    expect(rowsWith(log, 'unknown outcome')).toEqual([14]);
    expect(rowsWith(log, 'run ends before it starts')).toEqual([15]);
    expect(rowsWith(log, 'no date')).toEqual([16]);
    expect(rowsWith(log, 'empty')).toEqual([17]);
    expect(log.counted).toMatchObject({ read: 16, kept: 12 });
  });
});
