import type { BuildTimeModel } from '@buildweek/model';
import type { ClassTexts } from '../fields.ts';
import { rangeText, type TypicalValue, typicalText, typicalValue } from './typical-value.ts';

/** What builds of a class follow from when the shapes of their parts are known. */
export interface ClassShape {
  readonly time: Exclude<BuildTimeModel['kind'], 'volume and height'>;
  /** Worded as in a scenario file. */
  readonly texts: ClassTexts;
  /** `bed`, `parts` and `virgin` of `powder`; empty without powder. */
  readonly powder: ClassTexts;
  readonly values: readonly TypicalValue[];
}

type Three = readonly [low: number, typical: number, high: number];

const FILAMENT_RATES =
  'tens of cm3 per hour at 0.2 mm layers: Go, Schiffres, Stevens and Hart, Additive Manufacturing 16 (2017) 1-11; ' +
  'the numbers themselves are common practice';
const SCAN_SHARE =
  'common practice, no source; split so that with a usual filling a layer takes what it does in all';

const DENSITY =
  'the most that is practical; most beds come to 5 to 20 %, usually 8 to 12 %: common practice, no source';

/** Values that a scenario words together, or under another key than their name. */
const WORDED_TOGETHER = [
  ...['platform width', 'platform depth', 'platform height', 'bottom layers', 'time per bottom layer'],
  ...['cool-down', 'cool-down per mm', 'powder in the bed', 'powder in parts', 'virgin powder'],
];

/**
 * Build space, layers and rates of the machine classes. All of it is common practice, no source, except where
 * it says so: replace it by what your own machines show.
 *
 * The cool-down is a time for any build and one for its height. With the typical rates a cake grows about 10 mm
 * an hour in a compact powder machine and 8 mm in a large one, so that 0.06 and 0.09 h per mm make the cool-down
 * 0.6 to 0.8 of the print time, and a cake of some millimetres cools for little more than the first term.
 */
export const MACHINE_SHAPES: ReadonlyMap<string, ClassShape> = new Map<string, ClassShape>([
  [
    'small MEX',
    classShape('extrusion', [
      ...platform([180, 250, 300], [180, 250, 300], [180, 250, 400]),
      typicalValue('margin', 'mm', [2, 5, 10]),
      typicalValue('spacing', 'mm', [3, 5, 10]),
      typicalValue('layer', 'mm', [0.1, 0.2, 0.3]),
      typicalValue('lays down', 'mm3 per s', [3, 8, 20], FILAMENT_RATES),
      typicalValue('time per layer', 's', [1, 3, 8]),
      ...deposit([0.8, 1.2, 2], [0.6, 0.8, 1.2], [10, 20, 50]),
      typicalValue('print time spread', '%', [10, 15, 25]),
    ]),
  ],
  [
    'heated MEX',
    classShape('extrusion', [
      ...platform([250, 350, 500], [250, 300, 500], [300, 350, 600]),
      typicalValue('margin', 'mm', [5, 10, 15]),
      typicalValue('spacing', 'mm', [3, 5, 10]),
      typicalValue('layer', 'mm', [0.13, 0.25, 0.33]),
      typicalValue('lays down', 'mm3 per s', [4, 10, 25], FILAMENT_RATES),
      typicalValue('time per layer', 's', [2, 4, 10]),
      ...deposit([0.8, 1.5, 3], [0.8, 1, 1.5], [15, 30, 100]),
      typicalValue('print time spread', '%', [10, 15, 25]),
    ]),
  ],
  [
    'small mask VPP',
    classShape('mask', [
      ...platform([120, 150, 220], [70, 90, 130], [150, 180, 250]),
      typicalValue('margin', 'mm', [2, 3, 5]),
      typicalValue('spacing', 'mm', [1, 2, 4]),
      typicalValue('layer', 'mm', [0.025, 0.05, 0.1]),
      typicalValue('time per layer', 's', [4, 8, 20]),
      typicalValue('bottom layers', '', [3, 5, 8]),
      typicalValue('time per bottom layer', 's', [20, 40, 60]),
      typicalValue('print time spread', '%', [3, 5, 10]),
    ]),
  ],
  [
    'large laser VPP',
    classShape('laser vat', [
      ...platform([250, 450, 750], [250, 450, 750], [250, 400, 550]),
      typicalValue('margin', 'mm', [5, 10, 20]),
      typicalValue('spacing', 'mm', [2, 5, 10]),
      typicalValue('layer', 'mm', [0.05, 0.1, 0.15]),
      typicalValue('time per layer', 's', [15, 25, 40], SCAN_SHARE),
      typicalValue('scans', 'mm2 per s', [300, 800, 2500], SCAN_SHARE),
      typicalValue('print time spread', '%', [10, 15, 25]),
    ]),
  ],
  [
    'compact PBF',
    classShape('powder bed', [
      ...platform([150, 170, 200], [150, 170, 200], [200, 280, 330]),
      typicalValue('margin', 'mm', [3, 5, 10]),
      typicalValue('spacing', 'mm', [2, 3, 5]),
      typicalValue('layer', 'mm', [0.08, 0.1, 0.12]),
      typicalValue('time per layer', 's', [12, 22, 40], SCAN_SHARE),
      typicalValue('scans', 'mm2 per s', [100, 250, 800], SCAN_SHARE),
      ...powderBed([6, 12, 25], [30, 40, 50]),
      typicalValue('cool-down', 'h', [1, 1.5, 2]),
      typicalValue('cool-down per mm', 'h', [0.05, 0.06, 0.1]),
      typicalValue('print time spread', '%', [5, 10, 20]),
    ]),
  ],
  [
    'large PBF',
    classShape('powder bed', [
      ...platform([300, 350, 400], [300, 350, 400], [300, 450, 600]),
      typicalValue('margin', 'mm', [5, 10, 15]),
      typicalValue('spacing', 'mm', [2, 4, 6]),
      typicalValue('layer', 'mm', [0.08, 0.1, 0.15]),
      typicalValue('time per layer', 's', [15, 25, 45], SCAN_SHARE),
      typicalValue('scans', 'mm2 per s', [300, 700, 2500], SCAN_SHARE),
      ...powderBed([8, 15, 30], [20, 40, 50]),
      typicalValue('cool-down', 'h', [1, 2, 4]),
      typicalValue('cool-down per mm', 'h', [0.06, 0.09, 0.13]),
      typicalValue('print time spread', '%', [5, 10, 20]),
    ]),
  ],
]);

