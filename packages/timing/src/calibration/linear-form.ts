import type { BuildTimeModel, ExtrusionTime } from '@buildweek/model';
import { VAT_SUPPORT_SHARE } from '../build-timer.ts';
import { depositedVolume } from '../deposited-volume.ts';
import { layerCount } from '../layer-count.ts';
import type { MeasuredBuild } from './measured-build.ts';

const SECONDS_PER_HOUR = 3600;

/** One term of the print hours: what is measured times a coefficient that is fitted. */
export interface Term {
  /** Key of the parameter in the model. */
  readonly parameter: string;
  /** What the coefficient is multiplied by, in a build. */
  readonly measure: (build: MeasuredBuild, position: number) => number;
  /** Whether the parameter is an amount per time, and its coefficient the time per amount. */
  readonly isRate: boolean;
  readonly coefficientOf: (parameter: number) => number;
  readonly parameterOf: (coefficient: number) => number;
}

/** The print hours of a model as a sum of terms. What is no parameter of a term is a setting, and taken as given. */
export function termsOf(model: BuildTimeModel): readonly Term[] {
  switch (model.kind) {
    case 'extrusion':
      return [
        rate('rate', (build, position) => depositedIn(model, build, position)),
        seconds('secondsPerLayer', (build) =>
          build.heights === undefined
            ? build.pieces * layerCount(build.height, model.layer)
            : layerCount(build.heights, model.layer),
        ),
      ];
    case 'mask':
      return [
        seconds('secondsPerLayer', (build) => layerCount(build.height, model.layer)),
        seconds('secondsPerBottomLayer', (build) =>
          Math.min(model.bottomLayers, layerCount(build.height, model.layer)),
        ),
      ];
    case 'laser vat':
      return [
        seconds('secondsPerLayer', (build) => layerCount(build.height, model.layer)),
        rate(
          'scanRate',
          (build) => (build.volume + VAT_SUPPORT_SHARE * (build.supportedVolume ?? 0)) / model.layer,
        ),
      ];
    case 'powder bed':
      return [
        seconds('secondsPerLayer', (build) => layerCount(build.height + model.bedding, model.layer)),
        rate('scanRate', (build) => build.volume / model.layer),
      ];
    case 'volume and height':
      return [
        hours('hoursPerBuild', () => 1),
        hours('hoursPerCubicCentimetre', (build) => build.volume / 1000),
        hours('hoursPerCentimetre', (build) => build.height / 10),
      ];
  }
}

function depositedIn(model: ExtrusionTime, build: MeasuredBuild, position: number): number {
  if (build.deposited !== undefined) return build.deposited;
  const { surface, footprint } = build;
  if (surface === undefined || footprint === undefined) {
    throw new RangeError(
      `Measured build ${position + 1} needs its deposited volume, or the surface and the footprint of its parts.`,
    );
  }
  const { volume, supportedVolume = 0 } = build;
  return depositedVolume(model, { volume, surface, footprint, supportedVolume }).total;
}

/** An amount that is worked off at so much per second. */
function rate(parameter: string, amount: Term['measure']): Term {
  const turn = (value: number): number => 1 / (SECONDS_PER_HOUR * value);
  return { parameter, measure: amount, isRate: true, coefficientOf: turn, parameterOf: turn };
}

/** Something that takes so many seconds each time. */
function seconds(parameter: string, times: Term['measure']): Term {
  return {
    parameter,
    measure: times,
    isRate: false,
    coefficientOf: (value) => value / SECONDS_PER_HOUR,
    parameterOf: (coefficient) => coefficient * SECONDS_PER_HOUR,
  };
}

function hours(parameter: string, measure: Term['measure']): Term {
  const same = (value: number): number => value;
  return { parameter, measure, isRate: false, coefficientOf: same, parameterOf: same };
}
