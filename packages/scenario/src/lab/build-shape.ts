import type { PartShape } from '@buildweek/model';
import { shapeOfDimensions } from '@buildweek/timing';
import type { Reading } from '../reading.ts';
import type { ScenarioMachine, ScenarioPart, ScenarioShape } from '../scenario.ts';
import type { SourcePath } from '../source/source-node.ts';
import { areaText, volumeText } from '../words/measure.ts';
import { sizeText } from '../words/size.ts';
import type { PartMeasure } from '../words/stage-time.ts';

/** The shape of a part, and what of it nobody has said or measured. */
export interface KnownShape {
  readonly shape: PartShape;
  /** Estimated from the rest; times by them would be guesses. */
  readonly unsaid: ReadonlySet<PartMeasure>;
}

/**
 * The shape of a part as it stands in a build, typed or measured from its mesh.
 *
 * @param machine on which it is built
 * @returns null when it has none, or when what is said of it is wrong, which is then reported
 */
export function shapeOf(part: ScenarioPart, machine: ScenarioMachine, reading: Reading): KnownShape | null {
  if (part.shape === null) return null;
  const path = ['parts', part.name];
  return part.shape.kind === 'size'
    ? typedShape(part.shape, path, machine, reading)
    : measuredShape(part.shape, path, machine, reading);
}

type TypedShape = Extract<ScenarioShape, { kind: 'size' }>;
type MeshShape = Extract<ScenarioShape, { kind: 'mesh' }>;

function typedShape(
  said: TypedShape,
  path: SourcePath,
  machine: ScenarioMachine,
  reading: Reading,
): KnownShape | null {
  const { size, volume, surface, supportedVolume, supportContact } = said;
  let shape: PartShape;
  try {
    shape = shapeOfDimensions({
      ...size,
      volume,
      ...(surface === null ? {} : { surface }),
      ...(supportedVolume === null ? {} : { supportedVolume }),
      ...(supportContact === null ? {} : { supportContactArea: supportContact }),
    });
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    reading.report([...path, 'size'], 'value', {
      message: error.message,
      found: sizeText(size),
      expected: 'measures that a part can have',
      write: 'size: 42 x 42 x 11 mm, and volume: 5200 mm3',
    });
    return null;
  }
  const unsaid = new Set<PartMeasure>();
  if (surface === null) unsaid.add('surface');
  if (supportContact === null) unsaid.add('support contact');
  const kind = machine.shaped?.time.kind;
  const estimate = (key: string, text: string): void =>
    reading.assume([...path, key], `${text} (estimated from size and volume)`, 'default of the program');
  if (surface === null && kind === 'extrusion') estimate('surface', areaText(shape.surface));
  if (supportedVolume === null && (kind === 'extrusion' || kind === 'laser vat')) {
    estimate('supported volume', volumeText(shape.supportedVolume));
  }
  return { shape, unsaid };
}

function measuredShape(
  said: MeshShape,
  path: SourcePath,
  machine: ScenarioMachine,
  reading: Reading,
): KnownShape | null {
  const meshPath = [...path, 'mesh'];
  const space = machine.shaped?.space;
  // Without a build space the mesh cannot be put up; what is missing has been reported at the machine.
  if (space === undefined) return null;
  const answer = reading.shapes?.({
    path: said.path,
    process: machine.process,
    unit: said.unit,
    orientation: said.orientation,
    space,
  });
  if (answer === undefined) {
    reading.report(meshPath, 'value', {
      message: 'Meshes cannot be read here.',
      found: said.path,
      expected: 'a size and a volume',
      write: 'size: 42 x 42 x 11 mm, and volume: 5200 mm3',
    });
    return null;
  }
  if (answer.kind === 'refused') {
    reading.report(meshPath, 'value', {
      message: answer.message,
      found: said.path,
      expected: 'an STL or 3MF file that holds a part',
      write: answer.write,
    });
    return null;
  }
  for (const note of answer.notes) {
    reading.report(meshPath, 'value', {
      severity: 'warning',
      message: note,
      found: said.path,
      expected: 'a closed mesh whose triangles all face outwards',
      write: 'the mesh without this defect, if its measures matter',
    });
  }
  const { shape, reason } = answer;
  reading.assume([...path, 'as it stands'], `${measuresText(shape)}: ${reason}`, 'measured from a mesh');
  return { shape, unsaid: new Set() };
}

function measuresText(shape: PartShape): string {
  return (
    `${sizeText(shape)}, volume ${volumeText(shape.volume)}, surface ${areaText(shape.surface)}, ` +
    `support contact ${areaText(shape.supportContactArea)}`
  );
}

/** Whether a part says a shape, rightly, wrongly, or under a key that may be meant for it. */
export function saysShape(part: ScenarioPart, reading: Reading): boolean {
  const path = ['parts', part.name];
  const isWritten = (key: string): boolean => reading.nodeAt([...path, key]) !== undefined;
  return ['size', 'mesh'].some(isWritten) || (!isWritten('print') && reading.isMisspelt(path));
}
