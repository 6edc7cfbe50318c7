import type { BuildStage, Duration, DurationBasis, Stage, StationStage } from '@buildweek/model';
import { USUAL_SKILL, withSkill } from '../read/attended-work.ts';
import type { Reading } from '../reading.ts';
import type {
  Scenario,
  ScenarioPartTimes,
  ScenarioPlacedStage,
  ScenarioRoute,
  ScenarioStage,
  ScenarioStation,
} from '../scenario.ts';
import type { SourcePath } from '../source/source-node.ts';
import type { Finish } from '../words/finish.ts';
import type { StageTime } from '../words/stage-time.ts';
import { NO_STAGE_TROUBLES, withStageTroubles } from './build-stage-troubles.ts';
import { resolves, stagePath } from './names.ts';
import { partTime, type StagePart } from './part-time.ts';

/** Whether parts of a finish go through a stage. */
export function isAskedBy(finish: Finish, { finishes }: ScenarioStage): boolean {
  return finishes === null || finishes.includes(finish);
}

/**
 * The stages of a route with the names looked up, for one part type; those that its finish does not ask for are
 * left out.
 *
 * @param part null when the route is looked at by itself
 */
export function buildStages(
  route: ScenarioRoute,
  scenario: Scenario,
  part: StagePart | null,
  reading: Reading,
): Stage[] {
  const stages: Stage[] = [];
  const asked: Stage[] = [];
  for (const [index, stage] of route.stages.entries()) {
    // A stage that could not be read may have been the build; what stands behind it is not blamed.
    const before = stages.at(-1);
    const isInDoubt =
      stages.length < index ||
      (before !== undefined && reading.isInDoubt(stagePath(reading, route.name, before.name), 'level'));
    const behindBuild = isInDoubt || before?.level === 'build';
    const isAsked = part === null || isAskedBy(part.finish, stage);
    // What goes through together is the same for all parts of a route: left out is only what was built here.
    const path = stagePath(reading, route.name, stage.name);
    const built = new StageBuilder(
      stage,
      isAsked ? part : null,
      path,
      behindBuild,
      scenario,
      reading,
    ).build();
    if (built === null) continue;
    stages.push(built);
    if (isAsked) asked.push(built);
  }
  return withStageTroubles(asked, route, scenario, part, reading);
}

type StageBasics = Omit<BuildStage, 'kind' | 'level' | 'machineGroup'>;

class StageBuilder {
  private readonly stage: ScenarioStage;
  private readonly part: StagePart | null;
  private readonly own: ScenarioPartTimes | null;
  private readonly path: SourcePath;
  private readonly ownPath: SourcePath | null;
  private readonly behindBuild: boolean;
  private readonly scenario: Scenario;
  private readonly reading: Reading;

  constructor(
    stage: ScenarioStage,
    part: StagePart | null,
    path: SourcePath,
    behindBuild: boolean,
    scenario: Scenario,
    reading: Reading,
  ) {
    this.stage = stage;
    this.part = part;
    this.own = part?.times.find((candidate) => candidate.stage === stage.name) ?? null;
    this.path = path;
    this.ownPath = part === null || this.own === null ? null : [...part.path, 'times', stage.name];
    this.behindBuild = behindBuild;
    this.scenario = scenario;
    this.reading = reading;
  }

  build(): Stage | null {
    const { stage } = this;
    const common = {
      name: stage.name,
      move: stage.move,
      emptiesCarrier: stage.emptiesCarrier,
      ...NO_STAGE_TROUBLES,
    };
    if (stage.kind === 'wait') {
      this.noOwn('takes', 'load', 'unload');
      return {
        kind: 'wait',
        ...common,
        level: this.level(null, false),
        duration: stage.duration,
        requesterChance: stage.requesterChance,
      };
    }
    if (stage.kind === 'work') {
      this.noOwn('load', 'unload');
      const takes = this.own?.takes ?? null;
      if (takes?.basis === 'batch') this.wrongOwnBasis();
      const basis = takes?.basis == null || takes.basis === 'batch' ? stage.basis : takes.basis;
      const duration = this.timeOf(takes ?? { duration: stage.work.duration, bySize: stage.bySize });
      return {
        kind: 'work',
        ...common,
        level: this.level(basis, false),
        work: { ...stage.work, duration },
        basis,
      };
    }
    return this.placed(stage, common);
  }

  private placed(stage: ScenarioPlacedStage, common: StageBasics): Stage | null {
    const { scenario } = this;
    const station = scenario.stations.find((candidate) => candidate.name === stage.on);
    if (station !== undefined) return this.station(stage, station, common);
    const candidates = [...scenario.machines, ...scenario.stations].map((group) => group.name);
    if (!resolves(this.reading, [...this.path, 'on'], stage.on, 'machine or station', candidates))
      return null;
    this.noOwn('takes', 'load', 'unload');
    for (const key of ['takes', 'load', 'unload', 'by', 'attended', 'people', 'may pause']) {
      this.refuse(
        key,
        'a build takes the times of its machine and the print time of its parts.',
        `under machines / ${stage.on}`,
      );
    }
    this.refuse('level', 'a build is always whole.', 'the stage without it');
    return { kind: 'build', ...common, level: 'build', machineGroup: stage.on };
  }

