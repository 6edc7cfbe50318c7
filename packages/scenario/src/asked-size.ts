import { shapeOfDimensions } from '@buildweek/timing';
import type { AskedPart } from './ways-of-making.ts';
import { measure } from './words/measure.ts';
import { size } from './words/size.ts';
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
    const shape = shapeOfDimensions({
      ...box,
      volume,
      ...(surface === null ? {} : { surface }),
      ...(supportedVolume === null ? {} : { supportedVolume }),
      ...(supportContact === null ? {} : { supportContactArea: supportContact }),
    });
    const estimates: readonly (readonly [string, number | null, string])[] = [
      ['surface', surface, squareCentimetres(shape.surface)],
      ['volume below overhangs', supportedVolume, cubicCentimetres(shape.supportedVolume)],
      ['area that supports touch', supportContact, squareCentimetres(shape.supportContactArea)],
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
      notes: estimates
        .filter(([, said]) => said === null)
        .map(([name, , text]) => `The ${name} was not given: ${text}, estimated from size and volume.`),
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
