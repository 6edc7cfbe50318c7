import { createSimulator, hashHistory } from '@buildweek/core';
import { formatProblem, readScenario, type ShapeReader } from '@buildweek/scenario';
import type { MeshAnswers } from '../scenario-meshes.ts';

/** What reading and playing a scenario comes to, in a form that crosses programs and can be compared. */
export interface DemoRecord {
  /** The lab as JSON. */
  readonly lab: string;
  /** For each replication the hash of its history. */
  readonly hashes: readonly string[];
}

/**
 * Reads a scenario and plays its first replications, 13 weeks after 2 that are left out. This file and all that it
 * imports are bundled into one, which has to do the same wherever JavaScript runs.
 *
 * @param answers to what the scenario asks of its meshes; they are measured where there are files
 * @throws Error when the text is not a scenario
 */
export function recordOf(text: string, replications: number, answers: MeshAnswers): DemoRecord {
  const shapes: ShapeReader = (request) => {
    const found = answers.find(([asked]) => asked === JSON.stringify(request));
    return found?.[1] ?? { kind: 'refused', message: `Nobody has measured ${request.path}.`, write: '' };
  };
  const reading = readScenario(text, 'demo.yaml', null, shapes);
  if (reading.kind === 'problems') throw new Error(reading.problems.map(formatProblem).join('\n'));
  const { lab, settings } = reading;
  const simulator = createSimulator(lab);
  const { seed, capWeeks } = settings;
  const more = { seed, ignoredWeeks: 2, weeks: 13, capWeeks, trace: false, queueWaits: true };
  return {
    lab: JSON.stringify(lab),
    hashes: Array.from({ length: replications }, (_, replication) =>
      hashHistory(simulator.simulate({ ...more, replication })),
    ),
  };
}
