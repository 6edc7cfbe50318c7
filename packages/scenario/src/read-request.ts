import type { Lab, PartType } from '@buildweek/model';
import { Fields } from './fields.ts';
import { type FileResolver, Files } from './files.ts';
import { buildLab } from './lab/build-lab.ts';
import { readFile } from './read/read-file.ts';
import { Reading } from './reading.ts';
import type { ShapeReader } from './shape-reader.ts';
import { madeGroup, madeScalar, madeScalars, withKeys } from './source/made-node.ts';
import { readYaml } from './source/read-yaml.ts';
import { entryOf, type SourceEntry, type SourceNode } from './source/source-node.ts';
import { SourceText } from './source/source-text.ts';
import { checkStructure } from './structure.ts';
import { type AskedPart, makesFinish, ofThePart, shapeKeys } from './ways-of-making.ts';
import { FINISHES, type Finish } from './words/finish.ts';

/** What a colleague asks for: a part that the file knows, or a new one. */
export interface AskedRequest {
  readonly part:
    | { readonly kind: 'of the file'; readonly name: string }
    | { readonly kind: 'new'; readonly shape: AskedPart['shape'] };
  /** Null: as the file says it, cleaned where it says nothing. */
  readonly finish: Finish | null;
  /** Null: on the route of the part its own, on others what most parts there are made of. */
  readonly material: string | null;
}

/** A way of making what is asked for: the whole lab, with the part and a demand of its own that brings no jobs. */
export interface RequestWay {
  readonly route: string;
  readonly finish: Finish;
  readonly material: string;
  readonly lab: Lab;
  /** Name of the part type and of the demand in the lab. */
  readonly name: string;
  /** Whether the file says that the part is made so. */
  readonly isOwn: boolean;
}

export interface RequestWays {
  readonly ways: readonly RequestWay[];
  /** Routes with a build that cannot make it, each with the reason. */
  readonly impossible: readonly { readonly route: string; readonly reason: string }[];
  /** Demand of the file whose promise the request is given, as nobody has said another; null: none. */
  readonly promisedAs: string | null;
}

/** Says a shape; print times and what fits are typed for one process otherwise. */
const SHAPE_KEYS = ['mesh', 'size'];
/** Keys of a part that go with its shape to every route. */
const TAKEN_ALONG = [
  'mesh',
  'unit',
  'orientation',
  'size',
  'volume',
  'surface',
  'supported volume',
  'support contact',
];
const NAME = 'new request';

/**
 * Puts what is asked for beside everything that the lab has to do already, on every route that has a build.
 *
 * @param text of a scenario that `readScenario` has found nothing wrong with
 * @param finishes the one that is asked for, and others to read the route of the part with (of a new part all routes);
 *   a finish that a route does not make, or that makes no difference there, is left out
 * @throws Error when the text is no scenario, or has no part of the name
 */
export function readRequest(
  text: string,
  fileName: string,
  asked: AskedRequest,
  finishes: readonly Finish[],
  resolve: FileResolver | null,
  shapes: ShapeReader,
): RequestWays {
  const source = new SourceText(fileName, text);
  const { root } = readYaml(source);
  if (root?.kind !== 'map') throw new Error(`${fileName} is not a scenario.`);
  const file = new AskedFile(root, asked);
  const remembered = remembering(shapes);
  const ways: RequestWay[] = [];
  const impossible: { route: string; reason: string }[] = [];
  for (const route of file.routes) {
    if (!file.hasShape && route !== file.ownRoute) {
      impossible.push({
        route,
        reason: 'Print times of the part are typed for its own route; a mesh or a size would do for all.',
      });
      continue;
    }
    const reasons: string[] = [];
    const isAlone = file.ownRoute !== null && route !== file.ownRoute;
    for (const finish of isAlone ? finishes.slice(0, 1) : finishes) {
      const reading = new Reading(source, file.with(route, finish), new Files(resolve), remembered);
      checkStructure(reading);
      const scenario = readFile(new Fields(reading, []));
      const lab = buildLab(scenario, reading);
      const part = lab.parts.find(({ name }) => name === file.name);
      if (part?.stages.every((stage) => stage.kind !== 'build') && route !== file.ownRoute) break;
      const error = reading.problems.find((problem) => problem.severity === 'error');
      if (part === undefined || error !== undefined) {
        reasons.push(ofThePart(error?.message ?? 'It cannot be made so.', file.name));
      } else if (!makesFinish(scenario, route, finish) && !file.says(route, finish)) {
        reasons.push(`No stage of the route makes a part ${finish}.`);
      } else if (!ways.some((way) => way.route === route && makesTheSame(way, part))) {
        const isOwn = route === file.ownRoute;
        ways.push({
          route,
          finish,
          material: part.material,
          lab: withoutJobs(lab, file.name),
          name: file.name,
          isOwn,
        });
      }
    }
    const [reason] = reasons;
    if (reason !== undefined && !ways.some((way) => way.route === route)) impossible.push({ route, reason });
  }
  return { ways, impossible, promisedAs: file.promisedAs };
}

