import { cheapestPlan, type PlanFindings, type ReplicationExecutor } from '@buildweek/study';
import type { ScenarioFile } from '../src/files/scenario-file.ts';
import { observedDemo, questionOf } from './demo-plans.ts';

/** As the command has it. */
export const PROMISE = { alpha: 0.05, indifference: 0.02, most: 1000 } as const;

/** What a search took. */
export interface SearchEffort {
  readonly findings: PlanFindings;
  /** With those that show what stands around the answer. */
  readonly replications: number;
  /** Those alone that decided. */
  readonly deciding: number;
  /** From the scenario that is read to the answer, the pilot for ignored weeks included. */
  readonly wallSeconds: number;
  /** Of all threads. */
  readonly processorSeconds: number;
}

/** Searches once, from the start. */
export async function searchOnce(file: ScenarioFile, executor: ReplicationExecutor): Promise<SearchEffort> {
  const start = performance.now();
  const before = process.cpuUsage();
  const observed = await observedDemo(file, executor);
  const findings = await cheapestPlan(questionOf(file), observed, {
    ...PROMISE,
    weeks: file.reading.settings.weeks,
  });
  if (findings === null) throw new Error('Nobody stopped the search.');
  const used = process.cpuUsage(before);
  return {
    findings,
    replications: observed.replications,
    deciding: findings.looked.reduce((sum, { replications }) => sum + replications, 0),
    wallSeconds: (performance.now() - start) / 1000,
    processorSeconds: (used.user + used.system) / 1e6,
  };
}
