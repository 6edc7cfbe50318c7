import type { DemandStream } from '@buildweek/model';
import { WAIT_CAUSES } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import {
  at,
  attended,
  buildStage,
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
  station,
  stationStage,
  stream,
  waitStage,
  workStage,
} from '../fixture/lab.ts';

const after = (hours: number, chance = 1, onlyBeforeStart = false) => ({
  chance,
  after: { kind: 'constant', value: hours } as const,
  onlyBeforeStart,
});

function printedThenFinished(changes: Partial<DemandStream['changes']>, hours: readonly number[]) {
  return lab({
    people: [people('technicians', 1, ['all'], { calendar: 'always' })],
    machines: [machine('printers')],
    parts: [
      part('lever', [buildStage('build', 'printers'), workStage('sand', attended('all', 2))], {
        print: printed(10),
      }),
    ],
    demand: [{ ...dated('lever', hours), changes: { cancels: null, revises: null, ...changes } }],
  });
}

describe('Requests', () => {
  it('takes a cancelled job out of the queue in which it waits', () => {
    const history = play(printedThenFinished({ cancels: after(5, 1, true) }, [0, 1]));
    expect(lines(history, (entry) => entry.job === 1)).toEqual([
      'mon 01:00 job arrives job 1',
      'mon 06:00 job is cancelled job 1',
    ]);
    expect(lines(history).at(-1)).toBe('mon 12:00 job ends job 0');
    expect(history.jobClasses[0]).toMatchObject({ arrived: 2, cancelled: 1, unfinished: 0 });
    expect(history.laws.jobArea).toBe(history.laws.jobStays);
  });

  it('lets a build go on from which a job has been cancelled, and drops its parts when they come out', () => {
    const history = play(printedThenFinished({ cancels: after(5) }, [0]));
    expect(lines(history).at(-1)).toBe('mon 05:00 job is cancelled job 0');
    expect(history.machines[0]?.runs).toBe(1);
    expect(history.people[0]?.timeByStage[0]).toBe(0);
    expect(history.laws.machineImbalance).toBe(0);
  });

  it('judges whether the work on a build fits the shift without the pieces of a cancelled job', () => {
    const blast = workStage('blast', attended('all', 1.5), { level: 'build', basis: 'part' });
    const history = play(
      lab({
        people: [people('technicians', 1, ['all'])],
        machines: [machine('printers', { launch: { ...machine('any').launch, fullShare: 1 } })],
        parts: [part('lever', [buildStage('build', 'printers'), blast], { print: printed(14), space: 0.5 })],
        demand: [
          dated('lever', [0]),
          { ...dated('lever', [0]), name: 'withdrawn', changes: { cancels: after(5), revises: null } },
        ],
      }),
    );
    // Of one piece it takes until 15:30; of two it would not have been over when the shift ends at 16:00.
    expect(lines(history, (entry) => entry.job === 0).slice(-3)).toEqual([
      'mon 14:00 step starts job 0 blast by technicians 1',
      'mon 15:30 step ends job 0 blast by technicians 1',
      'mon 15:30 job ends job 0',
    ]);
  });

  it('scraps what a revision finds built, starts again at the first stage, and keeps the arrival of the job', () => {
    const history = play(printedThenFinished({ revises: after(11) }, [0]));
    expect(lines(history)).toEqual([
      'mon 00:00 job arrives job 0',
      'mon 00:00 step starts job 0 build print on printers 1',
      'mon 10:00 step ends job 0 build print on printers 1',
      'mon 10:00 step starts job 0 sand by technicians 1',
      'mon 11:00 job is revised job 0',
      'mon 11:00 step starts job 0 build print on printers 1',
      'mon 21:00 step ends job 0 build print on printers 1',
      'mon 21:00 step starts job 0 sand by technicians 1',
      'mon 23:00 step ends job 0 sand by technicians 1',
      'mon 23:00 job ends job 0',
    ]);
    expect([...(history.jobClasses[0]?.leadTimes ?? [])]).toEqual([23 * HOUR]);
    expect(history.laws.leadTimeImbalance).toBe(0);
  });

  it('sends rejected pieces round again with the rank and promise of their job, which ends with its last good part', () => {
    const testLab = lab({
      stations: [station('bench', { count: 100 })],
      parts: [
        part('lever', [
          stationStage('make', 'bench', { distribution: { kind: 'constant', value: 1 }, typicalHours: 1 }),
          stationStage(
            'inspect',
            'bench',
            { distribution: { kind: 'constant', value: 0.5 }, typicalHours: 0.5 },
            { rejects: { share: 0.3, backTo: 'make' } },
          ),
        ]),
      ],
      demand: [
        {
          ...dated(
            'lever',
            Array.from({ length: 300 }, (_, job) => job),
          ),
          quantity: { kind: 'fixed', value: 4 },
        },
      ],
    });
    const history = play(testLab, { weeks: 3 });
    expect(history.jobClasses[0]?.leadTimes.length).toBe(300);
    // The number of rounds of a job is the largest of four geometric ones: whole multiples of 1.5 h.
    for (const leadTime of history.jobClasses[0]?.leadTimes ?? []) expect(leadTime % (1.5 * HOUR)).toBe(0);
    const repeated = history.partHours[0]?.repeatedPieces ?? 0;
    // It is made at a bench.
    expect(history.partHours[0]?.rebuiltPieces).toBe(0);
    // Each piece is repeated 0.3 / 0.7 times on average; the variance of that is 0.3 / 0.49.
    const standardError = Math.sqrt((1200 * 0.3) / 0.49);
    expect(Math.abs(repeated - (1200 * 0.3) / 0.7)).toBeLessThan(4.05 * standardError);
    expect(history.laws.leadTimeImbalance).toBeLessThan(1);
  });

  it('charges waiting for the requester to a cause of its own, and only for those who have to be asked', () => {
    const history = play(
      lab({
        parts: [part('lever', [waitStage('ask', 6, { requesterChance: 0.5 })])],
        demand: [
          dated(
            'lever',
            Array.from({ length: 100 }, (_, job) => job),
          ),
        ],
      }),
    );
    const [hours] = history.partHours;
    const asked = (history.jobClasses[0]?.leadTimes ?? new Float64Array()).filter((time) => time > 0).length;
    expect(asked).toBeGreaterThan(30);
    expect(asked).toBeLessThan(70);
    expect((hours?.waits[WAIT_CAUSES.indexOf('requester')] ?? 0) / HOUR).toBe(asked * 6);
    expect(hours?.work[0]).toBe(0);
  });

  it('counts pieces that waited longer between two stages than they should', () => {
    const history = play(
      lab({
        people: [people('technicians', 1, ['all'])],
        parts: [
          part('lever', [
            workStage('wash', attended('all', 1)),
            waitStage('drain', 1),
            workStage('cure', attended('all', 1), { maximumWaitHours: 4 }),
          ]),
        ],
        demand: [dated('lever', [at('mon', '09:00'), at('mon', '14:30')])],
      }),
    );
    // The second is drained at 16:30 and waits until 08:00.
    expect([...(history.partHours[0]?.waitsTooLong ?? [])]).toEqual([0, 0, 1]);
  });

  it('refuses an endless backlog whose jobs take no time', () => {
    const endless = lab({
      parts: [part('lever', [waitStage('rest', 0)])],
      demand: [stream('lever', { arrivals: { kind: 'kept in the lab', jobs: 1 } })],
    });
    expect(() => play(endless)).toThrow('"lever" is kept in the lab, and its jobs take no time');
  });

  it('replaces who leaves at once when so many jobs are kept in the lab', () => {
    const history = play(
      lab({
        stations: [station('server')],
        parts: [part('lever', [stationStage('serve', 'server', exponential(2), { basis: 'job' })])],
        demand: [stream('lever', { arrivals: { kind: 'kept in the lab', jobs: 3 } })],
      }),
    );
    expect(history.laws.jobArea).toBe(3 * (history.windowEnd - history.windowStart));
    expect(history.laws.jobArea).toBe(history.laws.jobStays);
  });

  it('lets a rush job interrupt work that may pause, when the lab says so', () => {
    const withRush = (rushInterrupts: boolean) =>
      lines(
        play(
          lab({
            people: [people('technicians', 1, ['all'], { calendar: 'always' })],
            parts: [part('lever', [workStage('sand', attended('all', 4, { pausable: true }))])],
            demand: [dated('lever', [0]), { ...dated('lever', [1], { rush: true }), name: 'hurry' }],
            dispatch: {
              order: ['machine', 'station', 'bench'],
              fitOn: 'typical',
              within: 'promise',
              rushInterrupts,
            },
          }),
        ),
      );
    expect(withRush(true)).toEqual([
      'mon 00:00 job arrives job 0',
      'mon 00:00 step starts job 0 sand by technicians 1',
      'mon 01:00 job arrives job 1',
      'mon 01:00 step pauses job 0 sand by technicians 1',
      'mon 01:00 step starts job 1 sand by technicians 1',
      'mon 05:00 step ends job 1 sand by technicians 1',
      'mon 05:00 job ends job 1',
      'mon 05:00 step resumes job 0 sand by technicians 1',
      'mon 08:00 step ends job 0 sand by technicians 1',
      'mon 08:00 job ends job 0',
    ]);
    expect(withRush(false)).toContain('mon 04:00 step starts job 1 sand by technicians 1');
  });

  it('serves the shortest work first when the lab says so', () => {
    const history = play(
      lab({
        stations: [station('server')],
        parts: [
          part('long', [
            stationStage(
              'serve',
              'server',
              { distribution: { kind: 'constant', value: 5 }, typicalHours: 5 },
              { basis: 'job' },
            ),
          ]),
          part('short', [
            stationStage(
              'serve',
              'server',
              { distribution: { kind: 'constant', value: 1 }, typicalHours: 1 },
              { basis: 'job' },
            ),
          ]),
        ],
        demand: [dated('long', [0, 1]), dated('short', [2])],
        dispatch: {
          order: ['machine', 'station', 'bench'],
          fitOn: 'typical',
          within: 'shortest work',
          rushInterrupts: false,
        },
      }),
    );
    expect(lines(history, (entry) => entry.what === 'job ends')).toEqual([
      'mon 05:00 job ends job 0',
      'mon 06:00 job ends job 2',
      'mon 11:00 job ends job 1',
    ]);
  });
});

