import { createSimulator, MILLISECONDS_PER_HOUR, MILLISECONDS_PER_WEEK } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import type { Moment } from '@buildweek/results';
import { createInProcessExecutor, requestStudy } from '@buildweek/study';
import { acceptanceBand } from '../acceptance.ts';
import { rounded } from '../rounded.ts';
import { checkSeed, HOW_TO_RECORD, type Suite, seedOf } from '../suite.ts';
import { REQUEST, randomLab } from './random-lab.ts';
import { stateAt } from './state-of-history.ts';

/** Sixteen of twenty: the 80 % date is the 16th of 19 plays, below which one more stays with exactly 80 %. */
const PLAYS = 19;
const CHANCE = 0.8;
const WEEKS_AHEAD = 8;
const LABS = 500;

/** One lab: what was promised, and what happened. Hours from asking. */
interface KeptPromise {
  readonly promised: number;
  readonly closing: number;
  readonly happened: number;
}

/**
 * A lab of its own works for some weeks; then, on a Monday at midnight, a request comes. What stands in the lab is taken
 * from its history, the promise is made from that state with other random numbers, and the history goes on.
 */
async function keptPromise(seed: string, isRush: boolean): Promise<KeptPromise> {
  const { lab, quantity, weeksBefore } = randomLab(seed);
  const at = weeksBefore * MILLISECONDS_PER_WEEK;
  const asked = withDatedRequest(lab, at / MILLISECONDS_PER_HOUR, quantity, isRush);
  const { trace } = createSimulator(asked).simulate({
    seed: `${seed}, what happened`,
    replication: 0,
    ignoredWeeks: 0,
    weeks: weeksBefore + 1,
    capWeeks: WEEKS_AHEAD - 1,
    trace: true,
    queueWaits: false,
  });
  const entries = trace ?? [];
  const number = entries.find(({ what, part }) => what === 'job arrives' && part === REQUEST)?.job;
  const end = entries.find(({ what, job }) => what === 'job ends' && job === number)?.time;
  const known: Lab = { ...lab, initialState: stateAt(lab, entries, at) };
  const found = await requestStudy(
    {
      request: { part: REQUEST, isNew: false, quantity, finish: 'cleaned', rush: isRush, notes: [] },
      ways: [
        {
          route: 'made here',
          finish: 'cleaned',
          process: 'other',
          material: 'grey',
          isOwn: true,
          lab: known,
          demand: REQUEST,
        },
      ],
      impossible: [],
    },
    {
      seed: `${seed}, the promise`,
      replications: PLAYS,
      lastWeeks: WEEKS_AHEAD,
      executor: createInProcessExecutor(),
      stop: null,
      onReplication: () => {},
    },
  );
  const date = found?.ways[0]?.dates.find(({ probability }) => probability === CHANCE);
  const hours = (moment: Moment | null | undefined): number => moment?.hours ?? Number.POSITIVE_INFINITY;
  return {
    promised: hours(date?.ready),
    closing: hours(date?.promise),
    happened: end === undefined ? Number.POSITIVE_INFINITY : (end - at) / MILLISECONDS_PER_HOUR,
  };
}

function withDatedRequest(lab: Lab, atHour: number, quantity: number, rush: boolean): Lab {
  return {
    ...lab,
    demand: lab.demand.map((stream) =>
      stream.name === REQUEST
        ? { ...stream, arrivals: { kind: 'dated', jobs: [{ atHour, quantity, rush }] } }
        : stream,
    ),
  };
}

/** The long test that counts how often the promised 80 % date is kept, each time by another lab. */
export function promiseSuite(name: string, isRush: boolean): Suite {
  const suite = { name };
  return {
    name,
    title: `The 80 % date of a ${isRush ? 'rush' : 'normal'} request, promised from what stands in a lab of its own on a Monday, against how its history goes on; ${PLAYS} plays behind each promise`,
    repetitions: LABS,
    played: [name, LABS, PLAYS, CHANCE, WEEKS_AHEAD, isRush],
    columns: 'seed,promised h,closing h,happened h,kept',
    createPlayer: () => ({
      play: async (repetition) => {
        const seed = seedOf(suite, repetition);
        const { promised, closing, happened } = await keptPromise(seed, isRush);
        const cells = [promised, closing, happened].map((hours) =>
          Number.isFinite(hours) ? rounded(hours) : 'never',
        );
        return [seed, ...cells, isKept(promised, happened) ? 'yes' : 'no'].join(',');
      },
    }),
    check: (line, repetition) => {
      const [seed = '', ...cells] = line.split(',');
      checkSeed(suite, repetition, seed);
      const [promised = Number.NaN, closing = Number.NaN, happened = Number.NaN] = cells
        .slice(0, 3)
        .map(hoursOf);
      const isRight = cells[3] === (isKept(promised, happened) ? 'yes' : 'no');
      // Rounding may turn a hair's breadth round.
      const isClose = Math.abs(promised - happened) < 1e-4 * happened;
      if (cells.length !== 4 || !(closing >= promised) || !(isRight || isClose)) {
        throw new Error(`The record of "${seed}" contradicts itself: ${line}. ${HOW_TO_RECORD}`);
      }
    },
    verdicts: (lines) => {
      const kept = lines.filter((line) => line.endsWith(',yes')).length;
      const byClosing = lines.filter((line) => {
        const [, , closing = Number.NaN, happened = Number.NaN] = line.split(',').map(hoursOf);
        return isKept(closing, happened);
      }).length;
      const { fewest, most } = acceptanceBand(lines.length, CHANCE);
      return [
        {
          isWithin: fewest <= kept && kept <= most,
          words: `the 80 % date is kept in ${kept} of ${lines.length} labs, ${fewest} to ${most} are accepted; the closing time that is promised for it in ${byClosing}`,
        },
      ];
    },
  };
}

function isKept(promised: number, happened: number): boolean {
  return happened <= promised && Number.isFinite(happened);
}

function hoursOf(cell: string): number {
  return cell === 'never' ? Number.POSITIVE_INFINITY : Number(cell);
}
