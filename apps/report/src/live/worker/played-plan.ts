import type { History } from '@buildweek/core';
import type { StudySettings } from '@buildweek/model';
import {
  type ReplicationExecutor,
  type ReplicationTemplate,
  runStudy,
  type StopSignal,
  type StudyResults,
  startEarlier,
} from '@buildweek/study';
import type { ReadPlan } from '../shared/read-plan.ts';

/** A plan with all of its replications that were played so far, and what they say. */
export class PlayedPlan {
  readonly plan: ReadPlan;
  readonly text: string;
  readonly histories: History[] = [];
  readonly template: ReplicationTemplate;
  private readonly executor: ReplicationExecutor;
  private readonly settings: StudySettings;
  private readonly lab;
  private studied: { readonly replications: number; readonly results: StudyResults } | null = null;

  /** @param settings with a fixed number of ignored weeks */
  constructor(plan: ReadPlan, text: string, settings: StudySettings, executor: ReplicationExecutor) {
    this.plan = plan;
    this.text = text;
    this.settings = settings;
    this.executor = executor;
    const { seed, weeks, capWeeks, ignoredWeeks } = settings;
    const ignored = ignoredWeeks === 'auto' ? 0 : ignoredWeeks;
    this.template = { seed, ignoredWeeks: ignored, weeks, capWeeks, trace: false, queueWaits: false };
    this.lab = startEarlier(plan.lab, ignored);
  }

  /**
   * Plays on until there are so many replications.
   * @param onReplication called for each that is played now
   * @returns false when somebody stopped before
   */
  async playUpTo(replications: number, stop: StopSignal, onReplication: () => void): Promise<boolean> {
    const missing = Array.from({ length: replications }, (_, replication) => replication).filter(
      (replication) => this.histories[replication] === undefined,
    );
    const wanted = missing.map((replication) => ({ ...this.template, replication }));
    if (wanted.length === 0) return true;
    for await (const history of this.executor.run(this.lab, wanted, stop)) {
      this.histories[history.replication] = history;
      onReplication();
    }
    return missing.every((replication) => this.histories[replication] !== undefined);
  }

  /** What a run of so many replications says; they have to be there. */
  async results(replications: number): Promise<StudyResults> {
    if (this.studied?.replications === replications) return this.studied.results;
    const { histories } = this;
    const { targets, economics } = this.plan;
    const outcome = await runStudy(
      this.plan.lab,
      { ...this.settings, replications },
      {
        async *run() {
          yield* histories.slice(0, replications);
        },
      },
      { targets, economics },
    );
    if (outcome.kind !== 'results') throw new Error(outcome.reason);
    this.studied = { replications, results: outcome.results };
    return outcome.results;
  }
}
