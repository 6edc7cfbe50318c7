export { AskedGrowthError, askedGrowth } from './asked-growth.ts';
export { type AskedSize, AskedSizeError, askedSize, type TypedSize } from './asked-size.ts';
export { changeGroup, changeNoted, type NotedValue } from './change/change-groups.ts';
export { changeScenario } from './change/change-scenario.ts';
export { ChangeError, type ChangeWording, placeText, readChanges } from './change/change-wording.ts';
export { FACTORS, type Factor, factorChanges } from './change/factor-changes.ts';
export { TYPICAL_LAB } from './classes/typical-lab.ts';
export {
  type TypicalClass,
  type TypicalParameter,
  type TypicalUse,
  typicalMachines,
} from './classes/typical-machines.ts';
export { usualDoubts } from './doubts/usual-doubts.ts';
export type { FileResolver } from './files.ts';
export { type JsonSchema, scenarioJsonSchema } from './json-schema.ts';
export { listed, nearest } from './nearest.ts';
export { formatProblem, type Problem } from './problem.ts';
export {
  type AskedRequest,
  type RequestWay,
  type RequestWays,
  readRequest,
} from './read-request.ts';
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
export { readYaml } from './source/read-yaml.ts';
export { describeNode, entryOf, type SourceNode, type SourceSpan } from './source/source-node.ts';
export { SourceText } from './source/source-text.ts';
export { usualStaffOptions } from './staff/usual-options.ts';
export {
  type AskedPart,
  readWaysOfMaking,
  type WayOfMakingPart,
  type WaysOfMakingPart,
} from './ways-of-making.ts';
export { FINISHES, type Finish } from './words/finish.ts';
export { isZone, zoneNames } from './zone.ts';
