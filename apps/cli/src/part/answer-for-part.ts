import { basename, resolve } from 'node:path';
import type { Lab } from '@buildweek/model';
import { PART_ANSWER_VERSION, type PartAnswer } from '@buildweek/results';
import {
  type AskedPart,
  type Finish,
  readWaysOfMaking,
  type ShapeReader,
  TYPICAL_LAB,
  type WaysOfMakingPart,
} from '@buildweek/scenario';
import { cautionsOf, verdictOf, waysOfMaking } from '@buildweek/study';
import { badInput } from '../failure.ts';
import { meshReader } from '../files/mesh-reader.ts';
import { fileResolver, readScenarioFile } from '../files/scenario-file.ts';
import { programVersion } from '../program-version.ts';
import { ProgressBar } from '../terminal/progress-bar.ts';
import type { TextStream } from '../terminal/style.ts';
import { askedShape, type ShapeOptions } from './asked-shape.ts';

/** What is asked of one part. */
export interface PartRequest extends ShapeOptions {
  /** Path of the scenario with the lab; null: a lab of typical machines. */
  readonly scenario: string | null;
  /** Folder of the scenario, for the files that it names. */
  readonly folder: string;
  readonly finish: Finish;
  readonly quantities: readonly number[];
  readonly plays: number;
  readonly seed: string;
}

/** The beginning of a week, and the end of one: what is asked on a Friday afternoon waits over the weekend. */
const ASKED = [
  { label: 'Monday 09:00', hour: 9 },
  { label: 'Friday 15:00', hour: 4 * 24 + 15 },
];

/**
 * Answers which process to take for a part.
 *
 * @param progress where a progress bar is drawn
 * @throws Failure for bad input: the scenario, the mesh or the typed size is wrong
 */
export function answerForPart(request: PartRequest, progress: TextStream): PartAnswer {
  const { scenario, seed, plays, quantities } = request;
  const text = scenario === null ? TYPICAL_LAB : readScenarioFile(scenario).text;
  const { shape, notes, laid } = askedShape(request);
  const part: AskedPart = { finish: request.finish, shape };
  const found = new Set<string>(notes);
  const meshes = laid ?? meshReader((path) => resolve(path));
  const shapes: ShapeReader = (asked) => {
    const answer = meshes(asked);
    if (answer.kind === 'refused') throw badInput(`${answer.message} ${answer.write}`);
    for (const note of answer.notes) found.add(note);
    return answer;
  };
  const read = readWaysOfMaking(
    text,
    scenario ?? 'the typical lab',
    part,
    fileResolver(request.folder),
    shapes,
  );
  if (read.ways.length === 0) throw badInput(noWay(read));
  const bar = new ProgressBar(progress);
  const steps = 1000;
  const { ways, overtakings } = waysOfMaking({
    ways: read.ways.map(({ lab, stands }) => ({ lab, orientation: stands ?? 'as its size was typed' })),
    asked: ASKED,
    quantities,
    seed,
    plays,
    onProgress: (share) =>
      bar.show({ stage: 'replications', done: Math.round(share * steps), total: steps, mayEndSooner: false }),
  });
  bar.clear();
  const [first] = read.ways;
  return {
    format: 'buildweek part',
    version: PART_ANSWER_VERSION,
    program: { name: 'buildweek', version: programVersion() },
    part: {
      name: nameOf(request),
      finish: request.finish,
      volume: shapeIn(first?.lab)?.volume ?? 0,
      surface: shapeIn(first?.lab)?.surface ?? 0,
      notes: [...found],
    },
    lab: { name: first?.lab.name ?? '', isTypical: scenario === null },
    seed,
    plays,
    asked: ASKED,
    ways: [...ways],
    impossible: [...read.impossible],
    overtakings: [...overtakings],
    verdict: verdictOf({ ways, overtakings }, ASKED[0]?.label ?? ''),
    assumptions: assumptionsOf(request),
    cautions: cautionsFor(read),
  };
}

function noWay({ impossible }: WaysOfMakingPart): string {
  const reasons = impossible.map(({ route, reason }) => `  ${route}: ${reason}`);
  return ['No process of this lab can make the part.', ...reasons].join('\n');
}

function nameOf({ mesh, typed }: PartRequest): string {
  return mesh === null ? `a part of ${typed?.size ?? ''}` : basename(mesh).replace(/\.(stl|3mf)$/i, '');
}

function shapeIn(lab: Lab | undefined): { volume: number; surface: number } | null {
  const print = lab?.parts[0]?.print;
  return print?.kind === 'shape' ? print.shape : null;
}

function assumptionsOf({ scenario, finish, plays }: PartRequest): string[] {
  return [
    'The lab is empty: no other jobs, nothing breaks down, no build fails, no part is rejected, nobody is away.',
    'Builds and batches start as soon as somebody can start them, and every machine holds the right material.',
    `It is finished "${finish}"; stages of a route that this finish does not ask for are left out.`,
    `A spread is what one play in ten stays below and one in ten above, over ${plays} plays; it is not a confidence interval.`,
    ...(scenario === null
      ? [
          'No scenario was given: one machine of every typical class, two people from 08:00 to 16:30 with half an hour of break. All of it is common practice, no source; with your own lab the answer may be another.',
        ]
      : []),
  ];
}

function cautionsFor({ ways }: WaysOfMakingPart): PartAnswer['cautions'] {
  const topics = new Map(
    ways.flatMap(({ lab }) => cautionsOf(lab).map((caution) => [caution.topic, caution])),
  );
  return [...topics.values()];
}
