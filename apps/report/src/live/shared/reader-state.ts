import type { Controls } from './controls.ts';

/** What a reader has set; what is as in the plan is not there. */
export interface ReaderState {
  /** By the id of the control: how many. */
  readonly counts: Readonly<Record<string, number>>;
  /** By what is changed: per cent of what the plan says. */
  readonly factors: Readonly<Record<string, number>>;
  /** Name of other hours; null: as in the plan. */
  readonly hours: string | null;
}

export const AS_PLANNED: ReaderState = { counts: {}, factors: {}, hours: null };

/** Begins a fragment of an address that holds a state. */
const MARK = '#what-if?';
/** More than this no state of this page is. */
const LONGEST_FRAGMENT = 4000;
const HOURS_KEY = 'hours';
const FACTOR_KEY = 'of ';

/** Whether nothing is changed. */
export function isAsPlanned({ counts, factors, hours }: ReaderState): boolean {
  return Object.keys(counts).length === 0 && Object.keys(factors).length === 0 && hours === null;
}

/** The end of an address that brings a reader back to a state: `#what-if?people%2Ftechnicians=3`. */
export function fragmentOf({ counts, factors, hours }: ReaderState): string {
  const pairs = [
    ...Object.entries(counts),
    ...Object.entries(factors).map(([id, percent]) => [`${FACTOR_KEY}${id}`, percent] as const),
    ...(hours === null ? [] : [[HOURS_KEY, hours] as const]),
  ];
  return `${MARK}${pairs.map(([key, value]) => `${encodeURIComponent(key)}=${encodeURIComponent(value)}`).join('&')}`;
}

/**
 * The state that an address holds, as far as this page knows it: of each control that there is, a whole number within
 * its bounds. Everything else is left out. Null when the address holds no state.
 */
export function stateOf(fragment: string, controls: StateBounds): ReaderState | null {
  if (!fragment.startsWith(MARK) || fragment.length > LONGEST_FRAGMENT) return null;
  const counts: Record<string, number> = {};
  const factors: Record<string, number> = {};
  let hours: string | null = null;
  for (const pair of fragment.slice(MARK.length).split('&')) {
    const [key, value] = pair.split('=').map(decoded);
    if (key === undefined || value === undefined) continue;
    const count = controls.counts.find(({ id }) => id === key);
    const factor = controls.factors.find(({ id }) => `${FACTOR_KEY}${id}` === key);
    if (key === HOURS_KEY && controls.hours.some(({ name }) => name === value)) hours = value;
    if (count !== undefined && isWithin(value, count)) {
      if (Number(value) !== count.present) counts[count.id] = Number(value);
    }
    if (factor !== undefined && isWithin(value, factor) && Number(value) !== 100) {
      factors[factor.id] = Number(value);
    }
  }
  return { counts, factors, hours };
}

/** What a state is held against. */
export interface StateBounds {
  readonly counts: readonly Pick<Controls['counts'][number], 'id' | 'low' | 'high' | 'present'>[];
  readonly factors: readonly (Bounds & { readonly id: string })[];
  readonly hours: readonly { readonly name: string }[];
}

interface Bounds {
  readonly low: number;
  readonly high: number;
}

function isWithin(text: string, { low, high }: Bounds): boolean {
  return /^\d{1,4}$/.test(text) && Number(text) >= low && Number(text) <= high;
}

/** Undefined for what is no encoded text. */
function decoded(text: string): string | undefined {
  try {
    return decodeURIComponent(text);
  } catch {
    return undefined;
  }
}
