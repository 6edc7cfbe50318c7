import type { BuildSpace, BuildTimeModel, PowderUse, Process, ShapedBuilds } from '@buildweek/model';
import type { ClassShape } from '../classes/machine-shapes.ts';
import type { Fields } from '../fields.ts';
import { bottomLayers, printTimeSpread, secondsPerLayer } from '../words/layers.ts';
import { density, measure, rate } from '../words/measure.ts';
import { share, someShare } from '../words/numbers.ts';
import { layerFreePrintTime } from '../words/print-time.ts';
import { size, sizeText } from '../words/size.ts';

/** Keys of a machine that say how builds are packed and timed from the shapes of their parts. */
const COMMON_KEYS = ['platform', 'margin', 'spacing', 'print time spread'];
const LAYER_KEYS = ['layer', 'time per layer'];
const POWDER_KEYS = ['packing density', 'boxes fill', 'powder'];
const KEYS_OF_TIME: Readonly<Record<BuildTimeModel['kind'], readonly string[]>> = {
  extrusion: [...LAYER_KEYS, 'lays down', 'walls', 'skins', 'infill', 'support density'],
  mask: [...LAYER_KEYS, 'bottom layers'],
  'laser vat': [...LAYER_KEYS, 'scans'],
  'powder bed': [...LAYER_KEYS, 'scans', 'bedding'],
  'volume and height': ['print time'],
};
const SHAPE_KEYS = [...new Set([...COMMON_KEYS, ...POWDER_KEYS, ...Object.values(KEYS_OF_TIME).flat()])];

/** What is said of a machine before the keys for shapes are read. */
interface MachineBasics {
  readonly process: Process;
  /** What its class says; null: no class. */
  readonly usual: ClassShape | null;
  /** Whether parts with a shape are built on it. */
  readonly isAsked: boolean;
  readonly coolDownHoursPerMillimetre: number;
}

/**
 * How the builds of a machine are packed and timed.
 *
 * @param fields of the machine, with the texts of its class for these keys when `isAsked`
 * @returns null when no part with a shape is built on it and it says nothing of it
 */
export function readShapedBuilds(fields: Fields, machine: MachineBasics): ShapedBuilds | null {
  const written = SHAPE_KEYS.filter((key) => fields.has(key));
  const isInDoubt = ['class', 'process'].some((key) => fields.reading.isInDoubt(fields.path, key));
  if (isInDoubt) return null;
  if (!machine.isAsked && written.length === 0) {
    if (machine.coolDownHoursPerMillimetre > 0) refuseHeight(fields);
    return null;
  }
  if (!fields.has('platform') && fields.classText('platform') === undefined) {
    const why = written.length > 0 ? `"${written[0]}"` : 'the size of its parts';
    fields.missing(
      'platform',
      `width x depth x height of its build space, which ${why} needs`,
      EXAMPLE_PLATFORM,
    );
    return null;
  }
  const time = timeKind(fields, machine);
  if (time === null && fields.has('process')) {
    fields.report(
      'process',
      'value',
      'How such a machine prints is not known.',
      'MEX, VPP or PBF, or a print time by volume and height',
      'print time: 1 h per build plus 0.03 h per cm3 plus 0.5 h per cm beside it',
    );
  } else if (time === null) {
    fields.missing(
      'process',
      'MEX, VPP or PBF, or a print time by volume and height',
      'process: MEX, or: print time: 1 h per build plus 0.03 h per cm3 plus 0.5 h per cm',
    );
  }
  if (time === null) return null;
  refuseOthers(fields, machine, time);
  const space = readSpace(fields, machine.process);
  const model = readTime(fields, time);
  return {
    space,
    time: model,
    timeFactor: fields.readOr('print time spread', printTimeSpread, 'none'),
    coolDownHoursPerMillimetre: machine.coolDownHoursPerMillimetre,
    powder: machine.process === 'PBF' ? readPowder(fields, machine.usual) : null,
  };
}

