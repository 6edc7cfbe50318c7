import { checkAboveZero } from './checks.ts';

const MINUTES_PER_HOUR = 60;

/** One part, made all year long on one machine in full builds. Money in one currency. */
export interface PublishedCostInput {
  readonly partsPerBuild: number;
  readonly buildHours: number;
  /** Hours of a year in which the machine builds. */
  readonly hoursPerYear: number;
  /** Price of machine and all that belongs to it. */
  readonly equipment: number;
  readonly lifeYears: number;
  readonly maintenancePerYear: number;
  readonly operatorPerHour: number;
  readonly setUpMinutes: number;
  readonly postProcessingMinutes: number;
  readonly materialPerPart: number;
}

export interface PublishedCost {
  readonly partsPerHour: number;
  readonly partsPerYear: number;
  readonly machine: number;
  readonly labour: number;
  readonly material: number;
  readonly total: number;
}

/**
 * The cost of a part as it was published for laser sintering, stereolithography and extrusion: straight-line
 * depreciation and maintenance over the parts of a year, labour of set-up and post-processing over those of a build,
 * material. No interest, no waiting, no failed builds: the plan of a lab is not costed by it.
 * Source: N. Hopkinson and P. M. Dickens, "Analysis of rapid manufacturing", Proceedings of the Institution of
 * Mechanical Engineers C 217 (2003), 31–39, as in D. S. Thomas and S. W. Gilbert, NIST Special Publication 1176 (2014).
 * @throws RangeError for parts, hours or a life that are not above 0
 */
export function publishedCostPerPart(input: PublishedCostInput): PublishedCost {
  checkAboveZero('number of parts in a build', input.partsPerBuild);
  checkAboveZero('build time', input.buildHours);
  checkAboveZero('number of hours in a year', input.hoursPerYear);
  checkAboveZero('life', input.lifeYears);
  const partsPerHour = input.partsPerBuild / input.buildHours;
  const partsPerYear = partsPerHour * input.hoursPerYear;
  const machine = (input.equipment / input.lifeYears + input.maintenancePerYear) / partsPerYear;
  const minutes = input.setUpMinutes + input.postProcessingMinutes;
  const labour = ((minutes / MINUTES_PER_HOUR) * input.operatorPerHour) / input.partsPerBuild;
  const material = input.materialPerPart;
  return { partsPerHour, partsPerYear, machine, labour, material, total: machine + labour + material };
}
