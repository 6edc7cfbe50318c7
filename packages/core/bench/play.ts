import { playBreakdowns } from './breakdown-model.ts';
import { eventsOfReplication, playLab } from './lab-model.ts';
import { playQueue } from './queue-model.ts';
import { playSmallLab } from './small-lab-model.ts';
import type { WorkloadResult, WorkloadRun } from './workload.ts';

// Plays one workload in a process of its own and reports it as one line of JSON: play.js KEY SIZES… SEED
// A tenth of it is played three times before the clock starts, as in the reference models: compiling takes as long
// for a workload of a tenth of a second as for one of an hour, and what is compiled while one model is played is
// compiled again when the next one comes.

const WARM_UPS = 3;

const [key, ...rest] = process.argv.slice(2);
const seed = rest.pop() ?? '';
const sizes = rest.map(Number);
const [first = 0, second = 0] = sizes;

function play([weeksOrCustomers = 0, replications = 0]: readonly number[], ownSeed: string): WorkloadResult {
  switch (key) {
    case 'queue':
      return playQueue(weeksOrCustomers, ownSeed);
    case 'breakdowns':
      return playBreakdowns(weeksOrCustomers, ownSeed);
    case 'small-lab':
      return playSmallLab(weeksOrCustomers, replications, ownSeed);
    case 'lab':
      return { events: 0, answers: playLab(weeksOrCustomers, replications, ownSeed) };
    default:
      throw new Error(`There is no workload "${key}".`);
  }
}

const tenth = [...sizes.slice(0, -1), Math.floor((sizes.at(-1) ?? 0) / 10)];
for (let round = 1; round <= WARM_UPS; round++) play(tenth, `${seed}, warm-up ${round}`);
const before = process.cpuUsage();
const result = play(sizes, seed);
const used = process.cpuUsage(before);
// The lab model is counted afterwards, by listening to one replication.
const events = key === 'lab' ? second * eventsOfReplication(first, seed) : result.events;
const run: WorkloadRun = { ...result, events, seconds: (used.user + used.system) / 1e6 };
process.stdout.write(`${JSON.stringify(run)}\n`);
