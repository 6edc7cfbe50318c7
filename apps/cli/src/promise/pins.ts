import type { Lab, PinnedBuild } from '@buildweek/model';
import { jobName, stateHour } from '@buildweek/study';
import { badInput } from '../failure.ts';

const EXAMPLE = '--pin "resin 2: job 12, job 15 at 15:00"';
const DAY_MILLISECONDS = 86_400_000;

/**
 * Builds that are decided on, as `resin 2: job 12, job 15 at 15:00`; the time may have a date before it, and without one
 * it is today.
 *
 * @throws Failure for bad input: a wrong form, names that are not there, jobs that cannot be built so
 */
export function readPins(lab: Lab, texts: readonly string[]): PinnedBuild[] {
  const pins: PinnedBuild[] = [];
  for (const text of texts) {
    const pin = readPin(lab, text);
    const taken = pins.find(({ machine }) => machine === pin.machine);
    if (taken !== undefined)
      throw refused(text, `"${pin.machine}" is decided on twice.`, 'one build for each machine');
    const twice = pin.jobs.find((job) => pins.some(({ jobs }) => jobs.includes(job)));
    if (twice !== undefined)
      throw refused(
        text,
        `${jobName(lab.initialState.jobs, twice)} is decided on twice.`,
        'each job in one build',
      );
    pins.push(pin);
  }
  return pins;
}

function readPin(lab: Lab, text: string): PinnedBuild {
  const [, machine = '', list = '', date, time = ''] =
    /^\s*(.+?)\s*:\s*(.+?)\s+at\s+(?:(\d{4}-\d{2}-\d{2})\s+)?(\d{1,2}:\d{2})\s*$/.exec(text) ?? [];
  if (machine === '') {
    throw refused(text, 'This is no build to decide on.', `a machine, its jobs and a time, as ${EXAMPLE}`);
  }
  const names = lab.machines.flatMap(({ name, count }) =>
    Array.from({ length: count }, (_, index) => `${name} ${index + 1}`),
  );
  if (!names.includes(machine)) {
    throw refused(text, `There is no machine "${machine}".`, `one of ${names.join(', ')}`);
  }
  const jobs = list
    .split(/\s*(?:,|\band\b)\s*/)
    .filter((word) => word !== '')
    .map((word) => jobOf(lab, text, word));
  if (new Set(jobs).size < jobs.length) throw refused(text, 'A job stands in it twice.', 'each job once');
  checkJobs(lab, text, machine, jobs);
  return { machine, jobs, fromHour: hourOf(lab, text, date ?? null, time) };
}

function jobOf(lab: Lab, text: string, word: string): number {
  const named = lab.initialState.jobs.findIndex((_, job) => jobName(lab.initialState.jobs, job) === word);
  if (named >= 0) return named;
  const number = Number(/^(?:job\s+)?(\d+)$/.exec(word)?.[1]);
  const most = lab.initialState.jobs.length;
  if (Number.isInteger(number) && number >= 1 && number <= most) return number - 1;
  throw refused(
    text,
    `There is no job "${word}" in the lab.`,
    `jobs as --all lists them, by name or by number from 1 to ${most}`,
  );
}

/** They have to be built on the machine, not yet, and together. */
function checkJobs(lab: Lab, text: string, machine: string, jobs: readonly number[]): void {
  const group = machine.replace(/ \d+$/, '');
  const kinds = new Set<string>();
  for (const position of jobs) {
    const job = lab.initialState.jobs[position];
    const partName = lab.demand.find(({ name }) => name === job?.stream)?.part;
    const part = lab.parts.find(({ name }) => name === partName);
    const build =
      part?.stages.findIndex((stage) => stage.kind === 'build' && stage.machineGroup === group) ?? -1;
    if (part === undefined || build < 0) {
      throw refused(
        text,
        `${jobName(lab.initialState.jobs, position)} (${partName ?? ''}) is not built on "${machine}".`,
        `jobs that are built on ${group}`,
      );
    }
    const stands = part.stages.findIndex(({ name }) => name === job?.stage);
    const isHeld = lab.initialState.machines.some(({ jobs: held }) => held.includes(position));
    if (stands > build || isHeld) {
      throw refused(
        text,
        `${jobName(lab.initialState.jobs, position)} is built already.`,
        'jobs that still wait for their build',
      );
    }
    kinds.add(JSON.stringify([part.material, part.settings]));
  }
  if (kinds.size > 1) {
    throw refused(
      text,
      'These jobs cannot share a build: material or settings differ.',
      'jobs of one material and the same settings',
    );
  }
}

/** Local hours since the start of the plan. */
function hourOf(lab: Lab, text: string, date: string | null, time: string): number {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  const now = stateHour(lab);
  const day =
    date === null
      ? Math.floor(now / 24)
      : Math.round((Date.parse(`${date}T00:00Z`) - Date.parse(`${lab.startDate}T00:00Z`)) / DAY_MILLISECONDS);
  if (hours > 23 || minutes > 59 || Number.isNaN(day)) {
    throw refused(
      text,
      `"${date ?? ''} ${time}" is no time.`,
      'a time as 15:00, or with its date as 2027-03-02 15:00',
    );
  }
  const hour = day * 24 + hours + minutes / 60;
  if (hour < now) throw refused(text, 'This time is over.', 'a time from now on');
  return hour;
}

function refused(text: string, message: string, expected: string) {
  return badInput(
    `--pin ${JSON.stringify(text)}: ${message}\n  expected: ${expected}\n  write:    ${EXAMPLE}`,
  );
}