  private station(
    stage: ScenarioPlacedStage,
    station: ScenarioStation,
    common: StageBasics,
  ): StationStage | null {
    const said = stage.times;
    const usual = station.times;
    const by = said.by ?? usual.by;
    const load = said.load === undefined ? (usual.load ?? null) : said.load;
    const unload = said.unload === undefined ? (usual.unload ?? null) : said.unload;
    const attended =
      said.attended ?? usual.attended ?? (by !== undefined && load === null && unload === null);
    const run = this.own?.takes ?? said.run ?? usual.run;
    if (run === undefined) {
      const isReported = [this.path, ['stations', station.name]].some(
        (path) => this.reading.isInDoubt(path, 'takes') || this.reading.isInDoubt(path, 'class'),
      );
      if (!isReported) {
        this.reading.report(this.path, 'key', {
          message: `"${stage.name}" does not say how long it runs, and "${station.name}" does not either.`,
          expected: 'how long it runs, at the stage or at the station',
          write: 'takes: 20 min per batch',
        });
      }
      return null;
    }
    const stationPath = ['stations', station.name];
    for (const key of ['load', 'unload'] as const) {
      const work = key === 'load' ? load : unload;
      const isKnown = ![this.path, stationPath].some((path) => this.reading.isInDoubt(path, key));
      if (this.own?.[key] != null && work === null && isKnown) this.noOwn(key);
    }
    const basis = run.basis ?? said.run?.basis ?? usual.run?.basis ?? 'batch';
    const skill = by ?? USUAL_SKILL;
    const needsSkill = attended || [load, unload].some((work) => work !== null && work.skill === null);
    if (by === undefined && needsSkill) this.assume('by', skill);
    if (!attended) {
      const reason = 'nobody stays while it runs.';
      this.refuse('people', reason, 'attended: yes, and by whom');
      this.refuse('may pause', reason, 'attended: yes, and by whom');
    }
    this.assumeUnstated('attended', attended ? 'yes' : 'no');
    if (run.basis === null) this.assume('takes counts', `per ${basis}`);
    return {
      kind: 'station',
      ...common,
      level: this.level(basis, station.unit === 'builds'),
      stationGroup: station.name,
      load: withOwnTime(withSkill(load, skill), this.own?.load ?? null),
      run: this.timeOf(run),
      runAttendance: attended
        ? {
            skill,
            persons: said.persons ?? usual.persons ?? 1,
            pausable: said.pausable ?? usual.pausable ?? false,
          }
        : null,
      basis,
      unload: withOwnTime(withSkill(unload, skill), this.own?.unload ?? null),
    };
  }

  /**
   * What goes through together. Whole builds do when the time counts per build, and where a station counts
   * builds, provided that they are still whole.
   */
  private level(basis: DurationBasis | null, countsBuilds: boolean): 'job' | 'build' {
    const stated = this.stage.level;
    const level = stated ?? (basis === 'build' || (countsBuilds && this.behindBuild) ? 'build' : 'job');
    if (basis === 'build' && stated === 'job') {
      this.reading.report([...this.path, 'level'], 'value', {
        message: 'A time per build needs whole builds.',
        found: 'job',
        expected: 'build, or a time per job or per part',
        write: 'level: build',
      });
    } else if (level === 'build' && !this.behindBuild) {
      this.reading.report([...this.path, stated === null ? 'takes' : 'level'], 'value', {
        message: `"${this.stage.name}" takes whole builds, but does not come directly behind a build.`,
        found: stated === null ? 'a time per build' : 'level: build',
        expected: 'a build, or a stage with "level: build" behind one, just before it',
        write:
          stated === null
            ? 'a time per job or per part, or "level: build" at the stages before it'
            : 'level: job, or "level: build" at the stages before it',
      });
      return 'job';
    }
    if (stated === null) this.assume('level', level);
    return level;
  }

  private timeOf(time: Pick<StageTime, 'duration' | 'bySize'>): Duration {
    return partTime(time, this.stage.name, this.part, this.reading);
  }

  private assume(key: string, value: string): void {
    if (this.ownPath === null) this.reading.assume([...this.path, key], value, 'default of the program');
  }

  private assumeUnstated(key: string, value: string): void {
    if (this.reading.nodeAt([...this.path, key]) === undefined) this.assume(key, value);
  }

  private refuse(key: string, reason: string, write: string): void {
    const path = [...this.path, key];
    if (this.reading.nodeAt(path) === undefined) return;
    this.reading.report(path, 'key', {
      message: `"${key}" has no meaning here: ${reason}`,
      found: key,
      expected: 'a key that has an effect',
      write,
    });
  }

  private noOwn(...keys: readonly ('takes' | 'load' | 'unload')[]): void {
    if (this.ownPath === null || !keys.some((key) => this.own?.[key] != null)) return;
    this.reading.report(this.ownPath, 'key', {
      message: `The stage "${this.stage.name}" has no such time that a part could replace.`,
      found: this.stage.name,
      expected: 'a stage with work or a station, and a time that it has',
      write: 'the part without it',
    });
  }

  private wrongOwnBasis(): void {
    if (this.ownPath === null) return;
    this.reading.report(this.ownPath, 'value', {
      message: `"${this.stage.name}" is not done in batches.`,
      expected: 'a time per job, per part or per build',
      write: '20 min per job',
    });
  }
}

function withOwnTime<T extends { duration: unknown } | null>(
  work: T,
  duration: ScenarioPartTimes['load'],
): T {
  return work === null || duration === null ? work : { ...work, duration };
}
