import type { Lab, Stage } from '@buildweek/model';
import type { Reading } from '../reading.ts';

/**
 * Whether jobs of a part type go through the lab: not when each demand for it is always sent out and none of its jobs
 * is there at the start.
 *
 * @param part name of a part type; one that nobody asks for counts as made in the lab
 */
function isMadeInLab(part: string, lab: Lab): boolean {
  return streamsInLab(part, lab).length > 0 || lab.demand.every((stream) => stream.part !== part);
}

/** The lab without machines and stations of which it has none, and without what it never makes itself. */
export function inUse(lab: Lab): Lab {
  const isOwned = ({ count }: { readonly count: number }): boolean => count > 0;
  return {
    ...lab,
    machines: lab.machines.filter(isOwned),
    stations: lab.stations.filter(isOwned),
    parts: lab.parts.filter((part) => isMadeInLab(part.name, lab)),
  };
}

/** Demands for a part type whose jobs may come to the lab. */
function streamsInLab(part: string, lab: Lab): string[] {
  return lab.demand
    .filter(
      (stream) =>
        stream.part === part &&
        (stream.sentOut?.always !== true || lab.initialState.jobs.some((job) => job.stream === stream.name)),
    )
    .map(({ name }) => name);
}

/** Finds machines and stations of which the lab has none, though jobs come to them. */
export function checkNoneOwned(lab: Lab, reading: Reading): void {
  const check = (section: string, name: string, isThere: (stage: Stage) => boolean): void => {
    const needing = lab.parts.filter((part) => part.stages.some(isThere));
    const [demand] = needing.flatMap((part) => streamsInLab(part.name, lab));
    if (demand === undefined) return;
    reading.report([section, name, 'count'], 'value', {
      message: `The lab has none of "${name}", and jobs of "${demand}" come to it.`,
      found: '0',
      expected:
        'at least 1, or every demand that needs it sent out always, with none of its jobs there at the start',
      write: `1, or "sent out: always" at the demand "${demand}"`,
    });
  };
  for (const { name, count } of lab.machines) {
    if (count === 0)
      check('machines', name, (stage) => stage.kind === 'build' && stage.machineGroup === name);
  }
  for (const { name, count } of lab.stations) {
    if (count === 0)
      check('stations', name, (stage) => stage.kind === 'station' && stage.stationGroup === name);
  }
}
