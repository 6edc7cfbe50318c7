import { acceptanceBand } from '../acceptance.ts';
import { FALSE_ALARM_RATE, replaySuite } from '../replays/replay-suite.ts';
import { MODELLED } from '../replays/small-lab.ts';
import type { Suite } from '../suite.ts';

/**
 * How often a model that is right is called contradicted: logs of the lab as it is modelled. Histories that are equally
 * unusual count against an alarm, so that there may be fewer alarms than stated, never more.
 */
export const REPLAY_RIGHT: Suite = replaySuite({
  name: 'replay-right',
  title:
    'A small lab held against logs of itself, 26 judged weeks or 312 jobs after 4 weeks from empty, 99 replications each',
  repetitions: 500,
  kept: MODELLED,
  verdict: (contradicted, logs) => {
    const { fewest, most } = acceptanceBand(logs, FALSE_ALARM_RATE);
    return {
      isWithin: fewest <= contradicted && contradicted <= most,
      words: `a model that is right is called contradicted in ${contradicted} of ${logs} checks; ${fewest} to ${most} are accepted`,
    };
  },
});
