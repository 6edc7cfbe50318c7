import type { JobSelection } from '@buildweek/model';
import { listed, nearest } from '../nearest.ts';
import type { Reading } from '../reading.ts';
import type { Scenario, ScenarioDemand, ScenarioTarget } from '../scenario.ts';
import { nameMeant } from '../words/plural.ts';
import { isSectionLost } from './names.ts';
import { reportTarget } from './report-target.ts';

const PRIORITIES = ['rush', 'normal'] as const;

/** Looks up which jobs are meant by words such as `rush jobs`, `housings` or `rush housing jobs`. */
export function jobsMeant(
  words: string,
  target: ScenarioTarget,
  scenario: Scenario,
  reading: Reading,
): JobSelection | null {
  const parts = scenario.parts.map((part) => part.name);
  const whole = nameMeant(words, parts);
  if (whole !== undefined) return { part: whole, rush: null };
  const priority = PRIORITIES.find((word) => words.toLowerCase().split(/\s+/)[0] === word);
  const rush = priority === undefined ? null : priority === 'rush';
  const rest = priority === undefined ? words : words.slice(priority.length).trim();
  if (/^(?:|all|jobs?|all jobs)$/i.test(rest)) return { part: null, rush };
  const part = nameMeant(rest, parts) ?? nameMeant(rest.replace(/\s+jobs?$/i, ''), parts);
  if (part !== undefined) return { part, rush };
  if (isSectionLost(reading, 'part')) return null;
  const candidates = [...parts, 'jobs'];
  const meant = nearest(rest, candidates);
  reportTarget(reading, target, rest, {
    message: `There is no part called "${rest}".`,
    found: rest,
    expected: `jobs, rush jobs, normal jobs, or a part: ${listed(parts, 12)}`,
    write: target.wording.replace(rest, meant ?? 'jobs'),
  });
  return null;
}

/** Demands that can bring jobs of this kind, each with the priorities that these have. */
export function demandsOf({ part, rush }: JobSelection, scenario: Scenario): ScenarioDemand[] {
  return scenario.demand.filter(
    (demand) =>
      (part === null || demand.part === part) &&
      (rush === null || (rush ? hasRush(demand) : hasNormal(demand))),
  );
}

export function hasRush({ rushShare, arrivals }: ScenarioDemand): boolean {
  if (arrivals.kind !== 'dated') return rushShare > 0;
  return arrivals.jobs.some((job) => job.rush ?? rushShare > 0);
}

export function hasNormal({ rushShare, arrivals }: ScenarioDemand): boolean {
  if (arrivals.kind !== 'dated') return rushShare < 1;
  return arrivals.jobs.some((job) => !(job.rush ?? rushShare >= 1));
}
