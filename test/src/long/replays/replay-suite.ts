import { createInProcessExecutor, replayStudy } from '@buildweek/study';
import { checkSeed, HOW_TO_RECORD, type Suite, seedOf, type Verdict } from '../suite.ts';
import { createClerk } from './played-log.ts';
import { JUDGED_WEEKS, MODELLED, WEEKS } from './small-lab.ts';

/** Replications of each check: with these, five of a hundred histories are the most unusual. */
const REPLICATIONS = 99;
export const FALSE_ALARM_RATE = 0.05;

/** A check of the same model against logs of one lab, again and again. */
export interface CheckedLogs {
  readonly name: string;
  readonly title: string;
  readonly repetitions: number;
  /** The lab whose logs are checked, and its text. */
  readonly kept: typeof MODELLED;
  /** What the number of logs that contradict the model says. */
  verdict(contradicted: number, logs: number): Verdict;
}

/** The long test that counts how often a check calls the model contradicted. */
export function replaySuite(checked: CheckedLogs): Suite {
  const { name, title, repetitions, kept } = checked;
  return {
    name,
    title,
    repetitions,
    played: [
      name,
      repetitions,
      MODELLED.text,
      kept.text,
      WEEKS,
      JUDGED_WEEKS,
      REPLICATIONS,
      FALSE_ALARM_RATE,
    ],
    columns: 'seed,of a hundred histories as unusual,contradicted',
    createPlayer: () => {
      const logOf = createClerk(kept.lab);
      const executor = createInProcessExecutor();
      return {
        play: async (repetition) => {
          const seed = seedOf(checked, repetition);
          const log = logOf(seed);
          const found = await replayStudy(
            {
              lab: MODELLED.lab,
              log,
              weeks: { judgedFrom: log.until - JUDGED_WEEKS * 604_800_000, learnedUntil: null },
              seed,
              replications: REPLICATIONS,
              falseAlarmRate: FALSE_ALARM_RATE,
              withDurations: false,
              wouldSee: null,
            },
            { executor, stop: null, onReplication: () => {} },
          );
          if (found === null) throw new Error('It was stopped.');
          const { pValue, isContradicted } = found.test;
          return [seed, Math.round(pValue * (REPLICATIONS + 1)), isContradicted ? 'yes' : 'no'].join(',');
        },
      };
    },
    check: (line, repetition) => {
      const [seed = '', histories, contradicted, ...more] = line.split(',');
      checkSeed(checked, repetition, seed);
      const count = Number(histories);
      const isCount = /^\d+$/.test(histories ?? '') && count >= 1 && count <= REPLICATIONS + 1;
      const wanted = count <= FALSE_ALARM_RATE * (REPLICATIONS + 1) ? 'yes' : 'no';
      if (!isCount || contradicted !== wanted || more.length > 0) {
        throw new Error(`The record of "${seed}" contradicts itself: ${line}. ${HOW_TO_RECORD}`);
      }
    },
    verdicts: (lines) => [
      checked.verdict(lines.filter((line) => line.endsWith(',yes')).length, lines.length),
    ],
  };
}
