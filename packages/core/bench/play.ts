import { playBreakdowns } from './breakdown-model.ts';
import { eventsOfReplication, playLab } from './lab-model.ts';
import { playQueue } from './queue-model.ts';
import { playSmallLab } from './small-lab-model.ts';
import type { WorkloadResult, WorkloadRun } from './workload.ts';

// Plays one workload in a process of its own and reports it as one line of JSON: play.js KEY SIZES… SEED

const [key, ...rest] = process.argv.slice(2);
const seed = rest.pop() ?? '';
const [first = 0, second = 0] = rest.map(Number);

function play(): WorkloadResult {
  switch (key) {
    case 'queue':
      return playQueue(first, seed);
    case 'breakdowns':
      return playBreakdowns(first, seed);
    case 'small-lab':
      return playSmallLab(first, second, seed);
    case 'lab':
      return { events: 0, answers: playLab(first, second, seed) };
    default:
      throw new Error(`There is no workload "${key}".`);
  }
}

const before = process.cpuUsage();
const result = play();
const used = process.cpuUsage(before);
// The lab model is counted afterwards, by listening to one replication.
const events = key === 'lab' ? second * eventsOfReplication(first, seed) : result.events;
const run: WorkloadRun = { ...result, events, seconds: (used.user + used.system) / 1e6 };
process.stdout.write(`${JSON.stringify(run)}\n`);
