import type { InitialJob, InitialMachine, Lab, Stage } from '@buildweek/model';
import { WAIT_CAUSES } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import {
  at,
  attended,
  buildStage,
  constant,
  dated,
  exponential,
  HOUR,
  lab,
  lines,
  machine,
  part,
  people,
  play,
  printed,
  waitStage,
  workStage,
} from '../fixture/lab.ts';
import { begun, contents, ended, finished } from '../fixture/timeline.ts';
import { hashHistory } from '../observe/hash.ts';
import type { History } from '../observe/history.ts';
import { checkLaws } from '../observe/laws.ts';
import { createSimulator } from '../simulate.ts';

const ROUTE: readonly Stage[] = [
  workStage('prepare file', attended('all', 1)),
  buildStage('build', 'printers'),
  workStage('sand', attended('all', 4)),
  waitStage('dry', 6),
];

function startingWith(
  jobs: readonly Partial<InitialJob>[],
  machines: readonly InitialMachine[] = [],
  more: Partial<Lab> = {},
): Lab {
  return lab({
    people: [people('technicians', 1, ['all'])],
    machines: [machine('printers', { count: 2, capacity: 5, unload: attended('all', 0.5) })],
    parts: [part('lever', ROUTE, { print: printed(3) })],
    demand: [dated('lever', [])],
    initialState: {
      jobs: jobs.map((job) => ({
        stream: 'lever',
        quantity: 1,
        rush: false,
        arrivedAtHour: -10,
        dueAtHour: null,
        stage: 'sand',
        remainingHours: null,
        ...job,
      })),
      machines,
    },
    ...more,
  });
}