/** Without parts of a known size nobody knows how high a build is. */
function refuseHeight(fields: Fields): void {
  fields.report(
    'cool-down',
    'value',
    'Nothing is known of the height of these builds: no part with a size or a mesh is built here.',
    'one cool-down for builds of any height, or parts with a size and a platform',
    '4 to 20 h, usually 10',
  );
}

const EXAMPLE_PLATFORM = 'platform: 250 x 250 x 250 mm';

/** The model that the keys belong to; null: nothing says so. */
function timeKind(fields: Fields, { process, usual }: MachineBasics): BuildTimeModel['kind'] | null {
  if (fields.has('print time')) return 'volume and height';
  switch (process) {
    case 'MEX':
      return 'extrusion';
    case 'PBF':
      return 'powder bed';
    case 'VPP':
      // The class of another process says nothing of a vat.
      if (usual?.time === 'mask' || usual?.time === 'laser vat') return usual.time;
      return fields.has('scans') ? 'laser vat' : 'mask';
    case 'other':
      return null;
  }
}

function refuseOthers(fields: Fields, { process }: MachineBasics, time: BuildTimeModel['kind']): void {
  const known = [...COMMON_KEYS, ...KEYS_OF_TIME[time], ...(process === 'PBF' ? POWDER_KEYS : [])];
  const reason =
    time === 'volume and height'
      ? '"print time" says how long a build prints.'
      : `${REASONS[time]} print in another way.`;
  for (const key of SHAPE_KEYS) {
    if (!known.includes(key)) fields.refuse(key, reason, 'the machine without it');
  }
}

const REASONS: Readonly<Record<Exclude<BuildTimeModel['kind'], 'volume and height'>, string>> = {
  extrusion: 'MEX machines',
  mask: 'VPP machines with a mask',
  'laser vat': 'VPP machines with a laser',
  'powder bed': 'PBF machines',
};

/** Where a part alone has to fit on a machine of a class. */
export function spaceOfClass({ texts }: ClassShape): BuildSpace {
  const length = measure('length', '3 mm', { orZero: true });
  return {
    kind: 'platform',
    ...size(texts.platform ?? ''),
    margin: length(texts.margin ?? '0 mm'),
    spacing: length(texts.spacing ?? '0 mm'),
  };
}

function readSpace(fields: Fields, process: Process): BuildSpace {
  const platform = fields.read('platform', size) ?? { width: 1e4, depth: 1e4, height: 1e4 };
  const margin = fields.readOr('margin', measure('length', '3 mm', { orZero: true }), '0 mm');
  const spacing = fields.readOr('spacing', measure('length', '2 mm', { orZero: true }), '2 mm');
  const narrow = Math.min(platform.width, platform.depth);
  if (narrow <= 2 * margin) {
    const key = fields.has('margin') ? 'margin' : 'platform';
    fields.report(
      key,
      'value',
      `A margin of ${margin} mm on both sides leaves nothing of a platform of ${sizeText(platform)}.`,
      `a margin below ${narrow / 2} mm`,
      `for example: ${key === 'margin' ? '3 mm' : '250 x 250 x 250 mm'}`,
    );
  } else if (narrow - 2 * margin <= spacing) {
    const key = fields.has('spacing') ? 'spacing' : 'platform';
    fields.report(
      key,
      'value',
      `A spacing of ${spacing} mm is more than the platform of ${sizeText(platform)} has between its margins.`,
      `a spacing below ${Number((narrow - 2 * margin).toFixed(3))} mm`,
      `for example: ${key === 'spacing' ? '2 mm' : '250 x 250 x 250 mm'}`,
    );
  }
  const sides = { ...platform, margin, spacing };
  if (process !== 'PBF') return { kind: 'platform', ...sides };
  return {
    kind: 'powder bed',
    ...sides,
    packingDensity: fields.need(
      'packing density',
      someShare,
      0.1,
      'which share of the cake is part at most',
      'packing density: 10 %',
    ),
    boxShare: fields.readOr('boxes fill', someShare, '60 %'),
  };
}

