import type { Fields } from '../fields.ts';
import type { ScenarioStage, ScenarioWaitStage } from '../scenario.ts';
import { shareOfJobs } from '../words/change-of-mind.ts';
import { plainDuration } from '../words/duration.ts';
import { maximumWait, rejectWording } from '../words/rejects.ts';
import { byTheClock } from '../words/working-days.ts';
import { NO_TIME } from './attended-work.ts';

/** Key of a stage at which some jobs wait for an answer. */
export const ASKS = 'ask requester';

const answerTime = byTheClock(
  'An answer in working days would be right, but this program only knows answers by the clock, day and night.',
  plainDuration,
);

/** What may go wrong at any stage: rejects, and a wait in front of it that should not be longer. */
export function readStageTroubles(fields: Fields): Pick<ScenarioStage, 'maximumWait' | 'rejects'> {
  return {
    maximumWait: fields.read('at most', maximumWait) ?? null,
    // At other stages "none" goes without saying.
    rejects: fields.read('rejects', rejectWording, fields.has('by') ? 'none' : null) ?? null,
  };
}

/** A stage at which a share of the jobs waits until the requester has answered. */
export function readQuestion(
  fields: Fields,
  common: Omit<ScenarioWaitStage, 'kind' | 'duration' | 'requesterChance'>,
): ScenarioWaitStage {
  for (const key of ['on', 'by', 'wait', 'people', 'may pause', 'load', 'unload', 'attended', 'level']) {
    fields.refuse(
      key,
      'a question to the requester needs nothing and nobody.',
      'the question alone, and the rest as a stage of its own',
    );
  }
  const requesterChance = fields.read(ASKS, shareOfJobs) ?? 0;
  const duration = fields.need(
    'takes',
    answerTime,
    NO_TIME,
    'how long the answer takes, day and night',
    'takes: 1 to 48 h, usually 6',
  );
  return { kind: 'wait', ...common, duration, requesterChance };
}
