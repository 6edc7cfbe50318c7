import { basename, dirname, resolve } from 'node:path';
import type { PromiseRequest } from '@buildweek/results';
import {
  type AskedRequest,
  FINISHES,
  type Finish,
  type RequestWays,
  readRequest,
  type ShapeReader,
} from '@buildweek/scenario';
import type { PromiseQuestion } from '@buildweek/study';
import { badInput } from '../failure.ts';
import { meshReader } from '../files/mesh-reader.ts';
import { fileResolver, type ScenarioFile } from '../files/scenario-file.ts';
import { askedShape, type ShapeOptions } from '../part/asked-shape.ts';

/** A new request as the options give it. */
export interface RequestOptions extends ShapeOptions {
  /** Part of the scenario; null: a mesh or a size. */
  readonly part: string | null;
  readonly finish: Finish | null;
  readonly material: string | null;
  readonly route: string | null;
  readonly quantity: number;
  readonly rush: boolean;
}

/** What is to be studied, and what was taken for granted on the way there. */
export interface ReadRequest {
  readonly question: PromiseQuestion;
  readonly assumptions: readonly string[];
}

/**
 * Puts the request into the lab on every route that can make it.
 *
 * @throws Failure for bad input: an unknown part or route, a mesh that cannot be read, nothing that can make it
 */
export function readAskedRequest(
  { text, reading }: ScenarioFile,
  path: string,
  options: RequestOptions,
): ReadRequest {
  const { scenario } = reading;
  const folder = path === '-' ? '.' : dirname(path);
  const own = scenario.parts.find(({ name }) => name === options.part);
  if (options.part !== null && own === undefined) {
    throw badInput(
      `There is no part "${options.part}" in ${path}. There are: ${scenario.parts.map(({ name }) => name).join(', ')}. For another one give --mesh FILE, or --size and --volume.`,
    );
  }
  const finish: Finish = options.finish ?? own?.finish ?? 'cleaned';
  const notes = new Set<string>();
  const { asked, shapes } = askedPart(options, folder, notes);
  const read = readRequest(
    text,
    path === '-' ? 'standard input' : path,
    asked,
    [finish, ...FINISHES.filter((other) => other !== finish)],
    fileResolver(folder),
    shapes,
  );
  const request: PromiseRequest = {
    part: options.part ?? nameOf(options),
    isNew: options.part === null,
    quantity: options.quantity,
    finish,
    rush: options.rush,
    notes: [...notes],
  };
  return {
    question: { request, ...waysOf(read, finish, options.route, path) },
    assumptions: assumptionsOf(read, options),
  };
}

function waysOf(
  read: RequestWays,
  finish: Finish,
  route: string | null,
  path: string,
): Pick<PromiseQuestion, 'ways' | 'impossible'> {
  const impossible = read.impossible.map(({ route: way, reason }) => ({ way, reason }));
  const routes = [...new Set([...read.ways.map((way) => way.route), ...impossible.map(({ way }) => way)])];
  if (route !== null && !routes.includes(route)) {
    throw badInput(`There is no route "${route}" with a build in ${path}. There are: ${routes.join(', ')}.`);
  }
  const asked = read.ways.filter((way) => route === null || way.route === route);
  if (!asked.some((way) => way.finish === finish)) {
    const told = impossible.filter(({ way }) => route === null || way === route);
    throw badInput(
      [
        `Nothing in this lab makes the part ${finish}.`,
        ...told.map(({ way, reason }) => `  ${way}: ${reason}`),
        ...asked.map(
          (way) =>
            `  ${way.route}: finish ${way.finish} can be made; write --finish ${JSON.stringify(way.finish)}`,
        ),
      ].join('\n'),
    );
  }
  return {
    ways: asked.map(({ name, lab, ...way }) => ({
      ...way,
      lab,
      demand: name,
      process: processOf(lab, name),
    })),
    impossible: route === null ? impossible : impossible.filter(({ way }) => way === route),
  };
}

function processOf(lab: RequestWays['ways'][number]['lab'], name: string) {
  const build = lab.parts.find((part) => part.name === name)?.stages.find((stage) => stage.kind === 'build');
  const group = build?.kind === 'build' ? build.machineGroup : null;
  return lab.machines.find((machine) => machine.name === group)?.process ?? 'other';
}

function askedPart(
  options: RequestOptions,
  folder: string,
  notes: Set<string>,
): { readonly asked: AskedRequest; readonly shapes: ShapeReader } {
  const { part, finish, material } = options;
  const ofTheFile = meshReader((name) => resolve(folder, name));
  if (part !== null)
    return { asked: { part: { kind: 'of the file', name: part }, finish, material }, shapes: ofTheFile };
  const {
    shape,
    notes: found,
    laid,
  } = askedShape({
    ...options,
    // The files of the scenario are looked for beside it; this one where the command is.
    mesh: options.mesh === null ? null : resolve(options.mesh),
  });
  for (const note of found) notes.add(note);
  return {
    asked: { part: { kind: 'new', shape }, finish, material },
    shapes: (request) => {
      if (shape.kind !== 'mesh' || request.path !== shape.path) return ofTheFile(request);
      const answer = (laid ?? ofTheFile)(request);
      if (answer.kind === 'refused') throw badInput(`${answer.message} ${answer.write}`);
      for (const note of answer.notes) notes.add(note);
      return answer;
    },
  };
}

function assumptionsOf({ promisedAs, ways }: RequestWays, { material, part }: RequestOptions): string[] {
  const others = [
    ...new Set(ways.filter(({ isOwn }) => !isOwn).map(({ route, material: of }) => `${route} in ${of}`)),
  ];
  return [
    'Everything else stays as the scenario has it: other jobs go on coming, machines fail and people are away as they do on average.',
    promisedAs === null
      ? 'The request has no promise that would put it in order among others.'
      : `Until a date is promised the request is put in order among others by the usual promise of "${promisedAs}".`,
    'A date is an order statistic of the plays: one more play ends by then with at least the probability beside it. It says nothing of what the scenario leaves out.',
    'Promises are due at closing time, so the date to promise is the first closing time that is not before it.',
    ...(material === null && others.length > 0 && part !== null
      ? [`On other routes it is made of what parts there are made of: ${others.join(', ')}.`]
      : []),
  ];
}

function nameOf({ mesh, typed }: RequestOptions): string {
  return mesh === null ? `a part of ${typed?.size ?? ''}` : basename(mesh).replace(/\.(stl|3mf)$/i, '');
}
