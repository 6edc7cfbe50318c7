import { type PartHours, type StepHours, WAIT_CAUSES, type WaitCause } from '@buildweek/results';
import { WAIT_CAUSE_PARTS, WORK_FAMILIES, type WorkFamily } from './palette.ts';
import type { Segment } from './stacked-bars.ts';

/** The family of work that a step belongs to. */
export function familyOf(step: Pick<StepHours, 'phase' | 'attended'>): WorkFamily {
  if (step.phase === 'print') return 'print';
  if (step.phase === 'warm-up' || step.phase === 'cool-down') return 'warm-up and cool-down';
  if (step.phase === 'outside') return 'made outside';
  return step.attended ? 'hand work' : 'stations and plain waits';
}

/** Hours per job of some steps, work gathered by family and waits by cause. */
export interface GatheredHours {
  readonly work: ReadonlyMap<WorkFamily, number>;
  readonly waits: ReadonlyMap<WaitCause, number>;
  readonly total: number;
}

/** Adds up the hours of steps. */
export function gatherHours(steps: readonly StepHours[]): GatheredHours {
  const work = new Map<WorkFamily, number>();
  const waits = new Map<WaitCause, number>();
  let total = 0;
  for (const step of steps) {
    const family = familyOf(step);
    work.set(family, (work.get(family) ?? 0) + step.work.value);
    total += step.work.value;
    for (const wait of step.waits) {
      waits.set(wait.cause, (waits.get(wait.cause) ?? 0) + wait.hours.value);
      total += wait.hours.value;
    }
  }
  return { work, waits, total };
}

/** Segments in the order of the stack: work of the lab first, then waits, then what is made outside. */
export function segmentsOf(hours: GatheredHours, words: (hours: number) => string): Segment[] {
  const families = Object.keys(WORK_FAMILIES) as WorkFamily[];
  const stack = [
    ...families.map((family) => ({ part: WORK_FAMILIES[family], value: hours.work.get(family) ?? 0 })),
    ...WAIT_CAUSES.map((cause) => ({ part: WAIT_CAUSE_PARTS[cause], value: hours.waits.get(cause) ?? 0 })),
  ];
  return stack
    .map((segment) => ({ ...segment, words: words(segment.value) }))
    .sort((one, other) => (one.part.code < other.part.code ? -1 : 1));
}

/**
 * An interval that is at least as wide as that of the sum of all hours of some steps: half widths add up to
 * no less than the half width of the sum, however the terms depend on each other (the standard deviation of a
 * sum is at most the sum of the standard deviations).
 */
export function outerInterval(steps: readonly StepHours[]): { low: number; high: number } {
  const all = steps.flatMap((step) => [step.work, ...step.waits.map((wait) => wait.hours)]);
  return {
    low: Math.max(
      0,
      all.reduce((sum, one) => sum + one.low, 0),
    ),
    high: all.reduce((sum, one) => sum + one.high, 0),
  };
}

/** The parts that have jobs at all. */
export function partsWithHours(hours: readonly PartHours[]): PartHours[] {
  return hours.filter((part) => gatherHours(part.steps).total > 0);
}
