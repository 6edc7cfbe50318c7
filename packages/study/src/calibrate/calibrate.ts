import type { Distribution, Lab } from '@buildweek/model';
import type { CalibratedBuild, CalibrationAnswer, EstimateErrors } from '@buildweek/results';
import { BUILD_TIME_PARAMETERS, type BuildTimeFit, FEWEST_BUILDS, fitBuildTime } from '@buildweek/timing';
import type { BuildRow, RowMistake } from './build-row.ts';
import { fitDoubt } from './fit-doubt.ts';
import { fitVerdict, fitWarnings } from './fit-words.ts';
import { type BuildToFit, buildsToFit } from './measured-builds.ts';
import { parameterWords } from './parameter-words.ts';
import { recordedBuilds } from './recorded-builds.ts';
import { scenarioLines, variationOf } from './scenario-lines.ts';
import { calibratedMachines, partNamed } from './shaped-parts.ts';
import { notToldApart } from './told-apart.ts';

/** What a fit says, without who wrote it down. */
export type Calibration = Omit<CalibrationAnswer, 'format' | 'version' | 'program'>;

export type CalibrationOutcome =
  | { readonly kind: 'calibration'; readonly calibration: Calibration }
  /** Rows that are wrong, in the order of their lines. */
  | { readonly kind: 'mistakes'; readonly mistakes: readonly RowMistake[] }
  /** These machines cannot be fitted. */
  | { readonly kind: 'refused'; readonly reason: string };

/** Confidence of the interval of the spread in `BuildTimeFit`. */
const LEVEL = 0.9;
const WIDEST_SPREAD = 10;

/**
 * Fits the build time model of a machine group to builds that the lab has measured.
 *
 * @param rows one for each build and part type; texts as they are written
 * @param machine name of the machine group
 */
export function calibrate(rows: readonly BuildRow[], lab: Lab, machine: string): CalibrationOutcome {
  const machines = calibratedMachines(lab, machine);
  if ('reason' in machines) return { kind: 'refused', reason: machines.reason };
  const { builds, mistakes } = recordedBuilds(rows, (written) => partNamed(written, machines, lab));
  const all = builds.length < FEWEST_BUILDS ? [...mistakes, tooFew(rows, builds.length)] : mistakes;
  if (all.length > 0) return { kind: 'mistakes', mistakes: all };
  const toFit = buildsToFit(builds, machines);
  try {
    const fit = fitBuildTime(
      toFit.map(({ measured }) => measured),
      machines.builds.time,
    );
    return {
      kind: 'calibration',
      calibration: describe(fit, toFit, lab, machine, machines.builds.timeFactor),
    };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return { kind: 'refused', reason: error.message };
  }
}

function tooFew(rows: readonly BuildRow[], builds: number): RowMistake {
  const number =
    builds === 0 ? 'There is no build' : builds === 1 ? 'There is one build' : `There are ${builds} builds`;
  return {
    line: rows[rows.length - 1]?.line ?? 1,
    column: 'build',
    message: `${number} in this list, and a fit takes at least ${FEWEST_BUILDS}: with fewer nobody can say how far estimates are off.`,
    found: '',
    expected: 'better ten builds that differ in height and in volume',
    write: 'further builds, or keep the typical values until there are more',
  };
}

function describe(
  fit: BuildTimeFit,
  toFit: readonly BuildToFit[],
  lab: Lab,
  machines: string,
  factorNow: Distribution,
): Calibration {
  const builds = toFit.map(
    ({ recorded, measured, hoursNow, fits }, index): CalibratedBuild => ({
      name: recorded.name,
      line: recorded.line,
      pieces: measured.pieces,
      height: measured.height,
      measuredHours: recorded.hours,
      estimatedHours: recorded.hours / (fit.ratios[index] ?? 1),
      estimatedHoursNow: hoursNow,
      fits,
    }),
  );
  const said = {
    lab: lab.name,
    machines,
    model: fit.model.kind,
    parameters: parametersOf(fit),
    spread: {
      value: variationOf(fit.spread),
      low: variationOf(fit.spreadLow),
      high: highOf(fit.spreadHigh),
      level: LEVEL,
      now: factorNow.kind === 'lognormal' ? variationOf(factorNow.logStandardDeviation) : 0,
    },
    explained: fit.explained,
    degreesOfFreedom: fit.degreesOfFreedom,
    errors: { median: fit.medianError, largest: fit.largestError },
    errorsNow: errorsOf(builds),
    builds,
    doubt: fitDoubt(machines, { ...fit, builds: builds.length }),
  };
  return {
    ...said,
    notToldApart: notToldApart(fit),
    verdict: fitVerdict(said),
    warnings: fitWarnings(said),
    lines: scenarioLines(fit),
  };
}

/** The upper end of the spread; null where it is more than anybody could make use of. */
function highOf(logStandardDeviation: number): number | null {
  const variation = variationOf(logStandardDeviation);
  return variation > WIDEST_SPREAD ? null : variation;
}

function parametersOf({ model, parameters }: BuildTimeFit): CalibrationAnswer['parameters'] {
  return parameters.map(({ name, value, standardError, start, origin, isUsual }) => {
    const usual = BUILD_TIME_PARAMETERS[model.kind].find((parameter) => parameter.name === name);
    return {
      name,
      ...parameterWords(name),
      value,
      standardError,
      now: start,
      usual: { low: usual?.low ?? value, typical: usual?.typical ?? value, high: usual?.high ?? value },
      isUsual,
      origin,
    };
  });
}

/** How far the present estimates are off, as `BuildTimeFit` has it for the fitted ones. */
function errorsOf(builds: readonly CalibratedBuild[]): EstimateErrors {
  const errors = builds
    .map(({ measuredHours, estimatedHoursNow }) => Math.abs(estimatedHoursNow / measuredHours - 1))
    .sort((first, second) => first - second);
  const at = (index: number): number => errors[index] ?? 0;
  return {
    median: (at(Math.floor((errors.length - 1) / 2)) + at(Math.floor(errors.length / 2))) / 2,
    largest: at(errors.length - 1),
  };
}
