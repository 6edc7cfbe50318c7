import type { WayOfMaking } from '@buildweek/results';
import {
  type AskedPart,
  askedSize,
  type Finish,
  readWaysOfMaking,
  TYPICAL_LAB,
  typicalMachines,
} from '@buildweek/scenario';
import { waysOfMaking } from '@buildweek/study';
import { beforeAll, describe, expect, it } from 'vitest';

/*
 * What the trade knows of its processes, as orderings on the typical classes. Common practice, no source, all of it:
 * it holds for one machine of each class, an ordinary part the size of a hand, and people on one day shift.
 */

const MONDAY = [{ label: 'Monday 09:00', hour: 9 }];

/** A bracket with overhangs: 60 x 40 x 30 mm, a third of its box. */
const SIZE = askedSize({
  size: '60 x 40 x 30 mm',
  volume: '24 cm3',
  surface: '120 cm2',
  supportedVolume: '12 cm3',
  supportContact: '9 cm2',
}).shape;

function waysFor(finish: Finish, quantities: readonly number[]): Map<string, WayOfMaking> {
  const part: AskedPart = { finish, shape: SIZE };
  const read = readWaysOfMaking(TYPICAL_LAB, 'typical', part, null, () => {
    throw new Error('No mesh is asked for.');
  });
  const { ways } = waysOfMaking({
    ways: read.ways.map(({ lab }) => ({ lab, orientation: 'as typed' })),
    asked: MONDAY,
    quantities,
    seed: 'process order',
    plays: 20,
  });
  return new Map(ways.map((way) => [way.route, way]));
}

let cleaned: Map<string, WayOfMaking>;

function way(route: string, ways = cleaned): WayOfMaking {
  const found = ways.get(route);
  if (found === undefined) throw new Error(`There is no way "${route}".`);
  return found;
}

function hoursOfOne(one: WayOfMaking): number {
  return one.quantities[0]?.finished[0]?.hours.typical ?? Number.NaN;
}

function attendedHours({ timelines: [first] }: WayOfMaking): number {
  return first?.attendedHours ?? Number.NaN;
}

/** Minutes of people per piece when a build is full. */
function minutesAt(one: WayOfMaking, quantity: number): number {
  return (
    one.quantities.find((times) => times.quantity === quantity)?.minutesOfPeoplePerPart.typical ?? Number.NaN
  );
}

describe('Processes on typical machines (common practice, no source)', () => {
  beforeAll(() => {
    const builds = [...waysFor('cleaned', [1]).values()].map((one) => one.mostPerBuild);
    cleaned = waysFor('cleaned', [1, ...builds]);
  });

  it('finish one rough extruded part by a large factor before a smooth one, and support removal and sanding make it', () => {
    const rough = way('small extrusion', waysFor('as printed', [1]));
    const smooth = way('small extrusion', waysFor('smooth', [1]));
    expect(hoursOfOne(smooth) / hoursOfOne(rough)).toBeGreaterThan(1.5);
    const handWork = (smooth.timelines[0]?.stretches ?? [])
      .filter(({ stage }) => stage === 'remove supports' || stage === 'sand')
      .reduce((sum, { fromHour, toHour }) => sum + toHour - fromHour, 0);
    // By the hours of people: by the clock their break comes on top. The two plays draw other times for the rest.
    const difference = attendedHours(smooth) - attendedHours(rough);
    expect(handWork / difference).toBeGreaterThan(0.8);
    expect(handWork / difference).toBeLessThan(1.2);
    // A smooth extruded part is dearer in hand work than a smooth one from the vat.
    const vat = way('small vat', waysFor('smooth', [1]));
    const sanding = (one: WayOfMaking): number =>
      (one.timelines[0]?.stretches ?? [])
        .filter(({ stage }) => stage === 'sand')
        .reduce((sum, { fromHour, toHour }) => sum + toHour - fromHour, 0);
    expect(sanding(smooth)).toBeGreaterThan(2 * sanding(vat));
  });

  it('print as long for a full platform as for one part under a mask', () => {
    const { printHoursOfOne, printHoursOfFull, mostPerBuild } = way('small vat');
    expect(mostPerBuild).toBeGreaterThan(1);
    expect(printHoursOfFull).toBe(printHoursOfOne);
  });

  it('gain nothing per part from a fuller platform in extrusion', () => {
    for (const route of ['small extrusion', 'heated extrusion']) {
      const { printHoursOfOne, printHoursOfFull, mostPerBuild } = way(route);
      expect(mostPerBuild).toBeGreaterThan(1);
      expect(printHoursOfFull / mostPerBuild).toBeCloseTo(printHoursOfOne, 10);
    }
  });

  it('take longest for one part in powder, and least of people for each part of a full build', () => {
    const powder = way('compact powder');
    const others = ['small extrusion', 'heated extrusion', 'small vat', 'large vat'].map((route) =>
      way(route),
    );
    for (const other of others) {
      expect(hoursOfOne(powder)).toBeGreaterThan(2 * hoursOfOne(other));
      expect(minutesAt(powder, powder.mostPerBuild)).toBeLessThan(minutesAt(other, other.mostPerBuild));
    }
    expect(minutesAt(powder, 1)).toBeGreaterThan(10 * minutesAt(powder, powder.mostPerBuild));
  });

  it('change material in minutes in extrusion, in seconds between tanks that stand ready, in hours in powder', () => {
    const changes = new Map(
      typicalMachines().map(({ name, parameters }) => {
        const change = parameters.find((parameter) => parameter.name === 'material change');
        const seconds = { s: 1, min: 60, h: 3600 }[change?.unit ?? ''] ?? Number.NaN;
        return [name, (change?.typical ?? Number.NaN) * seconds];
      }),
    );
    const between = (name: string, low: number, high: number): void => {
      expect(changes.get(name)).toBeGreaterThanOrEqual(low);
      expect(changes.get(name)).toBeLessThanOrEqual(high);
    };
    between('small mask VPP', 5, 119);
    between('small MEX', 120, 1800);
    between('heated MEX', 120, 1800);
    // A large tank is emptied and cleaned.
    between('large laser VPP', 120, 3600);
    between('compact PBF', 3600, 8 * 3600);
    between('large PBF', 3600, 8 * 3600);
  });
});
