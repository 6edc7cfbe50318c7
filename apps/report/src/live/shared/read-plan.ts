import type { StudySettings } from '@buildweek/model';
import {
  type Problem,
  readScenario,
  type ScenarioReading,
  type ShapeAnswer,
  type ShapeReader,
} from '@buildweek/scenario';
import type { PlayBase } from './play-base.ts';

/** A scenario that can be played. */
export type ReadPlan = Extract<ScenarioReading, { kind: 'scenario' }>;

/** Name of the file in messages: whoever reads the page has no file yet. */
const FILE_NAME = 'scenario.yaml';

/** Reads the scenario of a page, and others that are made of it, without any file. */
export class PlanReader {
  private readonly base: PlayBase;
  private readonly answers = new Map<string, ShapeAnswer>();
  private readonly reading: ScenarioReading;

  constructor(base: PlayBase) {
    this.base = base;
    const shapes = [...base.shapes];
    // A reading asks for the mesh of each part once, in the order of the parts.
    this.reading = this.readWith(base.text, (request) => {
      const shape = shapes.shift();
      if (shape === undefined) return refusal(request.path);
      const answer: ShapeAnswer = { kind: 'shape', shape, reason: 'as measured for this page', notes: [] };
      this.answers.set(JSON.stringify(request), answer);
      return answer;
    });
  }

  /** The scenario of the page. */
  get plan(): ScenarioReading {
    return this.reading;
  }

  /** Another one; its meshes are those of the page. */
  read(text: string): ScenarioReading {
    return this.readWith(
      text,
      (request) => this.answers.get(JSON.stringify(request)) ?? refusal(request.path),
    );
  }

  /** How the lab of the page was played, so that another is played alike. */
  settingsOf({ settings }: ReadPlan, replications: number): StudySettings {
    const { seed, weeks, ignoredWeeks, capWeeks, level } = this.base.run;
    return { ...settings, seed, weeks, ignoredWeeks, capWeeks, level, replications, precision: null };
  }

  private readWith(text: string, shapes: ShapeReader): ScenarioReading {
    const { files } = this.base;
    const resolve = (name: string): string | null =>
      Object.hasOwn(files, name) ? (files[name] ?? null) : null;
    return readScenario(text, FILE_NAME, resolve, shapes);
  }
}

function refusal(path: string): ShapeAnswer {
  return {
    kind: 'refused',
    message: `This page has not got the mesh ${path} as this change needs it.`,
    write: 'the change in the scenario file, where the program can read the mesh',
  };
}

/** What is wrong, without what only warns. */
export function errorsOf(problems: readonly Problem[]): Problem[] {
  return problems.filter(({ severity }) => severity === 'error');
}
