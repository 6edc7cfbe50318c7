import type { BuildTimeModel } from '@buildweek/model';

/** A number of a build time model: what it is, and where it usually lies. */
export interface BuildTimeParameter {
  /** Its key in the model. */
  readonly name: string;
  readonly label: string;
  readonly unit: string;
  readonly low: number;
  readonly typical: number;
  readonly high: number;
  readonly source: string;
}

const PRACTICE = 'common practice, no source';

function parameter(
  name: string,
  label: string,
  unit: string,
  [low, typical, high]: readonly [number, number, number],
  source = PRACTICE,
): BuildTimeParameter {
  return { name, label, unit, low, typical, high, source };
}

/**
 * Every parameter of every model with its usual range, over machines of all sizes. Seconds per layer are those of
 * recoating, heating and movement alone where there is a scan rate beside them.
 */
export const BUILD_TIME_PARAMETERS: Readonly<Record<BuildTimeModel['kind'], readonly BuildTimeParameter[]>> =
  {
    extrusion: [
      parameter('layer', 'layer thickness', 'mm', [0.1, 0.2, 0.33]),
      parameter(
        'rate',
        'rate of laying down',
        'mm3/s',
        [3, 8, 25],
        'J. Go, S. N. Schiffres, A. G. Stevens and A. J. Hart, Additive Manufacturing 16 (2017), pages 1-11: tens ' +
          'of cm3 per hour, that is 2.8 to 17 mm3/s; the high value is common practice, no source',
      ),
      parameter('secondsPerLayer', 'time per layer of a piece', 's', [1, 4, 15]),
      parameter('wallThickness', 'thickness of the walls', 'mm', [0.8, 1.2, 2.4]),
      parameter('skinThickness', 'thickness of the skins', 'mm', [0.6, 0.8, 1.6]),
      parameter('infillShare', 'infill', 'share', [0.1, 0.2, 0.5]),
      parameter('supportShare', 'share of the supported volume that is laid down', 'share', [0.1, 0.2, 0.3]),
    ],
    mask: [
      parameter('layer', 'layer thickness', 'mm', [0.025, 0.05, 0.1]),
      parameter('secondsPerLayer', 'time per layer', 's', [4, 8, 20]),
      parameter('bottomLayers', 'first layers that are exposed longer', 'layers', [3, 5, 8]),
      parameter('secondsPerBottomLayer', 'further time for each of the first layers', 's', [20, 40, 60]),
    ],
    'laser vat': [
      parameter('layer', 'layer thickness', 'mm', [0.05, 0.1, 0.15]),
      parameter('secondsPerLayer', 'time per layer, without scanning', 's', [15, 30, 60]),
      parameter('scanRate', 'scan rate', 'mm2/s', [50, 200, 800]),
    ],
    'powder bed': [
      parameter('layer', 'layer thickness', 'mm', [0.08, 0.1, 0.15]),
      parameter('secondsPerLayer', 'time per layer, without scanning', 's', [12, 25, 45]),
      parameter('scanRate', 'scan rate', 'mm2/s', [100, 600, 2500]),
      parameter('bedding', 'plain powder below and above the parts', 'mm', [5, 10, 25]),
    ],
    'volume and height': [
      parameter('hoursPerBuild', 'time per build', 'h', [0, 1, 3]),
      parameter(
        'hoursPerCubicCentimetre',
        'time per volume of part',
        'h/cm3',
        [0.001, 0.03, 0.3],
        'typical: I. Kucukkoc, Computers and Operations Research 105 (2019), metal, value from memory; the rest ' +
          'common practice, no source',
      ),
      parameter(
        'hoursPerCentimetre',
        'time per height of the build',
        'h/cm',
        [0.05, 0.7, 3],
        'typical: I. Kucukkoc, Computers and Operations Research 105 (2019), metal, value from memory; the rest ' +
          'common practice, no source',
      ),
    ],
  };
