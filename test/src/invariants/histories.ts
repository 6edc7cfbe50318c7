import { createSimulator, type History } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import { formatProblem, readScenario } from '@buildweek/scenario';
import { scenarioMeshes } from '../scenario-meshes.ts';

/** The lab of a scenario text. @throws Error when it has problems; warnings are allowed */
export function labOf(text: string): Lab {
  const reading = readScenario(text, 'invariant.yaml', null, scenarioMeshes);
  if (reading.kind === 'problems') throw new Error(reading.problems.map(formatProblem).join('\n'));
  return reading.lab;
}

export interface HowToPlay {
  readonly weeks: number;
  readonly ignoredWeeks?: number;
  readonly replication?: number;
  readonly trace?: boolean;
}

/** One replication of the lab of a scenario. */
export function historyOf(lab: Lab, how: HowToPlay): History {
  const { weeks, ignoredWeeks = 0, replication = 0, trace = false } = how;
  const settings = { seed: 'invariants', replication, ignoredWeeks, weeks, capWeeks: 2, queueWaits: true };
  return createSimulator(lab).simulate({ ...settings, trace });
}
