import { describe, expect, it } from 'vitest';
import { datedTrace } from './dated-trace.ts';
import { play } from './play.ts';

/** What is changed of the nine tasks on three machines. */
interface Changes {
  readonly machines?: number;
  /** Hours that every task is shorter. */
  readonly shorter?: number;
  /** Tasks of 5 to 8 that need not wait for task 4. */
  readonly free?: readonly number[];
  /** Task 3 behind 5 and 6, and task 9 before 7 and 8: the list 1 2 4 5 6 3 9 7 8. */
  readonly anotherList?: boolean;
}

const HOURS = [3, 2, 2, 2, 4, 4, 4, 4, 9];
const START = '2025-01-06 00:00';

/**
 * Nine tasks with a list, in which the first that is ready is taken: machines are people who do everything. Task 4 is
 * the set-up of a build that takes no time, of which 5 to 8 are made. The list is the order of kinds of work (1 to 3
 * and what is behind 4 are at benches, 9 and what is free of 4 at a station), and within them that of the jobs.
 */
function tasks({ machines = 3, shorter = 0, free = [], anotherList = false }: Changes): string {
  const time = (task: number): string => `${(HOURS[task - 1] ?? 0) - shorter} h`;
  const behind = [5, 6, 7, 8].filter((task) => !free.includes(task));
  const lines = (numbers: readonly number[], words: (task: number) => string): string =>
    numbers.map(words).join('\n');
  const dated = (task: number): string => `  task ${task}: { dates: [${START}], promise: 48 h }`;
  // Behind 5 and 6 in the list, task 3 is not started before 3:00; to come by then puts it before 7 to 9.
  const third = anotherList ? '  task 3: { dates: [2025-01-06 02:30], rush: 100 % }' : dated(3);
  return `
buildweek: 1
name: list scheduling
starts: 2025-01-06
simulate: { weeks: 1, ignored weeks: 0, replications: 20, seed: list }
dispatch: { order: [${anotherList ? 'stations, benches, machines' : 'benches, machines, stations'}] }
people:
  machine: { count: ${machines}, hours: always, skills: task }
stations:
  place: { count: 9 }
machines:
  four:
    start: when full
    set-up: { by: task, takes: ${time(4)}, may pause: yes }
routes:
  one and nine:
    - one: { by: task, takes: ${time(1)}, may pause: yes }
    - nine: { on: place, by: task, takes: ${time(9)}, may pause: yes }
${lines([2, 3], (task) => `  task ${task}: [do: { by: task, takes: ${time(task)}, may pause: yes }]`)}
${lines(free, (task) => `  task ${task}: [do: { on: place, by: task, takes: ${time(task)}, may pause: yes }]`)}
  behind four:
    - four: { on: four }
    - do: { by: task, takes: ${time(8)}, may pause: yes }
parts:
  one and nine: { route: one and nine }
${lines([2, 3, ...free], (task) => `  task ${task}: { route: task ${task} }`)}
${lines(behind, (task) => `  task ${task}: { route: behind four, fits: ${behind.length} per build, print: 0 h per build }`)}
demand:
  one and nine: { dates: [${START}] }
${dated(2)}
${third}
${lines([5, 6, 7, 8], dated)}
`;
}

describe('P04: list scheduling can be slower with more of everything', () => {
  // R. L. Graham, SIAM Journal on Applied Mathematics 17 (1969) (recomputed).
  it.each<[string, Changes, number]>([
    ['nine tasks on three machines', {}, 12],
    ['a machine more', { machines: 4 }, 15],
    ['every task an hour shorter', { shorter: 1 }, 13],
    ['two tasks that need not wait', { free: [5, 6] }, 16],
    ['another list', { anotherList: true }, 14],
  ])('%s', async (_, changes, makespan) => {
    const text = tasks(changes);
    const ends = datedTrace(text).map((line) => line.slice(-5));
    expect(ends.toSorted().at(-1)).toBe(`${makespan}:00`);
    const { results } = await play(text);
    const lab = results.queues.find((queue) => queue.kind === 'all')?.byHourOfWeek.value ?? [];
    expect(lab.findLastIndex((jobs) => jobs > 0) + 1).toBe(makespan);
  });
});