function readTime(fields: Fields, kind: BuildTimeModel['kind']): BuildTimeModel {
  if (kind === 'volume and height') {
    const print = fields.read('print time', layerFreePrintTime);
    return { kind, ...(print ?? { hoursPerBuild: 1, hoursPerCubicCentimetre: 0, hoursPerCentimetre: 0 }) };
  }
  const layers = {
    layer: fields.need('layer', measure('length', '0.1 mm'), 1, 'how thick a layer is', 'layer: 0.1 mm'),
    secondsPerLayer: fields.need(
      'time per layer',
      secondsPerLayer,
      1,
      TIME_PER_LAYER[kind],
      'time per layer: 8 s',
    ),
  };
  switch (kind) {
    case 'extrusion':
      return {
        kind,
        ...layers,
        rate: fields.need(
          'lays down',
          rate('volume', '8 mm3 per s'),
          1,
          'how much it lays down in a second',
          'lays down: 8 mm3 per s',
        ),
        wallThickness: fields.readOr('walls', measure('length', '1.2 mm', { orZero: true }), '1.2 mm'),
        skinThickness: fields.readOr('skins', measure('length', '0.8 mm', { orZero: true }), '0.8 mm'),
        infillShare: fields.readOr('infill', share(100), '20 %'),
        supportShare: fields.readOr('support density', share(100), '15 %'),
      };
    case 'mask':
      return { kind, ...layers, ...readBottomLayers(fields, layers.secondsPerLayer) };
    case 'laser vat':
      return { kind, ...layers, scanRate: readScans(fields) };
    case 'powder bed':
      return {
        kind,
        ...layers,
        scanRate: readScans(fields),
        bedding: fields.readOr('bedding', measure('length', '12 mm', { orZero: true }), '12 mm'),
      };
  }
}

const TIME_PER_LAYER: Readonly<Record<Exclude<BuildTimeModel['kind'], 'volume and height'>, string>> = {
  extrusion: 'what every layer of a part takes beside the material it lays down',
  mask: 'how long a layer takes: exposure, separation and settling',
  'laser vat': 'how long recoating takes, without the scanning',
  'powder bed': 'how long recoating takes, without the scanning',
};

/** The model adds the time of bottom layers to that of any layer; most people know the whole of it. */
function readBottomLayers(fields: Fields, secondsPerLayer: number) {
  const { number, seconds, isMore } = fields.readOr('bottom layers', bottomLayers, 'none');
  if (!isMore && seconds < secondsPerLayer) {
    fields.report(
      'bottom layers',
      'value',
      `Bottom layers of ${seconds} s would take less than the ${secondsPerLayer} s of any other.`,
      `at least ${secondsPerLayer} s each`,
      `for example: ${number} at ${5 * secondsPerLayer} s each`,
    );
  }
  return {
    bottomLayers: number,
    secondsPerBottomLayer: isMore ? seconds : Math.max(0, seconds - secondsPerLayer),
  };
}

function readScans(fields: Fields): number {
  return fields.need(
    'scans',
    rate('area', '800 mm2 per s'),
    1,
    'how much area it scans in a second',
    'scans: 800 mm2 per s',
  );
}

function readPowder(fields: Fields, usual: ClassShape | null): PowderUse | null {
  const key = 'powder';
  if (!fields.has(key) && Object.keys(usual?.powder ?? {}).length === 0) return null;
  const group = fields.group(key).withClass(usual?.powder ?? {});
  return {
    bedDensity: group.need('bed', density, 1, 'how dense powder lies in the bed', 'bed: 0.45 g per cm3'),
    partDensity: group.need('parts', density, 1, 'how dense parts are', 'parts: 1.0 g per cm3'),
    virginShare: group.need(
      'virgin',
      share(100),
      0.4,
      'which share of a filling is virgin powder',
      'virgin: 40 %',
    ),
  };
}