describe('Absence', () => {
  it('keeps a person on stated leave out of the windows that start in it', () => {
    const history = play(
      lab({
        people: [
          people('technicians', 2, ['all'], {
            leave: [{ person: 1, fromHour: at('tue', '00:00'), toHour: at('thu', '00:00') }],
          }),
        ],
      }),
      { weeks: 1 },
    );
    expect(
      lines(history, (entry) => entry.what === 'on duty' && entry.time < 168 * HOUR).map(
        (line) => line.slice(0, 3) + line.slice(-1),
      ),
    ).toEqual(['mon1', 'mon2', 'tue2', 'wed2', 'thu1', 'thu2', 'fri1', 'fri2']);
    expect(history.people[0]?.onDutyByHourOfWeek[at('tue', '10:00')]).toBe(1);
  });

  it('lets spells of absence begin by chance and last for whole days', () => {
    const history = play(
      lab({
        people: [
          people('technicians', 1, ['all'], {
            absence: { chancePerDay: 0.05, days: { kind: 'fixed', value: 2 } },
          }),
        ],
      }),
      { weeks: 400, trace: false },
    );
    const [states] = history.people;
    const off = (states?.timeInState[0] ?? 0) / HOUR;
    const present = (400 * 168 - off) / 8;
    // From presence a spell begins with chance p a day and takes 2 days, weekends included: of a spell that
    // begins Monday to Thursday both days are lost, of one on Friday only one. Between 1 and 2 working days are
    // lost per spell, so the share present lies between 1 / (1 + 2 p) and 1 / (1 + p), with room for chance.
    expect(present / 2000).toBeGreaterThan(1 / 1.1 - 0.02);
    expect(present / 2000).toBeLessThan(1 / 1.05 + 0.02);
    expect(history.laws.personImbalance).toBe(0);
  });
});
