import type { Lab } from '@buildweek/model';
import { Fields } from './fields.ts';
import { type FileResolver, Files } from './files.ts';
import { buildLab } from './lab/build-lab.ts';
import { readFile } from './read/read-file.ts';
import { Reading } from './reading.ts';
import type { Scenario } from './scenario.ts';
import type { MeshOrientation, MeshUnit, ShapeReader } from './shape-reader.ts';
import { madeEntry, madeGroup, madeScalar, madeScalars } from './source/made-node.ts';
import { readYaml } from './source/read-yaml.ts';
import { entryOf, type SourceNode } from './source/source-node.ts';
import { SourceText } from './source/source-text.ts';
import { checkStructure } from './structure.ts';
import type { Finish } from './words/finish.ts';

/** A part that a lab is asked about, worded as in a scenario file. */
export interface AskedPart {
  readonly finish: Finish;
  readonly shape:
    | {
        readonly kind: 'mesh';
        readonly path: string;
        readonly unit: MeshUnit | null;
        readonly orientation: MeshOrientation;
      }
    | {
        readonly kind: 'size';
        /** As `42 x 42 x 11 mm`, `5200 mm3`, `60 cm2`, `800 mm3`, `120 mm2`. */
        readonly size: string;
        readonly volume: string;
        readonly surface: string;
        readonly supportedVolume: string;
        readonly supportContact: string;
      };
}

/** A route that can make the part: the lab with this part type alone, under the name of the route. */
export interface WayOfMakingPart {
  readonly route: string;
  readonly lab: Lab;
  /** How the part stands in a build, and why; null when that was said. */
  readonly stands: string | null;
}

export interface WaysOfMakingPart {
  readonly ways: readonly WayOfMakingPart[];
  /** Routes with a build that cannot make it, each with the reason. */
  readonly impossible: readonly { readonly route: string; readonly reason: string }[];
}

/** Sections that say what the lab has to do now; the question is about one part alone. */
const LEFT_OUT = ['parts', 'demand', 'sent out', 'at the start', 'targets'];

/**
 * Sends one part through every route of a scenario that has a build, each as if the file had no other part.
 *
 * @param text of a scenario that `readScenario` has found nothing wrong with
 * @throws Error when the text is no scenario
 */
export function readWaysOfMaking(
  text: string,
  fileName: string,
  part: AskedPart,
  resolve: FileResolver | null,
  shapes: ShapeReader,
): WaysOfMakingPart {
  const source = new SourceText(fileName, text);
  const { root } = readYaml(source);
  if (root?.kind !== 'map') throw new Error(`${fileName} is not a scenario.`);
  const routes = entryOf(root, 'routes')?.node;
  const names = routes?.kind === 'map' ? routes.entries.map((entry) => entry.key) : [];
  const ways: WayOfMakingPart[] = [];
  const impossible: { route: string; reason: string }[] = [];
  for (const route of names) {
    const kept = root.entries.filter((entry) => !LEFT_OUT.includes(entry.key));
    const parts = askedNode(route, part, entryOf(root, 'money') !== undefined);
    const entries = [...kept, madeEntry('parts', parts), madeEntry('demand', demandNode(route))];
    const reading = new Reading(source, { ...root, entries }, new Files(resolve), shapes);
    checkStructure(reading);
    const scenario = readFile(new Fields(reading, []));
    const lab = buildLab(scenario, reading);
    const [built] = lab.parts;
    if (built?.stages.every((stage) => stage.kind !== 'build')) continue;
    const error = reading.problems.find((problem) => problem.severity === 'error');
    if (error !== undefined) {
      impossible.push({ route, reason: ofThePart(error.message, route) });
      continue;
    }
    if (!makesFinish(scenario, route, part.finish)) {
      impossible.push({ route, reason: `No stage of the route makes a part ${part.finish}.` });
      continue;
    }
    const stands = reading.assumptions.find(({ what }) => what === `parts / ${route} / as it stands`);
    ways.push({ route, lab, stands: stands?.value ?? null });
  }
  return { ways, impossible };
}

/**
 * Whether a route has a stage that is there for a smooth finish and not for cleaned parts as well; what comes off it
 * else is as any other part.
 */
export function makesFinish({ routes }: Pick<Scenario, 'routes'>, route: string, finish: Finish): boolean {
  if (finish !== 'smooth') return true;
  const stages = routes.find(({ name }) => name === route)?.stages ?? [];
  return stages.some(({ finishes }) => finishes?.includes('smooth') && !finishes.includes('cleaned'));
}

/** The part type is called by its route here; to whoever asks there is only the part. */
export function ofThePart(message: string, route: string): string {
  const text = message.replaceAll(`"${route}"`, 'the part');
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** @param isPriced whether what the material costs has to be said: the question is about time alone */
function askedNode(route: string, { shape, finish }: AskedPart, isPriced: boolean): SourceNode {
  const costs: Readonly<Record<string, string>> = isPriced ? { 'material cost': '0' } : {};
  const keys = { route, finish, ...shapeKeys(shape), ...costs };
  return madeGroup({ [route]: madeGroup(madeScalars(keys)) });
}

/** How the shape of a part is worded in a scenario. */
export function shapeKeys(shape: AskedPart['shape']): Readonly<Record<string, string>> {
  return shape.kind === 'mesh'
    ? {
        mesh: shape.path,
        orientation: shape.orientation,
        ...(shape.unit === null ? {} : { unit: shape.unit }),
      }
    : {
        size: shape.size,
        volume: shape.volume,
        surface: shape.surface,
        'supported volume': shape.supportedVolume,
        'support contact': shape.supportContact,
      };
}

/** A part that nobody asks for would be found unused. */
function demandNode(route: string): SourceNode {
  return madeGroup({ [route]: madeGroup({ jobs: madeScalar('1 per week') }) });
}
