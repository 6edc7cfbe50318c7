export { writeAsciiStl } from './ascii-stl.ts';
export {
  type BuildLimits,
  bestOrientation,
  ORIENTATION_WEIGHTS,
  type OrientationChoice,
} from './best-orientation.ts';
export { writeBinaryStl } from './binary-stl.ts';
export { type LengthUnit, MILLIMETRES_IN } from './length-unit.ts';
export type { Mesh } from './mesh.ts';
export { MeshError } from './mesh-error.ts';
export { type MeshFile, type ReadOptions, readMesh } from './mesh-file.ts';
export { inspectMesh, type MeshDefects, type MeshInspection } from './mesh-inspection.ts';
export { type Orientation, orientations } from './orientations.ts';
export { AS_GIVEN, type Rotation } from './oriented-mesh.ts';
export type { OrientedPart, Process } from './oriented-part.ts';
export { type MeasureOptions, measure, USUAL_OVERHANG_ANGLE } from './part-measures.ts';
export { writeThreeMf } from './three-mf-writer.ts';
