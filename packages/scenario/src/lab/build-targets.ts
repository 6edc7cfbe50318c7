import type { BusyTarget, Target, TargetMeaning, TimeAllowed, WorkingDayRule } from '@buildweek/model';
import { listed, nearest } from '../nearest.ts';
import { ALWAYS } from '../read/read-hours.ts';
import type { Reading } from '../reading.ts';
import type { Scenario, ScenarioTarget } from '../scenario.ts';
import { nameMeant } from '../words/plural.ts';
import type { TimeAllowedWording } from '../words/time-allowed.ts';
import { checkJobs, checkMoney, checkPromises, checkRepeated } from './check-targets.ts';
import { isSectionLost } from './names.ts';
import { reportTarget } from './report-target.ts';
import { demandsOf, jobsMeant } from './target-jobs.ts';

const WEEKS_OF_QUARTER = 13;

/** Looks up the names in targets, and checks that there is something to measure them by. */
export function buildTargets(scenario: Scenario, reading: Reading): Target[] {
  const targets = scenario.targets.flatMap((worded): { worded: ScenarioTarget; target: Target }[] => {
    const target = buildTarget(worded, scenario, reading);
    return target === null ? [] : [{ worded, target }];
  });
  checkRepeated(targets, reading);
  checkMoney(scenario, reading);
  return targets.map(({ target }) => target);
}

/** The deadlines that have to be looked at while a lab is played, each once. */
export function deadlinesOf(targets: readonly Target[]): WorkingDayRule[] {
  const rules = targets.flatMap((target) =>
    target.kind === 'share within' && target.within.kind === 'working days' ? [target.within] : [],
  );
  return [...new Map(rules.map((rule) => [`${rule.days} ${rule.cutOffHour}`, rule])).values()];
}

function buildTarget(worded: ScenarioTarget, scenario: Scenario, reading: Reading): Target | null {
  const { wording } = worded;
  if (worded.kind === 'budget' || worded.kind === 'cost per part') {
    return worded.kind === 'budget'
      ? { kind: 'budget', wording, of: worded.of, atMost: worded.atMost }
      : { kind: 'cost per part', wording, atMost: worded.atMost };
  }
  const meaning = meaningOf(worded, scenario, reading);
  if (worded.kind === 'busy') {
    const who = groupMeant(worded.who, worded, scenario, reading);
    return who === null ? null : { kind: 'busy', wording, ...who, atMost: worded.atMost, meaning };
  }
  const jobs = jobsMeant(worded.jobs, worded, scenario, reading);
  if (jobs === null || !checkJobs(jobs, worded, scenario, reading)) return null;
  const { share } = worded;
  if (worded.kind === 'share within') {
    const demands = demandsOf(jobs, scenario);
    const cutOffs = new Set(demands.map((demand) => demand.cutOffHour));
    const [only = worded.cutOffHour] = cutOffs;
    const cutOffHour = cutOffs.size === 1 ? only : worded.cutOffHour;
    const within = timeAllowed(worded.within, cutOffHour, worded, scenario, reading);
    return { kind: 'share within', wording, jobs, share, within, meaning };
  }
  return checkPromises(jobs, worded, scenario, reading)
    ? { kind: 'on time', wording, jobs, share, meaning }
    : null;
}

function meaningOf(worded: ScenarioTarget, { settings }: Scenario, reading: Reading): TargetMeaning {
  const { periods, path, wording } = worded;
  if (periods === null) {
    reading.assume([...path, 'counts'], 'all of it in the long run', 'default of the program');
    return { kind: 'long run' };
  }
  if (periods.quarters && settings.weeks !== WEEKS_OF_QUARTER) {
    reportTarget(reading, worded, 'quarters', {
      message: `The run measures ${settings.weeks === 1 ? '1 week' : `${settings.weeks} weeks`}, which is no quarter.`,
      found: 'quarters',
      expected: `periods, which are of the measured length, or ${WEEKS_OF_QUARTER} measured weeks`,
      write: wording.replace(/quarters?$/i, 'periods'),
    });
  }
  return { kind: 'chance of a period', chance: periods.chance };
}

function timeAllowed(
  time: TimeAllowedWording,
  cutOffHour: number | null,
  worded: ScenarioTarget,
  scenario: Scenario,
  reading: Reading,
): TimeAllowed {
  const labHours = scenario.labHours ?? scenario.calendars[0]?.name ?? ALWAYS;
  if (time.kind === 'clock') return time;
  if (labHours === ALWAYS && !isSectionLost(reading, 'hours')) {
    reportTarget(reading, worded, 'working days', {
      message: 'Working days are counted by hours, and the lab has none.',
      found: 'working days',
      expected: 'hours in this file, or a time by the clock',
      write: worded.wording.replace(/\d+\s+working\s+days?/i, `${24 * time.days} h`),
    });
  }
  return { ...time, cutOffHour };
}

/** Looks up whose use is meant. */
function groupMeant(
  words: string,
  target: ScenarioTarget,
  scenario: Scenario,
  reading: Reading,
): Pick<BusyTarget, 'of' | 'group'> | null {
  const kinds = [
    { of: 'people', groups: scenario.people },
    { of: 'machines', groups: scenario.machines },
    { of: 'stations', groups: scenario.stations },
  ] as const;
  const found = kinds.flatMap(({ of, groups }) => {
    const group = nameMeant(
      words,
      groups.map(({ name }) => name),
    );
    return group === undefined ? [] : [{ of, group }];
  });
  if (found.length > 1) {
    reportTarget(reading, target, words, {
      message: `"${words}" is the name of ${listed(found.map(({ of }) => of)).replace(' or ', ' and of ')}.`,
      found: words,
      expected: 'different names',
      write: 'another name for one of the two',
    });
    return null;
  }
  if (found[0] !== undefined) return found[0];
  const all = kinds.find(({ of, groups }) => of === words.toLowerCase() && groups.length > 0);
  if (all !== undefined) return { of: all.of, group: null };
  const names = kinds.flatMap(({ groups }) => groups.map(({ name }) => name));
  const sections = ['people', 'machines', 'stations'];
  if (sections.some((section) => reading.isBroken([section])) || reading.isMisspelt([])) return null;
  const meant = nearest(words, [...names, ...sections]) ?? names[0];
  reportTarget(reading, target, words, {
    message: `There are no people, machines or stations called "${words}".`,
    found: words,
    expected: names.length === 0 ? 'a group that this file describes' : listed([...names, ...sections], 15),
    write: meant === undefined ? 'the target without it' : target.wording.replace(words, meant),
  });
  return null;
}
