import { formatProblem, readScenario } from '@buildweek/scenario';
import { createInProcessExecutor, runStudy } from '@buildweek/study';
import { rounded } from '../rounded.ts';
import type { Suite } from '../suite.ts';
import { valueSuite } from '../values/value-suite.ts';

/** Jobs an hour, and builds an hour while the printer works. */
const ARRIVALS = 1;
const BUILDS = 1.25;
/** Jobs that may wait before more are sent out. */
const WAITING = 3;

const SCENARIO = `
buildweek: 1
name: one printer and help from outside
simulate: { weeks: 4, ignored weeks: 1, weeks to finish: 1, replications: 20, level: 95 % }
money:
  currency: EUR
  judged over: 5 years
  interest: 8 %
  other costs: 4000 per year
  outside per job: 0.80
  equipment: to be bought
machines:
  printer: { price: 60000, life: 5 years, worth at the end: 6000, yearly cost: 3500 }
routes:
  process: [build: { on: printer }]
parts:
  part:
    route: process
    fits: 1 per build
    print: exponential mean ${60 / BUILDS} min per build
    material cost: 1.50
    price outside: 5.20
demand:
  part: { jobs: ${ARRIVALS} per hour, when: any time }
sent out: { when: more than ${WAITING - 1} jobs wait, takes: 30 h }
`;

/** Price outside with the share of the job, and what material costs in the lab: one piece a job. */
const SAVED_PER_JOB = 5.2 + 0.8 - 1.5;
const FIXED_PER_YEAR = 3500 + 4000;
const HOURS_PER_YEAR = 24 * 365.25;

/** Share of arrivals that find one job at the printer and `WAITING` before it. */
function shareSentOut(): number {
  let chance = 1;
  let total = 1;
  for (let jobs = 1; jobs <= WAITING + 1; jobs++) {
    chance *= ARRIVALS / BUILDS;
    total += chance;
  }
  return chance / total;
}

/**
 * Net present value when so large a share of the jobs is sent out. What is made in the lab saves its price outside less
 * its material; what is sent out costs the same in both cases. Every year saves the same, the purchase is paid at once,
 * and what the printer is worth comes back at the end.
 */
export function netPresentValue(share: number): number {
  const perYear = ARRIVALS * (1 - share) * HOURS_PER_YEAR * SAVED_PER_JOB - FIXED_PER_YEAR;
  let value = -60_000;
  let factor = 1;
  for (let year = 1; year <= 5; year++) {
    factor /= 1.08;
    value += perYear * factor;
  }
  return rounded(value + 6000 * factor);
}

/**
 * What follows from the long run: a queue with room for one job at the printer and three that wait (M/M/1/4). Source:
 * Gross, Shortle, Thompson & Harris, Fundamentals of Queueing Theory, 4th edition, section 2.5 (from memory).
 */
export const TRUE_NET_PRESENT_VALUE = netPresentValue(shareSentOut());

/**
 * The net present value of a printer that sends out what it cannot do soon, by the whole study. How many parts it makes
 * depends on its queue, and so does the money of each replication. The ignored week is more than the queue remembers:
 * with four places it forgets within some hours.
 */
export const NET_PRESENT_VALUE: Suite = valueSuite({
  name: 'net-present-value',
  title:
    'The net present value of a printer at a load of 0.8 that sends out what finds three jobs waiting, 20 replications of 4 weeks or 672 jobs, after an ignored week from empty',
  what: 'the net present value',
  repetitions: 1000,
  played: [SCENARIO],
  truth: TRUE_NET_PRESENT_VALUE,
  createEstimator: () => {
    const reading = readScenario(SCENARIO, 'printer.yaml');
    if (reading.kind === 'problems') throw new Error(reading.problems.map(formatProblem).join('\n'));
    const { lab, settings, economics } = reading;
    return async (seed) => {
      const outcome = await runStudy(lab, { ...settings, seed }, createInProcessExecutor(), { economics });
      const found = outcome.kind === 'results' ? outcome.results.money?.case : null;
      if (found?.kind !== 'compared') throw new Error(`"${seed}" gives no net present value.`);
      return found.netPresentValue;
    };
  },
});