/** A scenario file to which a request is added. */
class AskedFile {
  readonly name: string;
  readonly ownRoute: string | null;
  readonly ownFinish: Finish | null;
  readonly hasShape: boolean;
  readonly routes: readonly string[];
  readonly promisedAs: string | null;
  private readonly root: Extract<SourceNode, { kind: 'map' }>;
  private readonly asked: AskedRequest;
  private readonly own: SourceNode | undefined;

  constructor(root: Extract<SourceNode, { kind: 'map' }>, asked: AskedRequest) {
    this.root = root;
    this.asked = asked;
    const parts = entryOf(root, 'parts')?.node;
    const { part } = asked;
    this.own = part.kind === 'new' ? undefined : entryOf(parts, part.name)?.node;
    if (part.kind === 'of the file' && this.own === undefined)
      throw new Error(`There is no part "${part.name}".`);
    this.ownRoute = textAt(this.own, 'route');
    this.ownFinish = FINISHES.find((finish) => finish === (textAt(this.own, 'finish') ?? 'cleaned')) ?? null;
    this.hasShape = this.own === undefined || SHAPE_KEYS.some((key) => entryOf(this.own, key) !== undefined);
    const taken = [...keysOf(parts), ...keysOf(entryOf(root, 'demand')?.node)];
    let name = NAME;
    for (let count = 2; taken.includes(name); count++) name = `${NAME} ${count}`;
    this.name = name;
    this.routes = keysOf(entryOf(root, 'routes')?.node);
    this.promisedAs = this.similarDemand();
  }

  /** Whether the part is made on this route with this finish by the file itself. */
  says(route: string, finish: Finish): boolean {
    return route === this.ownRoute && finish === this.ownFinish;
  }

  /** The file with the request made on a route. */
  with(route: string, finish: Finish): SourceNode {
    const { name, root } = this;
    const added = (section: string, node: SourceNode): SourceNode =>
      withKeys(entryOf(root, section)?.node, { [name]: node });
    return withKeys(root, {
      parts: added('parts', this.partOn(route, finish)),
      demand: added('demand', this.demandNode()),
    });
  }

  private partOn(route: string, finish: Finish): SourceNode {
    const { asked, own } = this;
    const isOwn = route === this.ownRoute;
    const material = asked.material ?? (isOwn ? null : this.usualOn(route, 'material'));
    const settings = isOwn ? null : this.usualOn(route, 'settings');
    // The question is about time: what the material and a service would cost need not be known.
    const costs =
      entryOf(this.root, 'money') === undefined ? {} : { 'material cost': '0', 'price outside': '0' };
    const said = madeScalars({
      route,
      finish,
      ...(material === null ? {} : { material }),
      ...(settings === null ? {} : { settings }),
      ...costs,
    });
    if (isOwn) return withKeys(own, said);
    const { part } = asked;
    if (part.kind === 'new') return madeGroup({ ...said, ...madeScalars(shapeKeys(part.shape)) });
    const kept = own?.kind === 'map' ? own.entries.filter(({ key }) => TAKEN_ALONG.includes(key)) : [];
    return withKeys(madeMap(kept), said);
  }

