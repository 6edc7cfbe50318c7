import type { Doubt, Economics, Lab, StudySettings, Target, Variation } from '@buildweek/model';
import type { Assumption } from '@buildweek/results';
import { readDoubts } from './doubts/read-doubts.ts';
import { Fields } from './fields.ts';
import { type FileResolver, Files, type NamedFile } from './files.ts';
import { attendedPlaces } from './lab/attended-places.ts';
import { buildEconomics } from './lab/build-economics.ts';
import { buildLab } from './lab/build-lab.ts';
import { buildTargets, deadlinesOf } from './lab/build-targets.ts';
import type { Problem } from './problem.ts';
import { readFile } from './read/read-file.ts';
import { readMayVary } from './read/read-may-vary.ts';
import { Reading } from './reading.ts';
import type { Scenario } from './scenario.ts';
import { SCENARIO_VERSION } from './schema/scenario-schema.ts';
import type { ShapeReader } from './shape-reader.ts';
import { readYaml } from './source/read-yaml.ts';
import { describeNode, entryOf } from './source/source-node.ts';
import { type ProblemDetail, SourceText } from './source/source-text.ts';
import { checkStructure } from './structure.ts';

/** What came of reading a scenario file: a lab that can be played, or all that is wrong with the file. */
export type ScenarioReading =
  | {
      readonly kind: 'scenario';
      readonly scenario: Scenario;
      readonly lab: Lab;
      readonly settings: StudySettings;
      /** What is promised of the lab, in the order of the file. */
      readonly targets: readonly Target[];
      /** Null when the file says nothing of money. */
      readonly economics: Economics | null;
      /** What may be chosen when a plan is looked for, in the order of the file. */
      readonly variations: readonly Variation[];
      /** What is not known for certain; null: nothing is said of it. */
      readonly doubts: readonly Doubt[] | null;
      /** Every value of the lab, in the order of reading, with where it came from. */
      readonly assumptions: readonly Assumption[];
      readonly warnings: readonly Problem[];
      /** Other files that the scenario names and that were read; meshes are not among them. */
      readonly files: readonly NamedFile[];
    }
  | { readonly kind: 'problems'; readonly problems: readonly Problem[] };

const LARGEST_FILE = 5_000_000;

/**
 * Reads a scenario file. Never throws for what a file says: it gives a lab, or a list of all problems that
 * were found, in the order of the lines.
 *
 * @param text the whole file: YAML 1.2
 * @param fileName for messages; without a `name:` it also names the plan
 * @param resolve gives the text of other files that the scenario names (`measured from`, `dates: from`), by
 *   their path as it is written
 * @param shapes measures the meshes that parts name (`mesh`); without it they are refused
 */
export function readScenario(
  text: string,
  fileName: string,
  resolve: FileResolver | null = null,
  shapes: ShapeReader | null = null,
): ScenarioReading {
  const source = new SourceText(fileName, text);
  const first = (detail: ProblemDetail): ScenarioReading => ({
    kind: 'problems',
    problems: [source.problem({ start: 0, end: 1 }, detail)],
  });
  if (text.length > LARGEST_FILE) {
    return first({
      message: 'This file is too large to be a scenario.',
      found: `${text.length} characters`,
      expected: `at most ${LARGEST_FILE} characters`,
      write: 'a shorter file',
    });
  }
  const { root, problems } = readYaml(source);
  if (root === null) return { kind: 'problems', problems: inOrder(problems) };
  const expected = `a scenario, which starts with "buildweek: ${SCENARIO_VERSION}"`;
  const write = `buildweek: ${SCENARIO_VERSION}`;
  if (root.kind === 'empty') return first({ message: 'This file says nothing.', expected, write });
  if (root.kind !== 'map') {
    return first({ message: 'This is not a scenario.', found: describeNode(root), expected, write });
  }
  const version = entryOf(root, 'buildweek');
  if (version !== undefined && !(version.node.kind === 'scalar' && version.node.value === SCENARIO_VERSION)) {
    const problem = source.problem(version.node.span, {
      message: 'This version of the scenario format is not known.',
      found: describeNode(version.node),
      expected: `${SCENARIO_VERSION}, the version that this program reads`,
      write,
    });
    return { kind: 'problems', problems: inOrder([...problems, problem]) };
  }
  const reading = new Reading(source, root, new Files(resolve), shapes);
  checkStructure(reading);
  const fields = new Fields(reading, []);
  const scenario = readFile(fields);
  const targets = buildTargets(scenario, reading);
  const lab = buildLab(scenario, reading, deadlinesOf(targets));
  // What may vary points at everything else, so a mistake there would be told again here.
  const variations = reading.hasErrors ? [] : readMayVary(fields);
  // Doubts are about names of the lab: where these are wrong, one mistake would be told twice.
  const doubts = reading.hasErrors ? null : readDoubts(fields, lab, attendedPlaces(lab, reading));
  const all = inOrder([...problems, ...reading.problems]);
  if (all.some((problem) => problem.severity === 'error')) return { kind: 'problems', problems: all };
  return {
    kind: 'scenario',
    scenario,
    lab,
    settings: scenario.settings,
    targets,
    economics: buildEconomics(scenario.money, lab),
    variations,
    doubts,
    assumptions: reading.assumptions,
    warnings: all,
    files: reading.files.read,
  };
}

function inOrder(problems: readonly Problem[]): Problem[] {
  return [...problems].sort((a, b) => a.line - b.line || a.column - b.column);
}
