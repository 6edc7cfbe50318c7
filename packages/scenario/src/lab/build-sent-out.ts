import type { PartType, SendOutRule } from '@buildweek/model';
import { ALWAYS } from '../read/read-hours.ts';
import { SENT_OUT } from '../read/read-sent-out.ts';
import type { Reading } from '../reading.ts';
import type { ScenarioDemand } from '../scenario.ts';
import type { SourcePath } from '../source/source-node.ts';
import { isSectionLost } from './names.ts';

/**
 * When the jobs of a demand are made outside. A condition that can never hold for it is refused where the demand
 * itself states it, and left out where it is stated for all jobs.
 *
 * @param part its part type; undefined when there is none of that name, which has been reported
 */
export function buildSentOut(
  demand: ScenarioDemand,
  part: PartType | undefined,
  labCalendar: string,
  reading: Reading,
): SendOutRule | null {
  const { sentOut } = demand;
  if (sentOut === null) return null;
  const { conditions, isOwn, takes } = sentOut;
  const path = ['demand', demand.name, SENT_OUT];
  if (takes.kind === 'working days') checkWorkingDays(path, labCalendar, reading);
  const isBuilt = part === undefined || part.stages.some((stage) => stage.kind === 'build');
  const isPromised = demand.promise.kind !== 'none' || demand.rushPromise.kind !== 'none';
  // A route that could not be read may have a build.
  const isRouteInDoubt =
    reading.isMisspelt([]) || ['routes', 'parts'].some((section) => reading.hasErrorsWithin([section]));
  if (isOwn && conditions.waitingJobsAbove !== null && !isBuilt && !isRouteInDoubt) {
    reportVoid(
      reading,
      path,
      `Jobs of "${demand.name}" wait for no machine: their route has no build.`,
      'another condition',
      isPromised ? 'a promise is at risk' : 'always',
    );
  }
  const isPromiseInDoubt = ['promise', 'rush promise'].some((key) =>
    reading.isInDoubt(path.slice(0, 2), key),
  );
  if (isOwn && conditions.promiseAtRisk && !isPromised && !isPromiseInDoubt) {
    reportVoid(
      reading,
      path,
      `Jobs of "${demand.name}" have no promise that could be at risk.`,
      'a promise, or another condition',
      isBuilt ? 'more than 12 jobs wait' : 'always',
    );
  }
  const rule = {
    always: conditions.always,
    waitingJobsAbove: isBuilt ? conditions.waitingJobsAbove : null,
    promiseAtRisk: conditions.promiseAtRisk && isPromised,
  };
  if (!rule.always && rule.waitingJobsAbove === null && !rule.promiseAtRisk) return null;
  return {
    ...rule,
    leadTime: takes.kind === 'clock' ? takes : { ...takes, cutOffHour: demand.cutOffHour },
  };
}

/** Where the time outside is written: at the demand, or for all jobs. */
function checkWorkingDays(path: SourcePath, labCalendar: string, reading: Reading): void {
  if (labCalendar !== ALWAYS || isSectionLost(reading, 'hours')) return;
  const own = [...path, 'takes'];
  reading.report(reading.nodeAt(own) === undefined ? [SENT_OUT, 'takes'] : own, 'value', {
    message: 'Working days are counted by hours, and the lab has none.',
    found: 'working days',
    expected: 'hours in this file, or a time by the clock',
    write: 'hours: { day: { mon-fri: 08:00-16:00 } }, or a time such as 2 to 6 days, usually 4',
  });
}

function reportVoid(
  reading: Reading,
  path: SourcePath,
  message: string,
  expected: string,
  write: string,
): void {
  const when = [...path, 'when'];
  const at = reading.nodeAt(when) === undefined ? path : when;
  const node = reading.nodeAt(at);
  reading.report(at, 'value', {
    message,
    ...(node?.kind === 'scalar' ? { found: node.text } : {}),
    expected,
    write,
  });
}
