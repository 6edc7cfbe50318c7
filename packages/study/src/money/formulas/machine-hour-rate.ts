import { checkAboveZero, checkNotNegative } from './checks.ts';

export interface MachineHours {
  readonly price: number;
  readonly lifeYears: number;
  /** Service, spare parts. */
  readonly yearlyCost: number;
  /** Hours of a year in which it works. */
  readonly productiveHours: number;
  /** Cost of power for an hour of work. */
  readonly energyPerHour: number;
}

/**
 * What an hour of a machine costs: straight-line depreciation and yearly cost over the hours in which it works, and
 * energy. Interest is left out.
 * Source: definition; common practice, no source.
 * @throws RangeError for a negative amount, or hours or a life that are not above 0
 */
export function machineHourRate(machine: MachineHours): number {
  const { price, lifeYears, yearlyCost, productiveHours, energyPerHour } = machine;
  checkNotNegative('price', price);
  checkNotNegative('yearly cost', yearlyCost);
  checkNotNegative('cost of energy', energyPerHour);
  checkAboveZero('life', lifeYears);
  checkAboveZero('number of productive hours', productiveHours);
  return (price / lifeYears + yearlyCost) / productiveHours + energyPerHour;
}

export interface BuildCost {
  readonly machineHours: number;
  readonly ratePerHour: number;
  readonly material: number;
  readonly labourHours: number;
  readonly labourPerHour: number;
}

/** Cost of one build: machine, material, labour. Source: definition. */
export function costOfBuild(build: BuildCost): number {
  return build.machineHours * build.ratePerHour + build.material + build.labourHours * build.labourPerHour;
}

/**
 * Cost of a good part where builds fail, lose all that is in them and are made again until one succeeds: the number
 * of builds is geometric with mean 1 / (1 − chance).
 * Source: definition; mean of the geometric distribution.
 * @param parts good parts of a build that does not fail
 * @param failureChance 0 to below 1
 * @throws RangeError for no parts, or a chance that cannot be
 */
export function costPerGoodPart(buildCost: number, parts: number, failureChance: number): number {
  checkAboveZero('number of parts', parts);
  if (!(failureChance >= 0 && failureChance < 1)) {
    throw new RangeError(`The chance of failure must be from 0 to below 1, not ${failureChance}`);
  }
  return buildCost / (parts * (1 - failureChance));
}