function platform(width: Three, depth: Three, height: Three): TypicalValue[] {
  return [
    typicalValue('platform width', 'mm', width),
    typicalValue('platform depth', 'mm', depth),
    typicalValue('platform height', 'mm', height),
  ];
}

function deposit(walls: Three, skins: Three, infill: Three): TypicalValue[] {
  return [
    typicalValue('walls', 'mm', walls),
    typicalValue('skins', 'mm', skins),
    typicalValue('infill', '%', infill),
    typicalValue('support density', '%', [10, 15, 30]),
  ];
}

function powderBed(bedding: Three, virgin: Three): TypicalValue[] {
  return [
    typicalValue('packing density', '%', [15, 20, 30], DENSITY),
    typicalValue('boxes fill', '%', [30, 40, 60]),
    typicalValue('bedding', 'mm', bedding),
    typicalValue('powder in the bed', 'g per cm3', [0.42, 0.45, 0.5]),
    typicalValue('powder in parts', 'g per cm3', [0.93, 1, 1.05]),
    typicalValue('virgin powder', '%', virgin),
  ];
}

function classShape(time: ClassShape['time'], values: readonly TypicalValue[]): ClassShape {
  const found = new Map(values.map((value) => [value.name, value]));
  const texts: Record<string, string> = {};
  for (const value of values) {
    if (!WORDED_TOGETHER.includes(value.name)) texts[value.name] = typicalText(value);
  }
  const [width, depth, height] = ['width', 'depth', 'height'].map((side) => found.get(`platform ${side}`));
  texts.platform = `${width?.typical} x ${depth?.typical} x ${height?.typical} mm`;
  const bottom = found.get('time per bottom layer');
  if (bottom !== undefined) {
    texts['bottom layers'] = `${found.get('bottom layers')?.typical} at ${typicalText(bottom)} each`;
  }
  const coolDown = found.get('cool-down');
  const further = found.get('cool-down per mm');
  if (coolDown !== undefined && further !== undefined) {
    texts['cool-down'] = `${rangeText(coolDown)}, plus ${typicalText(further)} per mm`;
  }
  const [bed, parts, virgin] = ['powder in the bed', 'powder in parts', 'virgin powder'].map((name) =>
    found.get(name),
  );
  const powder: ClassTexts =
    bed === undefined || parts === undefined || virgin === undefined
      ? {}
      : { bed: typicalText(bed), parts: typicalText(parts), virgin: typicalText(virgin) };
  return { time, texts, powder, values };
}
