import type { Distribution, Duration } from '@buildweek/model';

/** Hours as whole minutes; the oracle knows nothing finer. */
export function minutes(hours: number): number {
  return whole(hours * 60);
}

function whole(value: number): number {
  const rounded = Math.round(value);
  if (Math.abs(rounded - value) > 1e-6) throw new Error(`${value} minutes are not a whole number.`);
  return rounded;
}

/** How long something really takes, and how long people think it takes, in minutes. */
export interface Length {
  readonly actual: number;
  readonly typical: number;
}

export const NO_TIME: Length = { actual: 0, typical: 0 };

export function lengthOf(duration: Duration): Length {
  return { actual: minutes(constantOf(duration.distribution)), typical: minutes(duration.typicalHours) };
}

export function times(length: Length, factor: number): Length {
  return { actual: whole(length.actual * factor), typical: whole(length.typical * factor) };
}

export function sum(lengths: readonly Length[]): Length {
  return lengths.reduce(
    (total, length) => ({
      actual: total.actual + length.actual,
      typical: total.typical + length.typical,
    }),
    NO_TIME,
  );
}

/** Actual and typical are compared apart, as two worlds of which each has its own longest. */
export function longest(lengths: readonly Length[]): Length {
  return {
    actual: Math.max(...lengths.map((length) => length.actual)),
    typical: Math.max(...lengths.map((length) => length.typical)),
  };
}

function constantOf(distribution: Distribution): number {
  if (distribution.kind !== 'constant')
    throw new Error(`The oracle plays constants, not ${distribution.kind}.`);
  return distribution.value;
}
