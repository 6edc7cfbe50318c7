import type { Lab } from '@buildweek/model';
import type { Assumption } from '@buildweek/results';
import { type ChangeWording, placeText } from './change-wording.ts';
import { flowGroup, flowList } from './flow-text.ts';

/** What a factor can be put on in words of a scenario. */
export const FACTORS = ['demand', 'failed builds', 'breakdowns'] as const;
export type Factor = (typeof FACTORS)[number];

/** What is read of a scenario, as far as factors need it. */
interface ReadScenario {
  readonly lab: Lab;
  readonly assumptions: readonly Assumption[];
}

/** Digits that are written of a number that is a product. */
const DIGITS = 4;

/**
 * A factor on what a scenario says, as changes in its words, so that each can be read and made by hand: so many times
 * the jobs that arrive, the share of builds that fail, the number of breakdowns. Jobs on fixed dates, and those that are
 * always kept in the lab, stay as they are. What only a class says is written out, and keeps its name, and with it its
 * random numbers.
 *
 * @param reading of the text that the changes are for
 * @param factor above 0; 1 changes nothing
 */
export function factorChanges(reading: ReadScenario, of: Factor, factor: number): ChangeWording[] {
  if (factor === 1) return [];
  switch (of) {
    case 'demand':
      return demandChanges(reading, factor);
    case 'failed builds':
      return failureChanges(reading, factor);
    case 'breakdowns':
      return breakdownChanges(reading, factor);
  }
}

function demandChanges({ lab, assumptions }: ReadScenario, factor: number): ChangeWording[] {
  return lab.demand.flatMap(({ name }) => {
    const place = ['demand', name];
    return [
      ...scaled(assumptions, [...place, 'jobs'], (text) => scaledNumbers(text, factor)),
      ...scaled(assumptions, [...place, 'every'], (text) => scaledTimes(text, 1 / factor)),
    ];
  });
}

function failureChanges({ lab, assumptions }: ReadScenario, factor: number): ChangeWording[] {
  const shares = (text: string): string =>
    text.replace(/\d+(?:\.\d+)?(?=\s*%)/g, (number) => written(Number(number) * factor));
  return lab.machines.flatMap(({ name, failure }) => {
    if (failure === null) return [];
    const place = ['machines', name, 'fails'];
    const group = scaled(assumptions, [...place, 'chance'], shares);
    return group.length > 0 ? group : scaled(assumptions, place, shares);
  });
}

function breakdownChanges({ lab, assumptions }: ReadScenario, factor: number): ChangeWording[] {
  const rarer = (text: string): string => scaledTimes(text, 1 / factor);
  const groups = [
    ...lab.machines.map((group) => ({ section: 'machines', group })),
    ...lab.stations.map((group) => ({ section: 'stations', group })),
  ];
  return groups.flatMap(({ section, group: { name, breakdowns } }) => {
    const place = [section, name, 'breaks down'];
    const [first, ...more] = breakdowns;
    if (first === undefined) return [];
    const places = more.length === 0 ? [place] : breakdowns.map((_, index) => [...place, String(index + 1)]);
    const fromClass = isOfClass(assumptions, [...(places[0] ?? place), 'every']);
    if (fromClass) {
      const entries = breakdowns.map((breakdown, index) => {
        const keys = keysUnder(assumptions, places[index] ?? place);
        return flowGroup([
          ...keys.map(([key, text]): [string, string] => [key, key === 'every' ? rarer(text) : text]),
          ['called', breakdown.name],
        ]);
      });
      return [change(place, more.length === 0 ? (entries[0] ?? '') : flowList(entries))];
    }
    return places.flatMap((one) => {
      const group = scaled(assumptions, [...one, 'every'], rarer);
      return group.length > 0 ? group : scaled(assumptions, one, rarer);
    });
  });
}

/** A value that stands at a place, as it is after a change; nothing where there is none, or it stays the same. */
function scaled(
  assumptions: readonly Assumption[],
  path: readonly string[],
  by: (text: string) => string,
): ChangeWording[] {
  const before = valueAt(assumptions, path)?.value;
  if (before === undefined) return [];
  const after = by(before);
  return after === before ? [] : [change(path, after)];
}

function change(path: readonly string[], value: string): ChangeWording {
  return { wording: `${placeText(path)}: ${value}`, path, value };
}

function valueAt(assumptions: readonly Assumption[], path: readonly string[]): Assumption | undefined {
  const what = path.join(' / ');
  return assumptions.find((assumption) => assumption.what === what);
}

function isOfClass(assumptions: readonly Assumption[], path: readonly string[]): boolean {
  return valueAt(assumptions, path)?.source === 'default of a machine class';
}

/** Keys under a place with their values, groups in braces; what has a value and keys below it `takes` that value. */
function keysUnder(assumptions: readonly Assumption[], place: readonly string[]): [string, string][] {
  const start = `${place.join(' / ')} / `;
  const below = assumptions.flatMap(({ what, value }): [string, string][] =>
    what.startsWith(start) ? [[what.slice(start.length), value]] : [],
  );
  const keys = [...new Set(below.map(([key]) => key.split(' / ')[0] ?? ''))];
  return keys.map((key): [string, string] => {
    const own = below.find(([other]) => other === key)?.[1];
    const inner = below.flatMap(([other, value]): [string, string][] =>
      other.startsWith(`${key} / `) ? [[other.slice(key.length + 3), inFlow(value)]] : [],
    );
    if (inner.length === 0) return [key, inFlow(own ?? '')];
    return [
      key,
      flowGroup([...(own === undefined ? [] : [['takes', inFlow(own)] as [string, string]]), ...inner]),
    ];
  });
}

/** A comma would end a value between braces. */
function inFlow(text: string): string {
  return /[,[\]{}:#]/.test(text) ? JSON.stringify(text) : text;
}

/** Every number times a factor. */
function scaledNumbers(text: string, factor: number): string {
  return text.replace(/\d+(?:\.\d+)?/g, (number) => written(Number(number) * factor));
}

/** Every time times a factor; shares, and numbers that only say how times are spread, stay. */
function scaledTimes(text: string, factor: number): string {
  return text.replace(
    /(\b(?:shape|variation|erlang)\s+)?(\d+(?:\.\d+)?)(?![\d.])(\s*%)?/g,
    (found: string, spread: string | undefined, number: string, percent: string | undefined) =>
      spread !== undefined || percent !== undefined ? found : written(Number(number) * factor),
  );
}

function written(number: number): string {
  return String(Number(number.toPrecision(DIGITS)));
}
