import type { PartShape } from '@buildweek/model';
import type { Results } from '@buildweek/results';

/** What a page can play on from: a scenario, and how it was played. Plain data, embedded in the page. */
export interface PlayBase {
  /** What this lab is called beside a changed one: `as it is`. */
  readonly name: string;
  /** Version of the program that played it. */
  readonly version: string;
  readonly text: string;
  /** Measures of the parts that have meshes, in the order of the parts: the page has no mesh files. */
  readonly shapes: readonly PartShape[];
  /** Texts of other files that the scenario names, by their path as it is written. */
  readonly files: Readonly<Record<string, string>>;
  readonly run: {
    readonly seed: string;
    readonly replications: number;
    readonly weeks: number;
    readonly ignoredWeeks: number;
    readonly capWeeks: number;
    readonly level: number;
  };
}

/**
 * The base of results that a run left behind.
 * @param name what this lab is called beside a changed one
 */
export function playBaseOf({ scenario, lab, run, assumptions, program }: Results, name: string): PlayBase {
  const withMesh = new Set(
    assumptions.map(({ what }) => what).filter((what) => /^parts \/ .* \/ mesh$/.test(what)),
  );
  return {
    name,
    version: program.version,
    text: scenario.text,
    shapes: lab.parts.flatMap(({ name: part, print }) =>
      print?.kind === 'shape' && withMesh.has(`parts / ${part} / mesh`) ? [print.shape] : [],
    ),
    files: Object.fromEntries(scenario.files.map(({ path, text }) => [path, text])),
    run: {
      seed: run.seed,
      replications: run.replications,
      weeks: run.weeks,
      ignoredWeeks: run.ignoredWeeks.weeks,
      capWeeks: run.capWeeks,
      level: run.level,
    },
  };
}
