import type { Rejects, Stage } from '@buildweek/model';
import { listed, nearest } from '../nearest.ts';
import type { Reading } from '../reading.ts';
import type { Scenario, ScenarioRoute, ScenarioStage } from '../scenario.ts';
import type { SourcePath } from '../source/source-node.ts';
import type { Finish } from '../words/finish.ts';
import { rejectWording } from '../words/rejects.ts';
import { stagePath } from './names.ts';

/** Stages before rejects and waits are looked up. */
export const NO_STAGE_TROUBLES = { maximumWaitHours: null, rejects: null } as const;

/**
 * Looks up, for the stages of a route, where rejects go back to and what longest waits count from.
 *
 * @param stages those that could be built and that the part goes through, in order
 * @param part null when the route is looked at by itself: then defaults go on the list of assumptions
 */
export function withStageTroubles(
  stages: readonly Stage[],
  route: ScenarioRoute,
  scenario: Scenario,
  part: { readonly name: string; readonly finish: Finish } | null,
  reading: Reading,
): Stage[] {
  const lookUp = new StageTroubles(stages, route, scenario, part, reading);
  return stages.map((stage, index) => {
    const said = route.stages.find((candidate) => candidate.name === stage.name);
    if (said === undefined) return stage;
    return {
      ...stage,
      maximumWaitHours: lookUp.maximumWait(said, stage, index),
      rejects: lookUp.rejects(said, stage, index),
    };
  });
}

class StageTroubles {
  private readonly stages: readonly Stage[];
  private readonly route: ScenarioRoute;
  private readonly scenario: Scenario;
  private readonly part: { readonly name: string; readonly finish: Finish } | null;
  private readonly leftOut: ReadonlySet<string>;
  private readonly reading: Reading;

  constructor(
    stages: readonly Stage[],
    route: ScenarioRoute,
    scenario: Scenario,
    part: { readonly name: string; readonly finish: Finish } | null,
    reading: Reading,
  ) {
    this.stages = stages;
    this.route = route;
    this.scenario = scenario;
    this.part = part;
    this.leftOut = new Set(
      route.stages
        .filter(({ finishes }) => part !== null && finishes !== null && !finishes.includes(part.finish))
        .map(({ name }) => name),
    );
    this.reading = reading;
  }

  /** Whether every stage of the route could be read. */
  private get isWhole(): boolean {
    return this.stages.length + this.leftOut.size === this.route.stages.length;
  }

  private get isRoute(): boolean {
    return this.part === null;
  }

  /** Says that a part leaves out a stage on which another one relies. */
  private refuseLeftOut(stage: string, path: SourcePath, what: string, write: string): void {
    this.report(path, 'value', {
      message: `"${this.part?.name}", finished "${this.part?.finish}", leaves out "${stage}", ${what}.`,
      found: stage,
      expected: 'a stage that all parts of this route go through',
      write,
    });
  }

  maximumWait(said: ScenarioStage, stage: Stage, index: number): number | null {
    if (said.maximumWait === null) return null;
    const path = this.pathOf(stage, 'at most');
    const { hours, after } = said.maximumWait;
    const before = this.stages[index - 1];
    if (stage.kind === 'wait') {
      this.report(path, 'key', {
        message: `Nothing ever waits for "${stage.name}": a wait starts at once.`,
        found: 'at most',
        expected: 'a stage with work, a machine or a station',
        write: 'the key at the stage behind it',
      });
      return null;
    }
    if (after !== null && this.leftOut.has(after)) {
      const own = this.textAt(path).replace(/\s+after\s+.*$/i, '');
      this.refuseLeftOut(after, path, `which the wait for "${stage.name}" counts from`, own);
      return null;
    }
    if (before === undefined) {
      this.report(path, 'key', {
        message: `"${stage.name}" is the first stage: there is none before it to wait after.`,
        found: 'at most',
        expected: 'a stage behind another one',
        write: 'the stage without it',
      });
      return null;
    }
    if (after !== null && after !== before.name) {
      if (!this.isWhole) return null;
      this.report(path, 'value', {
        message: `The wait for "${stage.name}" begins behind the stage just before it, which is "${before.name}".`,
        found: after,
        expected: before.name,
        write: `${this.textAt(path).replace(/\s+after\s+.*$/i, '')} after ${before.name}`,
      });
      return null;
    }
    return hours;
  }

