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
  playsOfRequest,
  reachOf,
  requestStudy,
  requestVerdict,
} from '@buildweek/study';
import { badInput } from '../failure.ts';
import type { ScenarioFile } from '../files/scenario-file.ts';
import { answeredScenario, warningWords } from '../plans/plan-answer.ts';
import { programVersion } from '../program-version.ts';
import { type RequestOptions, readAskedRequest } from './asked-request.ts';
import { playPromise } from './play-promise.ts';

/** What is asked of the state of a lab. */
export interface AskedPromise {
  /** Path of the scenario, for messages. */
  readonly path: string;
  /** Null: nothing new. */
  readonly request: RequestOptions | null;
  /** Whether every job in the lab is answered for. */
  readonly all: boolean;
  readonly run: Pick<PromisePlay, 'seed' | 'replications' | 'lastWeeks'>;
  readonly workers: number | undefined;
}

const FOR_ALL = [
  'Everything else stays as the scenario has it: other jobs go on coming, machines fail and people are away as they do on average.',
  'Who starts what follows from the rules of the scenario: which build, on which machine, when, by whom. The list is that of the play that is most like all others; the shares say how many plays agree.',
];

/**
 * Plays the lab on from its state and puts the answer together.
 *
 * @throws Failure for bad input, or with exit code 130 when it was stopped
 */
export async function promiseAnswer(file: ScenarioFile, asked: AskedPromise): Promise<PromiseAnswer> {
  const { lab } = file.reading;
  const jobsInLab = lab.initialState.jobs.length;
  if (asked.all && jobsInLab === 0) {
    throw badInput(
      `Nothing stands in the lab, so there is no job to answer for: ${asked.path} has no jobs under "at the start".`,
    );
  }
  const read = asked.request === null ? null : readAskedRequest(file, asked.path, asked.request);
  const plays = (read === null ? 0 : playsOfRequest(read.question)) + (asked.all ? 1 : 0);
  const { request, open } = await playPromise(asked.run, asked.workers, plays, async (play) => {
    const found: { request: PromisedRequest | null; open: OpenJobs | null } = { request: null, open: null };
    if (asked.all) {
      found.open = await openJobsStudy(lab, play);
      if (found.open === null) return null;
    }
    if (read !== null) {
      found.request = await requestStudy(read.question, play);
      if (found.request === null) return null;
    }
    return found;
  });
  const moments = new LabMoments(lab);
  return {
    format: 'buildweek promise',
    version: PROMISE_VERSION,
    program: { name: 'buildweek', version: programVersion() },
    scenario: answeredScenario(file),
    now: moments.moment(moments.now).at,
    jobsInLab,
    closed: closedSpans(lab, moments, reachOf(request, open === null ? null : [...open.openJobs])),
    run: { ...asked.run, level: PROMISE_LEVEL },
    request,
    openJobs: open === null ? null : [...open.openJobs],
    day: open?.day ?? null,
    verdict: [
      ...(request === null ? [] : requestVerdict(request)),
      ...(open === null ? [] : openJobsVerdict(open.openJobs, open.day)),
    ],
    assumptions: [
      ...(read?.assumptions ?? []),
      ...(open === null ? [] : FOR_ALL.slice(read === null ? 0 : 1)),
    ],
    cautions: cautionsOf(lab),
    warnings: warningWords(file),
  };
}
