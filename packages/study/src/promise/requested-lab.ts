import type { Lab } from '@buildweek/model';
import { LabMoments, stateHour } from './lab-moments.ts';
import type { AskedRequestWay } from './promise-question.ts';

/** A lab with the request in it. */
export interface RequestedLab {
  readonly lab: Lab;
  /** Number of the request among the jobs. */
  readonly job: number;
  /** When it is due by the usual rule of the lab, elapsed milliseconds; null: no promise. */
  readonly due: number | null;
}

/**
 * The lab with the request as one more job that stands before the first stage of its route. It is the last of the
 * jobs in the lab and of a demand of its own, so that it takes no random number from any other job: what they draw is
 * what they draw without it.
 */
export function withRequest({ lab, demand }: AskedRequestWay, quantity: number, rush: boolean): RequestedLab {
  const stream = lab.demand.find(({ name }) => name === demand);
  const part = lab.parts.find(({ name }) => name === stream?.part);
  const [first] = part?.stages ?? [];
  if (stream === undefined || first === undefined)
    throw new Error(`There is no demand "${demand}" in the lab.`);
  const moments = new LabMoments(lab);
  const due = moments.dueBy(rush ? stream.rushDue : stream.due);
  const { initialState } = lab;
  const request = {
    stream: demand,
    quantity,
    rush,
    arrivedAtHour: stateHour(lab),
    dueAtHour: due === null ? null : moments.localHours(due),
    stage: first.name,
    remainingHours: null,
  };
  return {
    lab: { ...lab, initialState: { ...initialState, jobs: [...initialState.jobs, request] } },
    job: initialState.jobs.length,
    due,
  };
}

/** A lab that does nothing but have the request made outside; null when nobody has said how long that takes. */
export function sentOutLab({ lab, demand }: AskedRequestWay, quantity: number, rush: boolean): Lab | null {
  const stream = lab.demand.find(({ name }) => name === demand);
  if (stream?.sentOut == null) return null;
  const { pinned: _, ...unpinned } = lab.initialState;
  return {
    ...lab,
    demand: [
      {
        ...stream,
        arrivals: { kind: 'dated', jobs: [{ atHour: stateHour(lab), quantity, rush }] },
        sentOut: { ...stream.sentOut, always: true },
      },
    ],
    // What is decided on for jobs that stand there is no concern of one that is made elsewhere.
    initialState: { ...unpinned, jobs: [], machines: [] },
  };
}
