import {
  type AskedPart,
  AskedSizeError,
  askedSize,
  type MeshOrientation,
  type MeshUnit,
  type ShapeReader,
  type TypedSize,
} from '@buildweek/scenario';
import { badInput } from '../failure.ts';

/** A shape as options of a command give it. */
export interface ShapeOptions {
  /** Path of the mesh; null when the size is typed. */
  readonly mesh: string | null;
  readonly unit: MeshUnit | null;
  readonly orientation: MeshOrientation;
  readonly typed: TypedSize | null;
}

export interface AskedShape {
  readonly shape: AskedPart['shape'];
  readonly notes: readonly string[];
  /** For a typed size that may lie on any side; null for a mesh. */
  readonly laid: ShapeReader | null;
}

/** The shape that options ask for. @throws Failure for bad input when a typed size is wrong */
export function askedShape({ mesh, typed, unit, orientation }: ShapeOptions): AskedShape {
  if (mesh !== null) {
    const saysUnit = /\.3mf$/i.test(mesh);
    if (saysUnit && unit !== null) throw badInput('A 3MF file says its unit itself: leave out --unit.');
    return {
      shape: { kind: 'mesh', path: mesh, unit: saysUnit ? null : (unit ?? 'mm'), orientation },
      notes: [],
      laid: null,
    };
  }
  if (typed === null) throw new Error('Neither a mesh nor a size is given.');
  try {
    const asked = askedSize(typed);
    if (orientation === 'as given') return { ...asked, laid: null };
    return { ...asked, shape: { kind: 'mesh', path: typed.size, unit: 'mm', orientation } };
  } catch (error) {
    if (!(error instanceof AskedSizeError)) throw error;
    const option = `--${error.what.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;
    throw badInput(
      `${option} ${JSON.stringify(typed[error.what] ?? '')}: ${error.message} Write: ${option} ${JSON.stringify(error.write)}`,
    );
  }
}