  /** One job a week is asked for so that the part is used; its jobs are taken out again. */
  private demandNode(): SourceNode {
    const demand = entryOf(entryOf(this.root, 'demand')?.node, this.promisedAs ?? '')?.node;
    const kept = demand?.kind === 'map' ? demand.entries.filter(({ key }) => PROMISE_KEYS.includes(key)) : [];
    const outside = this.outsideNode(demand);
    const said = {
      part: madeScalar(this.name),
      jobs: madeScalar('1 per week'),
      rush: madeScalar('50 %'),
      ...(outside === null ? {} : { 'sent out': outside }),
    };
    return withKeys(madeMap(kept), said);
  }

  /** How long it takes outside is said for all work, or for a demand of this or any part. */
  private outsideNode(similar: SourceNode | undefined): SourceNode | null {
    const demands = entryOf(this.root, 'demand')?.node;
    const all = demands?.kind === 'map' ? demands.entries.map(({ node }) => node) : [];
    const own = [similar, ...all].map((demand) => entryOf(entryOf(demand, 'sent out')?.node, 'takes')?.node);
    const usual = entryOf(entryOf(this.root, 'sent out')?.node, 'takes')?.node;
    const takes = own[0] ?? usual ?? own.find((node) => node !== undefined);
    return takes === undefined ? null : madeGroup({ when: madeScalar('always'), takes });
  }

  /** The demand of the part itself; else the first of a part on its route; else the first of all. */
  private similarDemand(): string | null {
    const demands = entryOf(this.root, 'demand')?.node;
    const named = keysOf(demands);
    const partOf = (demand: string): string => textAt(entryOf(demands, demand)?.node, 'part') ?? demand;
    const { part } = this.asked;
    const own = part.kind === 'new' ? undefined : named.find((demand) => partOf(demand) === part.name);
    return own ?? named.find((demand) => this.routeOf(partOf(demand)) === this.ownRoute) ?? named[0] ?? null;
  }

  private routeOf(part: string): string | null {
    return textAt(entryOf(entryOf(this.root, 'parts')?.node, part)?.node, 'route');
  }

  /** What the first part on a route has, for whatever is asked for nothing else. */
  private usualOn(route: string, key: string): string | null {
    const parts = entryOf(this.root, 'parts')?.node;
    const first = keysOf(parts).find((part) => this.routeOf(part) === route);
    return first === undefined ? null : textAt(entryOf(parts, first)?.node, key);
  }
}

const PROMISE_KEYS = ['promise', 'rush promise', 'cut-off'];

function madeMap(entries: readonly SourceEntry[]): SourceNode {
  return { ...madeGroup({}), kind: 'map', entries };
}

function keysOf(node: SourceNode | undefined): readonly string[] {
  return node?.kind === 'map' ? node.entries.map(({ key }) => key) : [];
}

function textAt(node: SourceNode | undefined, key: string): string | null {
  const value = entryOf(node, key)?.node;
  return value?.kind === 'scalar' ? value.text : null;
}

/** Whether a part goes through the same stages on a way that is known already. */
function makesTheSame({ lab, name }: RequestWay, part: PartType): boolean {
  const other = lab.parts.find((candidate) => candidate.name === name);
  return JSON.stringify(other?.stages) === JSON.stringify(part.stages);
}

/** The request comes once, and now: its demand brings no other jobs. */
function withoutJobs(lab: Lab, name: string): Lab {
  return {
    ...lab,
    demand: lab.demand.map((stream) =>
      stream.name === name
        ? {
            ...stream,
            arrivals: { kind: 'dated', jobs: [] },
            quantity: { kind: 'fixed', value: 1 },
            rushShare: 0,
          }
        : stream,
    ),
  };
}

/** Measures every mesh once for all routes and finishes. */
function remembering(shapes: ShapeReader): ShapeReader {
  const known = new Map<string, ReturnType<ShapeReader>>();
  return (request) => {
    const key = JSON.stringify(request);
    const answer = known.get(key) ?? shapes(request);
    known.set(key, answer);
    return answer;
  };
}
