import type { BuildSpace, PartShape, Process } from '@buildweek/model';

/** Units that numbers of a mesh may be in; the words of the 3MF core specification are in brackets. */
export const MESH_UNITS = [
  /** (micron) */
  'micron',
  /** (millimeter) */
  'mm',
  /** (centimeter) */
  'cm',
  /** (meter) */
  'm',
  /** (inch) */
  'inch',
  /** (foot) */
  'foot',
] as const;
export type MeshUnit = (typeof MESH_UNITS)[number];

/** How a part is put up: as it lies in the file, or as suits the process best. */
export type MeshOrientation = 'as given' | 'best';

/** A mesh that a part of a scenario names. */
export interface ShapeRequest {
  /** As it is written, from the scenario. */
  readonly path: string;
  readonly process: Process;
  /** Of the numbers in the file; null for files that say it themselves. */
  readonly unit: MeshUnit | null;
  readonly orientation: MeshOrientation;
  /** Where it will be built. */
  readonly space: BuildSpace;
}

/** What came of reading a mesh. */
export type ShapeAnswer =
  | {
      readonly kind: 'shape';
      readonly shape: PartShape;
      /** Why it stands as it does, a few words. */
      readonly reason: string;
      /** What is wrong with the mesh though it could be measured, a sentence each. */
      readonly notes: readonly string[];
    }
  | {
      readonly kind: 'refused';
      /** Why it cannot be measured, one sentence. */
      readonly message: string;
      /** What to write, or to do, instead. */
      readonly write: string;
    };

/** Reads the meshes that a scenario names; whoever reads files gives it. */
export type ShapeReader = (request: ShapeRequest) => ShapeAnswer;
