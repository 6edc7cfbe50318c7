import type { BuildSpace, PartShape } from '@buildweek/model';
import { BuildPacker, type Dimensions, shapeOfDimensions } from '@buildweek/timing';
import type { ShapeReader } from './shape-reader.ts';
import type { AskedPart } from './ways-of-making.ts';
import { measure } from './words/measure.ts';
import { size, sizeText } from './words/size.ts';
import { type Wording, WordingError } from './words/wording-error.ts';

/** What somebody types of a part that has no mesh, worded as in a scenario file. */
export interface TypedSize {
  readonly size: string;
  readonly volume: string;
  readonly surface?: string;
  readonly supportedVolume?: string;
  readonly supportContact?: string;
}

/** A part of typed size, with what had to be estimated. */
export interface AskedSize {
  readonly shape: AskedPart['shape'];
  /** Lays it on whichever of its sides suits a build space: for a part that may stand in any way. */
  readonly laid: ShapeReader;
  /** A sentence for each measure that was not typed. */
  readonly notes: readonly string[];
}

/** Something typed about a part that cannot be. */
export class AskedSizeError extends Error {
  /** Which of the measures. */
  readonly what: keyof TypedSize;
  readonly write: string;

  constructor(what: keyof TypedSize, message: string, write: string) {
    super(message);
    this.name = 'AskedSizeError';
    this.what = what;
    this.write = write;
  }
}

/**
 * Completes what is typed of a part; what is left out is estimated from its size and volume.
 *
 * @throws AskedSizeError with the measure that is wrong, and what to write instead
 */
export function askedSize(typed: TypedSize): AskedSize {
  const box = read(typed, 'size', size);
  const volume = read(typed, 'volume', measure('volume', '5200 mm3'));
  const surface = readOptional(typed, 'surface', measure('area', '60 cm2'));
  const supportedVolume = readOptional(
    typed,
    'supportedVolume',
    measure('volume', '800 mm3', { orZero: true }),
  );
  const supportContact = readOptional(typed, 'supportContact', measure('area', '120 mm2', { orZero: true }));
  try {
    const dimensions: Dimensions = {
      ...box,
      volume,
      ...(surface === null ? {} : { surface }),
      ...(supportedVolume === null ? {} : { supportedVolume }),
      ...(supportContact === null ? {} : { supportContactArea: supportContact }),
    };
    const shape = shapeOfDimensions(dimensions);
    const usual = 'as such boxes usually have';
    const estimates: readonly (readonly [string, number | null, string])[] = [
      ['surface', surface, `${squareCentimetres(shape.surface)}, that of the box around it`],
      ['volume below overhangs', supportedVolume, `${cubicCentimetres(shape.supportedVolume)}, ${usual}`],
      [
        'area that supports touch',
        supportContact,
        `${squareCentimetres(shape.supportContactArea)}, ${usual}`,
      ],
    ];
    return {
      shape: {
        kind: 'size',
        // Not `sizeText`, which rounds: a full box would no longer hold its volume.
        size: `${box.width} x ${box.depth} x ${box.height} mm`,
        volume: `${shape.volume} mm3`,
        surface: `${shape.surface} mm2`,
        supportedVolume: `${shape.supportedVolume} mm3`,
        supportContact: `${shape.supportContactArea} mm2`,
      },
      laid: ({ space }) => laidIn(dimensions, space),
      notes: estimates
        .filter(([, said]) => said === null)
        .map(([name, , text]) => `The ${name} was not given: taken as ${text}.`),
    };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    const { width, depth, height } = box;
    if (volume > width * depth * height) {
      throw new AskedSizeError('volume', error.message, cubicCentimetres((width * depth * height) / 2));
    }
    const surfaceOfBox = 2 * (width * depth + (width + depth) * height);
    throw new AskedSizeError('surface', error.message, squareCentimetres(surfaceOfBox));
  }
}

/** The part as it lies lowest of all that go into a build space; as it was typed where none does. */
function laidIn(typed: Dimensions, space: BuildSpace): ReturnType<ShapeReader> {
  const { width, depth, height } = typed;
  const layings = [
    typed,
    { ...typed, depth: height, height: depth },
    { ...typed, width: height, height: width },
  ];
  const fitting = layings
    .map(shapeOfDimensions)
    .filter((shape) => new BuildPacker(space, [shape]).most(0) > 0);
  const lowest = fitting.reduce<PartShape | null>(
    (best, shape) => (best === null || shape.height < best.height ? shape : best),
    null,
  );
  const shape = lowest ?? shapeOfDimensions(typed);
  const isTyped = shape.width === width && shape.depth === depth && shape.height === height;
  const reason = isTyped
    ? 'as its size was typed'
    : `laid on another side, ${sizeText(shape)}: the lowest that fits`;
  return { kind: 'shape', shape, reason, notes: [] };
}

function read<Value>(typed: TypedSize, what: keyof TypedSize, wording: Wording<Value>): Value {
  try {
    return wording(typed[what] ?? '');
  } catch (error) {
    if (!(error instanceof WordingError)) throw error;
    throw new AskedSizeError(what, error.message, error.write);
  }
}

function readOptional(typed: TypedSize, what: keyof TypedSize, wording: Wording<number>): number | null {
  return typed[what] === undefined ? null : read(typed, what, wording);
}

function squareCentimetres(squareMillimetres: number): string {
  return `${Number((squareMillimetres / 100).toPrecision(3))} cm2`;
}

function cubicCentimetres(cubicMillimetres: number): string {
  return `${Number((cubicMillimetres / 1000).toPrecision(3))} cm3`;
}
