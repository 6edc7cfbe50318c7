import type { Lab } from '@buildweek/model';
import { PROMISE_VERSION, type PromiseAnswer, type PromisedRequest } from '@buildweek/results';
import {
  cautionsOf,
  closedSpans,
  LabMoments,
  type OpenJobs,
  openJobsStudy,
  openJobsVerdict,
  PROMISE_LEVEL,
  type PromisePlay,
  pinnedVerdict,
  playsOfRequest,
  reachOf,
  requestStudy,
  requestVerdict,
  sinceVerdict,
} from '@buildweek/study';
import { badInput } from '../failure.ts';
import type { ScenarioFile } from '../files/scenario-file.ts';
import { answeredScenario, warningWords } from '../plans/plan-answer.ts';
import { programVersion } from '../program-version.ts';
import { type RequestOptions, readAskedRequest } from './asked-request.ts';
import { readDayBefore } from './day-before.ts';
import { readPins } from './pins.ts';
import { playPromise } from './play-promise.ts';

/** What is asked of the state of a lab. */
export interface AskedPromise {
  /** Path of the scenario, for messages. */
  readonly path: string;
  /** Null: nothing new. */
  readonly request: RequestOptions | null;
  /** Whether every job in the lab is answered for. */
  readonly all: boolean;
  /** Builds that are decided on, as they were written. */
  readonly pins: readonly string[];
  /** Path of the answer of the day before; null: it is held against none. */
  readonly since: string | null;
  readonly run: Pick<PromisePlay, 'seed' | 'replications' | 'lastWeeks'>;
  readonly workers: number | undefined;
}

const FOR_ALL = [
  'Everything else stays as the scenario has it: other jobs go on coming, machines fail and people are away as they do on average.',
  'Who starts what follows from the rules of the scenario: which build, on which machine, when, by whom. The list is that of the play that is most like all others; the shares say how many plays agree.',
];

const EMPTY =
  'Nothing stands in the lab by this scenario, so these are the dates of a lab without other jobs today. What is there can be written under "at the start".';
const ON_PINS =
  'A decided build: its machine is kept for it from now on and its jobs go into no other build before; from its time on it starts as soon as the machine is free and somebody is there, with those of its jobs that are ready. The others are built like any other, no further job is put in, and a day after its time it is given up.';

/**
 * Plays the lab on from its state and puts the answer together.
 *
 * @throws Failure for bad input, or with exit code 130 when it was stopped
 */
export async function promiseAnswer(file: ScenarioFile, asked: AskedPromise): Promise<PromiseAnswer> {
  const { lab: asIs } = file.reading;
  const jobsInLab = asIs.initialState.jobs.length;
  if (asked.all && jobsInLab === 0) {
    throw badInput(
      `Nothing stands in the lab, so there is no job to answer for: ${asked.path} has no jobs under "at the start".`,
    );
  }
  if (asked.pins.length > 0 && !asked.all) {
    throw badInput('What follows from --pin is told of all jobs in the lab: add --all.');
  }
  const pinned = readPins(asIs, asked.pins);
  const decided = (lab: Lab): Lab =>
    pinned.length === 0 ? lab : { ...lab, initialState: { ...lab.initialState, pinned } };
  const lab = decided(asIs);
  if (asked.since !== null && !asked.all)
    throw badInput('What has moved is told of all jobs in the lab: add --all.');
  const moments = new LabMoments(asIs);
  const now = moments.moment(moments.now).at;
  const before = asked.since === null ? null : readDayBefore(asked.since, asked.path, now);
  const read = asked.request === null ? null : readAskedRequest(file, asked.path, asked.request);
  const plays =
    (read === null ? 0 : playsOfRequest(read.question)) + (asked.all ? 1 : 0) + (pinned.length > 0 ? 1 : 0);
  const { request, open } = await playPromise(asked.run, asked.workers, plays, async (play) => {
    const found: { request: PromisedRequest | null; open: OpenJobs | null } = { request: null, open: null };
    if (asked.all) {
      found.open = await openJobsStudy(lab, play, before);
      if (found.open === null) return null;
    }
    if (read !== null) {
      const ways = read.question.ways.map((way) => ({ ...way, lab: decided(way.lab) }));
      found.request = await requestStudy({ ...read.question, ways }, play);
      if (found.request === null) return null;
    }
    return found;
  });
  return {
    format: 'buildweek promise',
    version: PROMISE_VERSION,
    program: { name: 'buildweek', version: programVersion() },
    scenario: answeredScenario(file),
    now,
    jobsInLab,
    closed: closedSpans(lab, moments, reachOf(request, open === null ? null : [...open.openJobs])),
    run: { ...asked.run, level: PROMISE_LEVEL },
    request,
    openJobs: open === null ? null : [...open.openJobs],
    day: open?.day ?? null,
    since: open?.since ?? null,
    pinned: open?.pinned ?? null,
    verdict: [
      ...(request === null ? [] : requestVerdict(request)),
      ...(open === null ? [] : openJobsVerdict(open.openJobs, open.day)),
      ...(open?.since == null ? [] : sinceVerdict(open.openJobs, open.since)),
      ...(open?.pinned == null ? [] : pinnedVerdict(open.pinned)),
    ],
    assumptions: [
      ...(read?.assumptions ?? []),
      ...(open === null ? [] : FOR_ALL.slice(read === null ? 0 : 1)),
      ...(pinned.length > 0 ? [ON_PINS] : []),
    ],
    cautions: cautionsOf(lab),
    warnings: [...(jobsInLab === 0 ? [EMPTY] : []), ...warningWords(file)],
  };
}
