import type { JobSelection, Target } from '@buildweek/model';
import type { Reading } from '../reading.ts';
import type { Scenario, ScenarioTarget } from '../scenario.ts';
import { reportTarget } from './report-target.ts';
import { demandsOf, hasNormal, hasRush } from './target-jobs.ts';

/** @returns whether the demand brings such jobs at all; reports it when not */
export function checkJobs(
  jobs: JobSelection,
  worded: ScenarioTarget,
  scenario: Scenario,
  reading: Reading,
): boolean {
  if (demandsOf(jobs, scenario).length > 0) return true;
  // What is wrong with the demand is told there.
  if (reading.hasErrorsWithin(['demand']) || reading.isMisspelt([])) return false;
  const { part, rush } = jobs;
  const asked = demandsOf({ part, rush: null }, scenario).length > 0;
  if (asked) {
    const kind = rush === true ? 'rush' : 'normal';
    reportTarget(reading, worded, kind, {
      message: `No job${part === null ? '' : ` of "${part}"`} is a ${kind} job.`,
      found: worded.wording,
      expected: rush === true ? 'a share of rush jobs in the demand' : 'a share of rush jobs below 100 %',
      write: rush === true ? 'rush: 10 % at the demand' : worded.wording.replace(/\bnormal\s+/i, ''),
    });
    return false;
  }
  reportTarget(reading, worded, '', {
    message: part === null ? 'The demand brings no jobs.' : `Nobody asks for "${part}".`,
    found: worded.wording,
    expected: 'jobs that arrive',
    write: `demand: { ${part ?? 'housing'}: { jobs: 14 per week } }`,
  });
  return false;
}

/** @returns whether something is promised to such jobs; reports it when not */
export function checkPromises(
  jobs: JobSelection,
  worded: ScenarioTarget,
  scenario: Scenario,
  reading: Reading,
): boolean {
  const { rush } = jobs;
  const isPromised = demandsOf(jobs, scenario).some(
    (demand) =>
      (rush !== false && hasRush(demand) && demand.rushPromise.kind !== 'none') ||
      (rush !== true && hasNormal(demand) && demand.promise.kind !== 'none'),
  );
  if (isPromised) return true;
  if (reading.hasErrorsWithin(['demand'])) return false;
  reportTarget(reading, worded, 'on time', {
    message: 'Nothing is promised to these jobs: they cannot be on time or late.',
    found: 'on time',
    expected: 'a promise at the demand, or a time within which the jobs should be finished',
    write: 'promise: 3 working days at the demand',
  });
  return false;
}

/** Reports that targets ask for money where the scenario says nothing of it; one message is enough for all of them. */
export function checkMoney({ targets, money }: Scenario, reading: Reading): void {
  const first = targets.find(({ kind }) => kind === 'budget' || kind === 'cost per part');
  if (first === undefined || money !== null) return;
  if (reading.isBroken(['money']) || reading.isMisspelt([])) return;
  reading.report(first.path, 'value', {
    message: 'This asks for money, and the scenario says nothing of what things cost.',
    found: first.wording,
    expected: 'a currency, and prices of machines, stations and hours',
    write: 'money: { currency: EUR } at the start of a line',
  });
}

/** Warns of a target that follows from another one. */
export function checkRepeated(
  targets: readonly { readonly worded: ScenarioTarget; readonly target: Target }[],
  reading: Reading,
): void {
  targets.forEach(({ worded, target }, index) => {
    const stronger = targets.find(
      (other, position) =>
        position !== index &&
        measureOf(other.target) === measureOf(target) &&
        // Of two that ask for the same, the later one is too many.
        (isHarder(other.target, target) || (boundOf(other.target) === boundOf(target) && position < index)),
    );
    if (stronger === undefined) return;
    reading.report(worded.path, 'value', {
      severity: 'warning',
      message: `This says nothing that "${stronger.worded.wording}" does not say.`,
      found: worded.wording,
      expected: 'one target for each measure',
      write: 'delete it',
    });
  });
}

/** What tells apart what is measured, without what is asked of it. */
function measureOf(target: Target): string {
  return JSON.stringify({ ...target, wording: '', share: 0, atMost: 0 });
}

function boundOf(target: Target): number {
  return 'share' in target ? target.share : target.atMost;
}

function isHarder(one: Target, other: Target): boolean {
  return 'share' in one ? boundOf(one) > boundOf(other) : boundOf(one) < boundOf(other);
}
