import type { PartStretch, Timeline } from '@buildweek/results';
import { isolate } from '../format.ts';
import { fitName } from '../text-width.ts';
import { formatLength } from './spread-words.ts';

/** What happens in a stretch, for those who read of it. */
export type StretchKind = 'hands' | 'by itself' | 'waits';

export const STRETCH_KINDS: readonly StretchKind[] = ['hands', 'by itself', 'waits'];

export const STRETCH_WORDS: Readonly<Record<StretchKind, string>> = {
  hands: 'hands are at work',
  'by itself': 'goes on by itself',
  waits: 'waits for somebody to come',
};

/** Whether hands are at work, it goes on by itself, or it waits for somebody. */
export function kindOfStretch(stretch: Pick<PartStretch, 'attended' | 'kind'>): StretchKind {
  if (stretch.kind === 'wait') return 'waits';
  return stretch.attended ? 'hands' : 'by itself';
}

/**
 * The name of a stretch: what is done in a build ("print", "cool-down"), or the stage as it is called. Loading and
 * emptying a station belong to its stage.
 */
export function stretchName(
  stretch: Pick<PartStretch, 'stage' | 'phase' | 'kind'>,
  isBuild: boolean,
): string {
  if (stretch.kind === 'wait') return 'waits';
  if (!isBuild) return isolate(stretch.stage);
  return stretch.phase === 'prepare' ? 'prepare build' : stretch.phase;
}

/** The stages of a way that are builds: those that print. */
export function buildStages(timeline: Timeline): ReadonlySet<string> {
  return new Set(timeline.stretches.filter((one) => one.phase === 'print').map((one) => one.stage));
}

/** Consecutive stretches of one name, told together. */
export interface ToldStretch {
  readonly name: string;
  readonly hours: number;
}

/** The stretches of a way in their order; what follows each other under one name is one. */
export function toldStretches(timeline: Timeline): ToldStretch[] {
  const builds = buildStages(timeline);
  const told: ToldStretch[] = [];
  for (const stretch of timeline.stretches) {
    const name = stretchName(stretch, builds.has(stretch.stage));
    const hours = stretch.toHour - stretch.fromHour;
    const last = told.at(-1);
    if (last !== undefined && last.name === name) told[told.length - 1] = { name, hours: last.hours + hours };
    else told.push({ name, hours });
  }
  return told;
}

/** "print 5.1 h". */
export function toldWords({ name, hours }: ToldStretch): string {
  return `${name} ${formatLength(hours)}`;
}

/** The same with the name cut to a room, CSS pixels. */
export function fittedWords({ name, hours }: ToldStretch, room: number, fontSize: number): string {
  return toldWords({ name: fitName(name, room, fontSize), hours });
}

/** Hours in which the machine prints. */
export function printHours(timeline: Timeline): number {
  return timeline.stretches
    .filter((one) => one.phase === 'print' || one.phase === 'first layers')
    .reduce((sum, one) => sum + one.toHour - one.fromHour, 0);
}