  rejects(said: ScenarioStage, stage: Stage, index: number): Rejects | null {
    if (said.rejects === null) return null;
    const path = this.pathOf(stage, 'rejects');
    if (stage.kind === 'build' || stage.kind === 'wait' || stage.level === 'build') {
      this.report(path, 'key', {
        message:
          stage.kind === 'build'
            ? "Parts are found bad where somebody looks at them; builds that do not come out are the machine's."
            : `At "${stage.name}" nobody looks at the parts of single jobs.`,
        found: 'rejects',
        expected: 'a stage with work or a station that goes job by job',
        write:
          stage.kind === 'build'
            ? `fails: 5 % of builds under machines / ${stage.machineGroup}`
            : 'rejects at a later stage',
      });
      return null;
    }
    const backTo = this.backTo(said.rejects.backTo, path, index);
    const share = this.share(said.rejects.share, path);
    return backTo === null || share === null ? null : { share, backTo };
  }

  private backTo(said: string | null, path: SourcePath, index: number): string | null {
    const possible = this.stages
      .slice(0, index + 1)
      // Whole builds do not form again from single parts behind the machine.
      .filter((stage) => stage.kind === 'build' || stage.level === 'job')
      .map((stage) => stage.name);
    if (said === null) {
      const usual = this.stages.find((stage) => stage.kind === 'build')?.name ?? this.stages[0]?.name;
      if (usual === undefined) return null;
      if (this.isRoute) this.reading.assume([...path, 'back to'], usual, 'default of the program');
      return possible.includes(usual) ? usual : (possible[0] ?? null);
    }
    if (possible.includes(said)) return said;
    if (this.leftOut.has(said)) {
      const instead = this.textAt(path).replace(/back\s+to\s+.*$/i, `back to ${possible[0] ?? ''}`);
      this.refuseLeftOut(said, path, 'where its replacements would start', instead);
      return null;
    }
    // A stage that could not be read has been reported.
    if (!this.isWhole && this.route.stages.some((stage) => stage.name === said)) return null;
    const isStage = this.stages.some((stage) => stage.name === said);
    const isBefore = this.stages.slice(0, index).some((stage) => stage.name === said);
    const instead = isStage ? (possible[0] ?? '') : (nearest(said, possible) ?? possible[0] ?? '');
    this.report(path, 'value', {
      message: isBefore
        ? `Whole builds go through "${said}", and single parts cannot go back into one there.`
        : isStage
          ? `"${said}" does not come before this stage.`
          : `The route "${this.route.name}" has no stage called "${said}".`,
      found: said,
      expected: `this stage or one before it: ${listed(possible, 12)}`,
      write: this.textAt(path).replace(/back\s+to\s+.*$/i, `back to ${instead}`),
    });
    return null;
  }

  private share(said: number | 'usual', path: SourcePath): number | null {
    if (said !== 'usual') return said;
    const build = this.stages.find((stage) => stage.kind === 'build');
    const machine = this.scenario.machines.find((group) => group.name === build?.machineGroup);
    const text = machine?.usualRejects ?? null;
    if (text === null) {
      const isReported =
        machine === undefined ? !this.isWhole : this.reading.isInDoubt(['machines', machine.name], 'class');
      if (isReported) return null;
      this.report(path, 'value', {
        message:
          machine === undefined
            ? `The route "${this.route.name}" has no build whose class could say what is usual.`
            : `"${machine.name}" has no class that could say what is usual.`,
        found: 'usual',
        expected: 'a share of the parts',
        write: this.textAt(path).replace(/usual/i, '4 %'),
      });
      return null;
    }
    if (this.isRoute) this.reading.assume([...path, 'share'], text, 'default of a machine class');
    const usual = rejectWording(text)?.share;
    return typeof usual === 'number' ? usual : null;
  }

  private pathOf(stage: Stage, key: string): SourcePath {
    return [...stagePath(this.reading, this.route.name, stage.name), key];
  }

  private textAt(path: SourcePath): string {
    const node = this.reading.nodeAt(path);
    return node?.kind === 'scalar' ? node.text : '';
  }

  private report(
    path: SourcePath,
    part: 'key' | 'value',
    detail: { message: string; found: string; expected: string; write: string },
  ): void {
    this.reading.report(path, part, detail);
  }
}
