import { acceptanceBand } from '../acceptance.ts';
import { replaySuite } from '../replays/replay-suite.ts';
import { SLOWER } from '../replays/small-lab.ts';
import type { Suite } from '../suite.ts';

/**
 * What is asked of the check, fixed before it was measured: at least four of five logs of half a year contradict a model
 * whose bottleneck, hand work at a load of two thirds, is three tenths slower in truth.
 */
const LEAST_POWER = 0.8;

export const REPLAY_SLOWER: Suite = replaySuite({
  name: 'replay-slower',
  title:
    'A small lab held against logs of one whose hand work takes three tenths longer, 26 judged weeks or 312 jobs after 4 weeks from empty, 99 replications each',
  repetitions: 300,
  kept: SLOWER,
  verdict: (contradicted, logs) => {
    const { fewest } = acceptanceBand(logs, LEAST_POWER);
    return {
      isWithin: contradicted >= fewest,
      words: `a stage that is three tenths slower than modelled is seen in ${contradicted} of ${logs} checks; at least ${fewest} are asked for`,
    };
  },
});
