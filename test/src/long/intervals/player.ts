import { createSimulator, type History, type SimulationSettings } from '@buildweek/core';
import type { Lab, StudySettings } from '@buildweek/model';
import { formatProblem, readScenario } from '@buildweek/scenario';
import { pooledQuantile } from '@buildweek/statistics';
import { createInProcessExecutor, type ReplicationExecutor, runStudy } from '@buildweek/study';
import { rounded } from '../rounded.ts';
import { seedOf } from '../suite.ts';
import { holding, type Outcome } from './outcome.ts';
import type { StudySuite } from './study-suite.ts';

const SHARE = 0.95;
const MILLISECONDS_PER_HOUR = 3_600_000;

/** Plays studies of a suite. */
export class StudyPlayer {
  private readonly suite: StudySuite;
  private readonly lab: Lab;
  private readonly settings: StudySettings;

  /** @throws Error when the scenario of the suite has problems */
  constructor(suite: StudySuite) {
    const reading = readScenario(suite.scenario, `${suite.name}.yaml`);
    if (reading.kind === 'problems') throw new Error(reading.problems.map(formatProblem).join('\n'));
    this.suite = suite;
    this.lab = reading.lab;
    this.settings = reading.settings;
  }

  /**
   * One study, as the command plays it, and then the replication that would have come next, for the prediction.
   *
   * @param repetition from 0; gives the seed
   * @throws Error when the study gives no interval, does not reach its precision or has to warn of something
   */
  async play(repetition: number): Promise<Outcome> {
    const seed = seedOf(this.suite, repetition);
    const executor = new ListeningExecutor();
    const outcome = await runStudy(this.lab, { ...this.settings, seed }, executor);
    if (outcome.kind === 'too few') throw new Error(outcome.reason);
    const { run, jobs, warnings } = outcome.results;
    if (run.stopped === 'limit reached') throw new Error(`"${seed}" does not reach its precision.`);
    if (warnings.length > 0) throw new Error(`"${seed}" warns: ${warnings.join(' ')}`);
    const [all] = jobs;
    const p95 = all?.percentiles.find(({ share }) => share === SHARE);
    if (
      all?.meanLeadTime.kind !== 'estimate' ||
      p95?.longRun.kind !== 'estimate' ||
      p95.onePeriod.kind !== 'prediction'
    ) {
      throw new Error(`"${seed}" gives no interval.`);
    }
    const next = ownPercentile(executor.playNext(run.replications));
    return {
      seed,
      replications: run.replications,
      jobs: all.jobs,
      mean: holding(all.meanLeadTime, this.suite.truth.meanLeadTime),
      p95: holding(p95.longRun, this.suite.truth.p95LeadTime),
      prediction: holding(p95.onePeriod, next),
      next: rounded(next),
    };
  }
}

/** Remembers what a study asked for, so that one more replication can be played in the same way. */
class ListeningExecutor implements ReplicationExecutor {
  private readonly inner = createInProcessExecutor();
  private asked: { readonly lab: Lab; readonly settings: SimulationSettings } | null = null;

  run: ReplicationExecutor['run'] = (lab, settings, stop) => {
    const [first] = settings;
    if (first !== undefined) this.asked = { lab, settings: first };
    return this.inner.run(lab, settings, stop);
  };

  playNext(replication: number): History {
    if (this.asked === null) throw new Error('Nothing has been played yet.');
    const { lab, settings } = this.asked;
    return createSimulator(lab).simulate({ ...settings, replication });
  }
}

/** The 95 % point of one replication's own jobs, hours. */
function ownPercentile({ jobClasses }: History): number {
  const finished = Float64Array.from(jobClasses.flatMap(({ leadTimes }) => [...leadTimes])).sort();
  const unfinished = jobClasses.reduce((sum, { unfinished: some }) => sum + some, 0);
  return pooledQuantile([finished], [unfinished], SHARE) / MILLISECONDS_PER_HOUR;
}
