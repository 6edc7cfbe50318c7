import type { PartStretch, Timeline } from '@buildweek/results';
import { expect, test } from 'vitest';
import { kindOfStretch, printHours, toldStretches, toldWords } from './stretch-words.ts';

const stretch = (
  stage: string,
  phase: PartStretch['phase'],
  attended: boolean,
  fromHour: number,
  toHour: number,
  kind: PartStretch['kind'] = 'work',
): PartStretch => ({ stage, phase, attended, kind, fromHour, toHour });

const timeline: Timeline = {
  asked: 'Monday 09:00',
  stretches: [
    stretch('build', 'prepare', true, 0, 0.5),
    stretch('build', 'first layers', true, 0.5, 0.75),
    stretch('build', 'print', false, 0.75, 3),
    stretch('build', 'unload', false, 3, 15, 'wait'),
    stretch('build', 'unload', true, 15, 15.1),
    stretch('wash', 'load', true, 15.1, 15.2),
    stretch('wash', 'run', false, 15.2, 15.5),
    stretch('wash', 'unload', true, 15.5, 15.6),
    stretch('sand', 'work', true, 15.6, 16.6),
  ],
  hours: 16.6,
  attendedHours: 1.95,
  unattendedHours: 2.55,
  closedHours: 12,
};

test('A build is told by its phases, a station by its name, and what belongs together once.', () => {
  expect(toldStretches(timeline).map(toldWords)).toEqual([
    'prepare build 30\u00a0min',
    'first layers 15\u00a0min',
    'print 2.3\u00a0h',
    'waits 12\u00a0h',
    'unload 6\u00a0min',
    'wash 30\u00a0min',
    'sand 1\u00a0h',
  ]);
});

test('A stretch is hands, by itself, or a wait for somebody.', () => {
  expect(timeline.stretches.slice(1, 4).map(kindOfStretch)).toEqual(['hands', 'by itself', 'waits']);
});

test('Print hours hold the first layers too.', () => {
  expect(printHours(timeline)).toBeCloseTo(2.5, 12);
});

test('A name with its own direction of writing keeps it to itself.', () => {
  const [only] = toldStretches({ ...timeline, stretches: [stretch('שיוף', 'work', true, 0, 1)] });
  expect(only?.name).toBe('\u2068שיוף\u2069');
});
