export type { FileResolver } from './files.ts';
export { type JsonSchema, scenarioJsonSchema } from './json-schema.ts';
export { formatProblem, type Problem } from './problem.ts';
export { readScenario, type ScenarioReading } from './read-scenario.ts';
export type * from './scenario.ts';
export {
  MESH_UNITS,
  type MeshOrientation,
  type MeshUnit,
  type ShapeAnswer,
  type ShapeReader,
  type ShapeRequest,
} from './shape-reader.ts';
