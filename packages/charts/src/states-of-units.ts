import type { Estimate } from '@buildweek/results';
import { formatEstimate, formatShare, PERCENT } from './format.ts';
import type { StackPart } from './palette.ts';
import type { StackedBar } from './stacked-bars.ts';

/** A machine or a station with its shares of calendar time. */
export interface UnitStates<State extends string> {
  readonly name: string;
  readonly states: readonly { readonly state: State; readonly share: Estimate }[];
}

function shareOf<State extends string>(unit: UnitStates<State>, state: string): Estimate | null {
  return unit.states.find((candidate) => candidate.state === state)?.share ?? null;
}

/**
 * The bar of a unit. Idle comes last, so that the boundary before it is the time in use, and its interval is
 * that of idle turned round.
 */
export function barOfStates<State extends string>(
  unit: UnitStates<State>,
  order: readonly State[],
  parts: Readonly<Record<State, StackPart>>,
): StackedBar {
  const idle = shareOf(unit, 'idle');
  return {
    name: unit.name,
    segments: order.flatMap((state) => {
      const share = shareOf(unit, state);
      return share === null
        ? []
        : [{ part: parts[state], value: share.value, words: formatShare(share.value) }];
    }),
    whisker: idle === null ? null : { low: 1 - idle.high, high: 1 - idle.low },
    endWords: '',
  };
}

/** Mean share of time in which units are not idle and not off. */
export function meanShareInUse<State extends string>(units: readonly UnitStates<State>[]): number {
  const inUse = (unit: UnitStates<State>): number =>
    unit.states.reduce(
      (sum, one) => (one.state === 'idle' || one.state === 'off' ? sum : sum + one.share.value),
      0,
    );
  return units.length === 0 ? 0 : units.reduce((sum, unit) => sum + inUse(unit), 0) / units.length;
}

/** Every unit and state in words. */
export function describeStates<State extends string>(units: readonly UnitStates<State>[]): string {
  return units
    .map((unit) => {
      const shares = unit.states
        .filter((one) => one.share.value > 0)
        .map((one) => `${one.state} ${formatEstimate(one.share, PERCENT)}`);
      return `${unit.name}: ${shares.join(', ')}.`;
    })
    .join(' ');
}
