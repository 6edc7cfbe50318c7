import { type Estimate, isHeld, type UnitState, useOfState } from '@buildweek/results';
import { formatEstimate, formatShare, PERCENT } from './format.ts';
import type { ProcessName, StackPart } from './palette.ts';
import type { StackedBar } from './stacked-bars.ts';

/** A machine or a station with its shares of calendar time. */
export interface UnitStates<State extends UnitState> {
  readonly name: string;
  readonly process?: ProcessName;
  readonly states: readonly { readonly state: State; readonly share: Estimate }[];
}

function shareOf<State extends UnitState>(unit: UnitStates<State>, state: string): Estimate | null {
  return unit.states.find((candidate) => candidate.state === state)?.share ?? null;
}

/**
 * The bar of a unit. Idle comes last, so that the boundary before it is the time in use, and its interval is
 * that of idle turned round.
 */
export function barOfStates<State extends UnitState>(
  unit: UnitStates<State>,
  order: readonly State[],
  parts: Readonly<Record<State, StackPart>>,
): StackedBar {
  const idle = shareOf(unit, 'idle');
  return {
    name: unit.name,
    suffix: '',
    segments: order.flatMap((state) => {
      const share = shareOf(unit, state);
      return share === null
        ? []
        : [{ part: parts[state], value: share.value, words: formatShare(share.value) }];
    }),
    whisker: idle === null ? null : { low: 1 - idle.high, high: 1 - idle.low },
    process: unit.process ?? null,
    endWords: '',
  };
}

/**
 * Mean share over units of the states that count. Half widths are added, which is at least as wide as the
 * interval of the sum (the standard deviation of a sum is at most the sum of the standard deviations).
 *
 * @param units at least one
 * @param counts which states are added up
 */
export function meanShare(
  units: readonly UnitStates<UnitState>[],
  counts: (state: UnitState) => boolean,
): Estimate {
  const shares = units.flatMap((unit) =>
    unit.states.filter((one) => counts(one.state)).map((one) => one.share),
  );
  const mean = (pick: (share: Estimate) => number): number =>
    shares.reduce((sum, share) => sum + pick(share), 0) / units.length;
  return {
    kind: 'estimate',
    value: mean((share) => share.value),
    low: Math.max(
      0,
      mean((share) => share.low),
    ),
    high: mean((share) => share.high),
    level: shares[0]?.level ?? 0,
    replications: shares[0]?.replications ?? 0,
  };
}

/** Mean share of time in which units are held: what the other states leave, with their interval turned round. */
export function meanShareHeld(units: readonly UnitStates<UnitState>[]): Estimate {
  const free = meanShare(units, (state) => !isHeld(state));
  return { ...free, value: 1 - free.value, low: 1 - free.high, high: 1 - free.low };
}

/** Mean share of time in which units are at work. */
export function meanShareAtWork(units: readonly UnitStates<UnitState>[]): Estimate {
  return meanShare(units, (state) => useOfState(state) === 'at work');
}

/** Every unit and state in words. */
export function describeStates<State extends UnitState>(units: readonly UnitStates<State>[]): string {
  return units
    .map((unit) => {
      const shares = unit.states
        .filter((one) => one.share.value > 0)
        .map((one) => `${one.state} ${formatEstimate(one.share, PERCENT)}`);
      return `${unit.name}: ${shares.join(', ')}.`;
    })
    .join(' ');
}
