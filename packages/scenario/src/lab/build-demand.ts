import type {
  ArrivalPattern,
  DemandStream,
  DueRule,
  PartType,
  ProfileSpan,
  WorkingCalendar,
} from '@buildweek/model';
import { splitAtSunday } from '../read/read-demand.ts';
import { ALWAYS } from '../read/read-hours.ts';
import type { Reading } from '../reading.ts';
import type { Scenario, ScenarioDemand, ScenarioInstant } from '../scenario.ts';
import type { SourcePath } from '../source/source-node.ts';
import { dateText } from '../words/dates.ts';
import { meanCount } from '../words/numbers.ts';
import type { PromiseWording } from '../words/promise.ts';
import { type BuiltCalendars, namesOf } from './build-calendars.ts';
import { buildSentOut } from './build-sent-out.ts';
import { isSectionLost, resolves } from './names.ts';

export function buildDemand(
  scenario: Scenario,
  built: BuiltCalendars,
  parts: readonly PartType[],
  reading: Reading,
): DemandStream[] {
  const partNames = scenario.parts.map((part) => part.name);
  return scenario.demand.map((demand) => {
    const path = ['demand', demand.name];
    const namesPart = reading.nodeAt([...path, 'part']) !== undefined;
    const isPartKnown = namesPart || !reading.isMisspelt(path);
    if (isPartKnown)
      resolves(
        reading,
        namesPart ? [...path, 'part'] : path,
        demand.part,
        'part',
        partNames,
        namesPart ? 'value' : 'key',
      );
    if (reading.nodeAt([...path, 'rush promise']) === undefined && demand.rushShare > 0) {
      reading.assume([...path, 'rush promise'], 'as promise', 'default of the program');
    }
    checkPromise(demand, path, built.labCalendar, reading);
    return {
      name: demand.name,
      part: demand.part,
      arrivals: arrivalsOf(demand, path, scenario, built, reading),
      quantity: demand.pieces,
      rushShare: demand.rushShare,
      due: dueRule(demand.promise, demand.cutOffHour),
      rushDue: dueRule(demand.rushPromise, demand.cutOffHour),
      changes: demand.changes,
      sentOut: buildSentOut(
        demand,
        parts.find((part) => part.name === demand.part),
        built.labCalendar,
        reading,
      ),
    };
  });
}

/** Hours of local time since the start of the plan. */
export function hoursFromStart(instant: ScenarioInstant, scenario: Scenario): number {
  return (instant.day - scenario.startDay) * 24 + instant.hour;
}

function dueRule(promise: PromiseWording, cutOffHour: number | null): DueRule {
  return promise.kind === 'working days' ? { ...promise, cutOffHour } : promise;
}

function checkPromise(demand: ScenarioDemand, path: SourcePath, labCalendar: string, reading: Reading): void {
  const promises = [
    { key: 'promise', promise: demand.promise },
    { key: 'rush promise', promise: demand.rushPromise },
  ];
  const inWorkingDays = promises.filter(({ promise }) => promise.kind === 'working days');
  if (labCalendar === ALWAYS && !isSectionLost(reading, 'hours')) {
    for (const { key } of inWorkingDays) {
      if (reading.nodeAt([...path, key]) === undefined) continue;
      reading.report([...path, key], 'value', {
        message: 'Working days are counted by hours, and the lab has none.',
        found: 'working days',
        expected: 'hours in this file, or a promise by the clock',
        write: 'hours: { day: { mon-fri: 08:00-16:00 } }, or a promise such as 48 h',
      });
    }
  }
  const isSentForDays = demand.sentOut?.takes.kind === 'working days';
  if (inWorkingDays.length === 0 && !isSentForDays && reading.nodeAt([...path, 'cut-off']) !== undefined) {
    reading.report([...path, 'cut-off'], 'key', {
      message: '"cut-off" has no meaning here: no promise counts working days.',
      found: 'cut-off',
      expected: 'a promise in working days',
      write: 'promise: 3 working days',
    });
  }
  if (
    demand.rushShare === 0 &&
    !reading.isInDoubt(path, 'rush') &&
    demand.arrivals.kind !== 'dated' &&
    reading.nodeAt([...path, 'rush promise']) !== undefined
  ) {
    reading.report([...path, 'rush promise'], 'key', {
      severity: 'warning',
      message: `"${demand.name}" has a rush promise, but no rush jobs.`,
      found: 'rush promise',
      expected: 'a share of rush jobs',
      write: 'rush: 10 %',
    });
  }
}

function arrivalsOf(
  demand: ScenarioDemand,
  path: SourcePath,
  scenario: Scenario,
  built: BuiltCalendars,
  reading: Reading,
): ArrivalPattern {
  const { arrivals } = demand;
  switch (arrivals.kind) {
    case 'kept in the lab':
      return arrivals;
    case 'renewal':
      return { kind: 'renewal', gap: arrivals.gap, jobsPerArrival: arrivals.jobsAtOnce };
    case 'dated':
      return {
        kind: 'dated',
        jobs: arrivals.jobs
          .map((job, index) => {
            const atHour = hoursFromStart(job.at, scenario);
            if (atHour < 0) {
              reading.report([...path, 'dates', index], 'value', {
                message: 'This lies before the start of the plan.',
                found: dateText(job.at.day),
                expected: `a date from ${dateText(scenario.startDay)} on`,
                write: 'a later date, or the job under "at the start"',
              });
            }
            return { atHour, quantity: job.pieces, rush: job.rush };
          })
          .sort((a, b) => a.atHour - b.atHour),
      };
    case 'poisson':
      return {
        kind: 'poisson',
        perWeek: arrivals.jobsPerWeek / meanCount(arrivals.jobsAtOnce),
        profile: profileOf(demand, path, scenario, built, reading),
        growthPerMonth: arrivals.growthPerMonth,
        ...(arrivals.weekVariation === 0 ? {} : { weekVariation: arrivals.weekVariation }),
        jobsPerArrival: arrivals.jobsAtOnce,
      };
  }
}

function profileOf(
  demand: ScenarioDemand,
  path: SourcePath,
  scenario: Scenario,
  built: BuiltCalendars,
  reading: Reading,
): ProfileSpan[] | null {
  const when = demand.arrivals.kind === 'poisson' ? demand.arrivals.when : null;
  if (when === 'any time') return null;
  if (when !== null && 'spans' in when) return [...when.spans];
  if (when === null) {
    const anyTime = built.labCalendar === ALWAYS;
    reading.assume(
      [...path, 'when'],
      anyTime ? 'any time' : `${built.labCalendar} (lab hours)`,
      'default of the program',
    );
    return anyTime ? null : spansOf(built.calendars, built.labCalendar);
  }
  if (when.hours === ALWAYS) return null;
  return resolves(reading, [...path, 'when'], when.hours, 'hours', [...namesOf(scenario), 'any time'])
    ? spansOf(built.calendars, when.hours)
    : null;
}

function spansOf(calendars: readonly WorkingCalendar[], name: string): ProfileSpan[] | null {
  const weekly = calendars.find((calendar) => calendar.name === name)?.weekly ?? [];
  const spans = weekly
    .flatMap((span) => splitAtSunday(span.fromHour, span.toHour))
    .sort((a, b) => a.fromHour - b.fromHour)
    .map((span) => ({ ...span, weight: 1 }));
  const hours = spans.reduce((sum, span) => sum + span.toHour - span.fromHour, 0);
  return spans.length === 0 || hours >= 168 ? null : spans;
}
