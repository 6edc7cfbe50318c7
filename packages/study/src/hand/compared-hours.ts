import type { ComparedHours, HandEstimate, PartHours, WaitCause } from '@buildweek/results';

/** Hours of an average job in the simulation: its stages, and its waits by their cause. */
export interface SimulatedHours {
  readonly stages: number;
  readonly waits: ReadonlyMap<WaitCause, number>;
}

/** @param parts each with the number of jobs that it counts for */
export function simulatedHours(
  parts: readonly { readonly hours: PartHours; readonly jobs: number }[],
): SimulatedHours {
  const jobs = parts.reduce((sum, one) => sum + one.jobs, 0);
  const waits = new Map<WaitCause, number>();
  let stages = 0;
  for (const { hours, jobs: own } of parts) {
    for (const step of hours.steps) {
      stages += (own / jobs) * step.work.value;
      for (const wait of step.waits) {
        waits.set(wait.cause, (waits.get(wait.cause) ?? 0) + (own / jobs) * wait.hours.value);
      }
    }
  }
  return { stages, waits };
}

/** The hours of both, what belongs together side by side. */
export function comparedHours(
  { stages, waits }: SimulatedHours,
  estimate: Extract<HandEstimate, { kind: 'by hand' }>,
): ComparedHours[] {
  const cause = (name: WaitCause): number => waits.get(name) ?? 0;
  return [
    { what: 'stages', simulated: stages, byHand: estimate.stageHours },
    { what: 'people', simulated: cause('shift') + cause('person'), byHand: estimate.peopleHours },
    { what: 'equipment', simulated: cause('machine'), byHand: estimate.equipmentHours },
    { what: 'equipment down', simulated: cause('machine down'), byHand: estimate.troubleHours },
    { what: 'batch', simulated: cause('batch'), byHand: estimate.batchHours },
    { what: 'carrier', simulated: cause('carrier'), byHand: 0 },
    { what: 'requester', simulated: cause('requester'), byHand: estimate.requesterHours },
    { what: 'rest of the job', simulated: cause('rest of the job'), byHand: 0 },
  ];
}