describe('A lab that starts with something in it', () => {
  it('lets jobs wait for their stage from the start, with their rank, numbered before those that arrive', () => {
    const history = play(
      startingWith([{ dueAtHour: 50 }, { dueAtHour: 20 }, { rush: true }], [], {
        demand: [{ ...dated('lever', [0]), due: { kind: 'clock', hours: 5 } }],
      }),
    );
    expect(begun(history, 'sand')).toEqual([
      'mon 08:00 job 2 by technicians 1',
      'tue 08:30 job 3 by technicians 1',
      'wed 08:00 job 1 by technicians 1',
      'wed 12:00 job 0 by technicians 1',
    ]);
    // The job that arrives at the start is promised first of the normal ones, and its first work is an hour.
    expect(begun(history, 'prepare file')).toEqual(['mon 12:00 job 3 by technicians 1']);
  });

  it('lets attended work that is going on be resumed with what remains of it, as work that may pause', () => {
    // Sanding typically takes four hours, which do not fit after 12:30; the hour that remains needs not fit.
    const history = play(
      startingWith([{ remainingHours: 4.5 }, { remainingHours: 1 }, { remainingHours: 3 }]),
    );
    const sanding = lines(history, (entry) => entry.stage === 'sand');
    expect(sanding).toEqual([
      'mon 08:00 step resumes job 0 sand by technicians 1',
      'mon 12:30 step ends job 0 sand by technicians 1',
      'mon 12:30 step resumes job 1 sand by technicians 1',
      'mon 13:30 step ends job 1 sand by technicians 1',
      'mon 13:30 step resumes job 2 sand by technicians 1',
      'mon 16:00 step pauses job 2 sand by technicians 1',
      'tue 08:00 step resumes job 2 sand by technicians 1',
      'tue 08:30 step ends job 2 sand by technicians 1',
    ]);
  });

  it('lets a plain wait go on for what remains of it', () => {
    expect(finished(play(startingWith([{ stage: 'dry', remainingHours: 2.5 }])))).toEqual([
      'mon 02:30 job 0',
    ]);
    expect(finished(play(startingWith([{ stage: 'dry' }])))).toEqual(['mon 06:00 job 0']);
  });

  it('holds busy machines until the stated time and then until they are unloaded', () => {
    const history = play(
      startingWith(
        [{ stage: 'build' }, { stage: 'build' }],
        [{ machine: 'printers 2', busyUntilHour: at('mon', '15:00'), material: null, jobs: [0, 1] }],
      ),
    );
    expect(contents(history, 'build', 'unload')).toEqual(['mon 15:00 on printers 2: 1 of job 0, 1 of job 1']);
    expect(begun(history, 'sand')).toEqual([
      'tue 08:00 job 0 by technicians 1',
      'tue 12:00 job 1 by technicians 1',
    ]);
  });

  it('takes a machine that should be done already for one that waits to be unloaded from the start', () => {
    const since = (busyUntilHour: number): History =>
      play(
        startingWith(
          [{ stage: 'build' }],
          [{ machine: 'printers 1', busyUntilHour, material: null, jobs: [0] }],
        ),
      );
    for (const history of [since(0), since(-5)]) {
      expect(ended(history, 'build', 'print')).toEqual(['mon 00:00 job 0 on printers 1']);
      expect(begun(history, 'build', 'unload')).toEqual(['mon 08:00 job 0 on printers 1 by technicians 1']);
      expect(checkLaws(history).every((law) => law.holds)).toBe(true);
    }
  });

  it('does not cool down again what a machine holds, and remembers its material', () => {
    const held = { machine: 'printers 1', busyUntilHour: 9, material: 'grey', jobs: [0] };
    const history = play(
      startingWith([{ stage: 'build' }], [held], {
        machines: [
          machine('printers', {
            coolDown: { duration: constant(5), where: 'machine' },
            setUp: attended('all', 0.5),
            unload: attended('all', 0.5),
            materialChanges: [{ from: 'grey', to: 'white', duration: constant(1), attended: true }],
          }),
        ],
        parts: [
          part('lever', ROUTE, { print: printed(3) }),
          part('ring', [buildStage('build', 'printers')], { print: printed(1), material: 'white' }),
        ],
        demand: [dated('lever', []), dated('ring', [8])],
      }),
    );
    expect(begun(history, 'build', 'unload')[0]).toBe('mon 09:00 job 0 on printers 1 by technicians 1');
    expect(ended(history, 'build', 'set-up')).toEqual(['mon 11:00 job 1 on printers 1 by technicians 1']);
  });

  it('holds a machine with nothing of ours in it too', () => {
    const held = { machine: 'printers 1', busyUntilHour: 9, material: null, jobs: [] };
    const other = { ...held, machine: 'printers 2', busyUntilHour: 30 };
    const history = play(startingWith([{ stage: 'build' }], [held, other]));
    expect(begun(history, 'build', 'print')).toEqual(['mon 09:30 job 0 on printers 1']);
  });

  it('keeps one carrier for each machine that is busy at the start', () => {
    const held = { machine: 'printers 1', busyUntilHour: 9, material: null, jobs: [0] };
    const history = play(
      startingWith([{ stage: 'build' }, { stage: 'build' }], [held], {
        machines: [machine('printers', { count: 2, carrier: 'tanks' })],
        carriers: [{ name: 'tanks', count: 1 }],
      }),
    );
    expect(begun(history, 'build')).toEqual(['mon 09:00 job 1 on printers 1']);
  });

  it('starts nothing while more machines are busy than there are carriers', () => {
    const held = (number: number, busyUntilHour: number, job: number): InitialMachine => ({
      machine: `printers ${number}`,
      busyUntilHour,
      material: null,
      jobs: [job],
    });
    const history = play(
      startingWith(
        [{ stage: 'build' }, { stage: 'build' }, { stage: 'build' }],
        [held(1, 5, 0), held(2, 9, 1)],
        {
          machines: [machine('printers', { count: 3, carrier: 'tanks' })],
          carriers: [{ name: 'tanks', count: 1 }],
        },
      ),
    );
    expect(begun(history, 'build')).toEqual(['mon 09:00 job 2 on printers 1']);
  });

  it('leaves what was there out of the cohort and counts it in the lab, its waits from the start of the plan on', () => {
    const history = play(startingWith([{ remainingHours: null }]), { weeks: 1 });
    expect(history.jobClasses[0]).toMatchObject({ arrived: 0, unfinished: 0 });
    expect(history.weeks.finishedJobs[0]).toBe(1);
    // Sanded from 08:00 to 12:00, dry at 18:00.
    expect(history.laws.jobArea).toBe(18 * HOUR);
    expect(checkLaws(history).every((law) => law.holds)).toBe(true);
    const sanding = history.queues.find((queue) => queue.name === 'all');
    expect(sanding).toMatchObject({ kind: 'people', waitSum: 8 * HOUR, visits: 1 });
    expect(WAIT_CAUSES).toContain('shift');
  });

  it('takes jobs at a stage that goes by builds for builds of their own', () => {
    const together = { level: 'build', move: 'per build' } as const;
    const testLab = (remainingHours: number | null, quantity = 1): Lab =>
      startingWith([{ stage: 'drip', remainingHours, quantity }], [], {
        parts: [
          part(
            'lever',
            [
              buildStage('build', 'printers', { move: 'per build' }),
              waitStage('drip', 2, together),
              workStage('rinse', attended('all', 1), { ...together, basis: 'build' }),
            ],
            { print: printed(3) },
          ),
        ],
      });
    const fresh = play(testLab(null));
    expect(ended(fresh, 'drip')).toEqual(['mon 02:00 job 0']);
    expect(ended(fresh, 'rinse')).toEqual(['mon 09:00 job 0 by technicians 1']);
    expect(ended(play(testLab(0.5)), 'drip')).toEqual(['mon 00:30 job 0']);
    expect(ended(play(testLab(null, 9)), 'rinse')).toEqual(['mon 09:00 job 0 by technicians 1']);
  });

  it('builds what waits for its build, also where the build is the first stage and is said to be whole', () => {
    const whole = buildStage('build', 'printers', { level: 'build', move: 'per build' });
    const rinse = workStage('rinse', attended('all', 1), { level: 'build', move: 'per build' });
    const history = play(
      startingWith([{ stage: 'build' }, { stage: 'rinse' }], [], {
        parts: [part('lever', [whole, rinse], { print: printed(3) })],
      }),
    );
    // Built from midnight to 03:00, taken out from 08:00 to 08:30; then both wait, and the numbers decide.
    expect(begun(history, 'rinse')).toEqual([
      'mon 08:30 job 0 by technicians 1',
      'mon 09:30 job 1 by technicians 1',
    ]);
  });

  it('draws what is left of such builds from streams of their own, whatever was played before', () => {
    const dripping: Stage = {
      ...waitStage('drip', 0, { level: 'build', move: 'per build' }),
      duration: exponential(5),
    };
    const simulator = createSimulator(
      startingWith([{ stage: 'drip' }, { stage: 'drip' }], [], {
        parts: [
          part('lever', [buildStage('build', 'printers', { move: 'per build' }), dripping], {
            print: printed(3),
          }),
        ],
        demand: [dated('lever', [1, 2, 3])],
      }),
    );
    const settings = { seed: 's', ignoredWeeks: 0, weeks: 1, capWeeks: 1, trace: true, queueWaits: false };
    const first = simulator.simulate({ ...settings, replication: 0 });
    const [one, other] = ended(first, 'drip');
    expect(one?.slice(0, 9)).not.toBe(other?.slice(0, 9));
    simulator.simulate({ ...settings, replication: 1 });
    const again = simulator.simulate({ ...settings, replication: 0 });
    expect(ended(again, 'drip')).toEqual(ended(first, 'drip'));
    expect(hashHistory(again)).toBe(hashHistory(first));
  });
});

describe('An initial state that does not fit the lab', () => {
  it('is refused with the name that does not resolve', () => {
    expect(() => play(startingWith([{ stream: 'ring' }]))).toThrow('names no demand "ring"');
    expect(() => play(startingWith([{ stage: 'wash' }]))).toThrow('has no stage "wash"');
    const held = { machine: 'printers 3', busyUntilHour: 1, material: null, jobs: [] };
    expect(() => play(startingWith([], [held]))).toThrow('names no machine "printers 3"');
  });
});
