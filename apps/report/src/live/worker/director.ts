import { hashHistory } from '@buildweek/core';
import { RESULTS_VERSION, type Results } from '@buildweek/results';
import { formatProblem } from '@buildweek/scenario';
import type { ReplicationExecutor, StudyResults } from '@buildweek/study';
import { type ChangedPlan, changedPlan } from '../shared/changed-plan.ts';
import { compareCommand } from '../shared/compare-command.ts';
import { type Controls, controlsOf } from '../shared/controls.ts';
import type { Reply, Request } from '../shared/messages.ts';
import type { PlayBase } from '../shared/play-base.ts';
import { errorsOf, PlanReader, type ReadPlan } from '../shared/read-plan.ts';
import type { ReaderState } from '../shared/reader-state.ts';
import { ROUGH_REPLICATIONS, sharpReplications } from '../shared/replications.ts';
import { answerHtml, chartBeside, type NamedResults } from './answer-html.ts';
import { CHANGED, compareTwo } from './compare-two.ts';
import { PlayedPlan } from './played-plan.ts';

/** What was played for the answer that the page shows. */
interface Shown {
  readonly before: NamedResults;
  readonly after: NamedResults;
}

/** Answers the page: reads the scenario with the changes of a reader, has it played, and writes the answer. */
export class Director {
  private readonly base: PlayBase;
  private readonly executor: ReplicationExecutor;
  private readonly reply: (reply: Reply) => void;
  private readonly reader: PlanReader;
  private readonly plan: ReadPlan;
  private readonly controls: Controls;
  private readonly before: PlayedPlan;
  private after: PlayedPlan | null = null;
  private shown: Shown | null = null;
  private running = new AbortController();

  /** @throws Error when the scenario of the page cannot be read */
  constructor(base: PlayBase, executor: ReplicationExecutor, reply: (reply: Reply) => void) {
    this.base = base;
    this.executor = executor;
    this.reply = reply;
    this.reader = new PlanReader(base);
    const { plan } = this.reader;
    if (plan.kind === 'problems') throw new Error(errorsOf(plan.problems).map(formatProblem).join('\n\n'));
    this.plan = plan;
    this.controls = controlsOf(plan, base.text);
    this.before = this.played(plan, base.text);
  }

  /** Does what the page asks; what goes wrong is told to it. */
  async ask(request: Request): Promise<void> {
    try {
      switch (request.kind) {
        case 'describe':
          this.describe(request.number, request.state);
          return;
        case 'prepare':
          await this.before.playUpTo(ROUGH_REPLICATIONS, this.running.signal, () => {});
          return;
        case 'play':
          await this.play(request.number, request.state);
          return;
        case 'draw':
          this.draw(request.number, request.chart);
          return;
        case 'stop':
          this.running.abort();
          this.running = new AbortController();
          return;
      }
    } catch (error) {
      const message = error instanceof Error ? error.message : String(error);
      this.reply({ kind: 'failed', number: 'number' in request ? request.number : 0, message });
    }
  }

  private describe(number: number, state: ReaderState): void {
    const changed = this.changed(state);
    const wordings = changed.kind === 'as planned' ? [] : changed.wordings;
    const hasAll = changed.kind === 'plan';
    this.reply({
      kind: 'described',
      number,
      wordings,
      reasons: changed.kind === 'refused' ? changed.reasons : [],
      text: hasAll ? changed.text : null,
      command: hasAll ? compareCommand(wordings, this.base.run) : null,
    });
  }

  private changed(state: ReaderState): ChangedPlan {
    return changedPlan(this.reader, this.plan, this.base.text, this.controls, state);
  }

  private async play(number: number, state: ReaderState): Promise<void> {
    const changed = this.changed(state);
    if (changed.kind !== 'plan') {
      this.describe(number, state);
      return;
    }
    this.running.abort();
    this.running = new AbortController();
    const { signal } = this.running;
    const { text, plan, wordings } = changed;
    const after = this.after?.text === text ? this.after : this.played(plan, text);
    this.after = after;
    const sharp = sharpReplications(this.base.run.replications);
    for (const replications of new Set([ROUGH_REPLICATIONS, sharp])) {
      const isThere = await this.playBoth(number, after, replications, signal);
      if (!isThere || signal.aborted) return;
      await this.answer(number, after, wordings, replications, replications < sharp);
      // What was asked meanwhile gets its turn.
      await new Promise((resolve) => setTimeout(resolve));
      if (signal.aborted) return;
    }
  }

  private async playBoth(
    number: number,
    after: PlayedPlan,
    replications: number,
    signal: AbortSignal,
  ): Promise<boolean> {
    const both = [this.before, after];
    const total = 2 * replications;
    const tell = (): void => {
      const done = both.reduce((sum, { histories }) => sum + countOf(histories, replications), 0);
      this.reply({ kind: 'progress', number, done, total });
    };
    const played = await Promise.all(both.map((one) => one.playUpTo(replications, signal, tell)));
    return played.every((isThere) => isThere);
  }

  private async answer(
    number: number,
    after: PlayedPlan,
    wordings: readonly string[],
    replications: number,
    isRough: boolean,
  ): Promise<void> {
    const before = await this.named(this.base.name, this.before, replications);
    const changed = await this.named(CHANGED, after, replications);
    const answer = await compareTwo(
      this.base,
      this.before,
      after,
      wordings,
      replications,
      before.results.run.ignoredWeeks,
    );
    this.shown = { before, after: changed };
    this.reply({
      kind: 'answer',
      number,
      isRough,
      replications,
      sentence: answer.pairs[0]?.sentence ?? '',
      html: answerHtml(answer, before, changed).source,
    });
  }

  private async named(name: string, played: PlayedPlan, replications: number): Promise<NamedResults> {
    const [first] = played.histories;
    return {
      name,
      results: this.resultsOf(played, await played.results(replications)),
      record: first === undefined ? '' : hashHistory(first),
    };
  }

  private resultsOf({ plan, text }: PlayedPlan, study: StudyResults): Results {
    return {
      format: 'buildweek results',
      version: RESULTS_VERSION,
      program: { name: 'buildweek', version: this.base.version },
      scenario: { name: plan.lab.name, text, hash: '', files: [] },
      lab: plan.lab,
      ...study,
      assumptions: [...plan.assumptions],
    };
  }

  private draw(number: number, chart: string): void {
    if (this.shown === null) return;
    const { before, after } = this.shown;
    this.reply({ kind: 'drawn', number, html: chartBeside(chart, [before, after]).source });
  }

  private played(plan: ReadPlan, text: string): PlayedPlan {
    return new PlayedPlan(plan, text, this.reader.settingsOf(plan, ROUGH_REPLICATIONS), this.executor);
  }
}

/** How many of the first replications are there. */
function countOf(histories: readonly unknown[], replications: number): number {
  let count = 0;
  for (let replication = 0; replication < replications; replication++) {
    if (histories[replication] !== undefined) count++;
  }
  return count;
}
