import type { BuildFailure, Noticing } from '@buildweek/model';
import { MACHINE_STATES, WAIT_CAUSES } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import {
  at,
  attended,
  buildStage,
  constant,
  dated,
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
} from '../fixture/lab.ts';

/** A print of 20 h that starts Monday at noon and ends Tuesday 08:00, and one technician on Monday to Friday 08-16. */
function oneBuild(more: Parameters<typeof machine>[1], jobs: readonly number[] = [12]) {
  return lab({
    people: [people('technicians', 1, ['all'])],
    machines: [machine('printers', { unload: attended('all', 0.25), ...more })],
    parts: [part('lever', [buildStage('build', 'printers')], { print: printed(17) })],
    demand: [dated('lever', jobs)],
  });
}

function startOfUnload(noticing: Noticing): string | undefined {
  return lines(play(oneBuild({ noticing }, [18]))).find((line) => line.includes('starts job 0 build unload'));
}

describe('RunPhases', () => {
  it('has a machine that has ended noticed at once while somebody is in, by default', () => {
    // The print ends Tuesday 11:00.
    expect(startOfUnload({ kind: 'when somebody is in' })).toContain('tue 11:00');
    expect(startOfUnload({ kind: 'monitored' })).toContain('tue 11:00');
  });

  it('has a machine that has ended noticed only by who comes on duty, where it is stated so', () => {
    expect(startOfUnload({ kind: 'on arrival' })).toContain('wed 08:00');
  });

  it('has a machine that has ended noticed by a round every so often', () => {
    expect(startOfUnload({ kind: 'rounds', everyHours: 2 })).toContain('tue 12:00');
    expect(startOfUnload({ kind: 'rounds', everyHours: 3 })).toContain('tue 11:00');
    expect(startOfUnload({ kind: 'rounds', everyHours: 7 })).toContain('tue 15:00');
  });

  it('charges the time in which nobody looks to the person while people are in, else to the shift', () => {
    const history = play(oneBuild({ noticing: { kind: 'on arrival' } }, [18]));
    const waits = history.partHours[0]?.waits ?? new Float64Array();
    const byCause = (cause: (typeof WAIT_CAUSES)[number]): number =>
      waits.reduce(
        (sum, wait, entry) => (entry % WAIT_CAUSES.length === WAIT_CAUSES.indexOf(cause) ? sum + wait : sum),
        0,
      ) / HOUR;
    expect(byCause('person')).toBe(5);
    expect(byCause('shift')).toBe(16);
  });

  it('starts no build that would run with nobody there without permission', () => {
    const trace = lines(play(oneBuild({ unattendedHours: [] })));
    expect(trace).toEqual(['mon 12:00 job arrives job 0']);
  });

  it('starts a build when its typical run fits into people’s hours and hours with permission', () => {
    // Nights from Wednesday 16:00 to Thursday 08:00 are allowed: 17 h fit from Wednesday 08:00 on.
    const unattendedHours = [{ fromHour: at('wed', '16:00'), toHour: at('thu', '08:00') }];
    const trace = lines(play(oneBuild({ unattendedHours })));
    expect(trace[1]).toBe('wed 08:00 step starts job 0 build print on printers 1');
  });

  it('lets an unattended stage wait for permission when the attended one before it took longer than expected', () => {
    const trace = lines(
      play(
        oneBuild({
          setUp: attended('all', 1, {
            duration: { distribution: { kind: 'constant', value: 3 }, typicalHours: 1 },
            pausable: true,
          }),
          unattendedHours: [{ fromHour: at('mon', '16:00'), toHour: at('tue', '06:00') }],
        }),
      ),
    );
    expect(trace.slice(1, 4)).toEqual([
      'mon 12:00 step starts job 0 build set-up on printers 1 by technicians 1',
      'mon 15:00 step ends job 0 build set-up on printers 1 by technicians 1',
      // 17 h from 15:00 on would end at 08:00 on Tuesday, two hours after the permission: the next chance is in
      // a week.
      'week 2 mon 08:00 step starts job 0 build print on printers 1',
    ]);
  });

  it('lets somebody watch the first layers, which are a part of the print', () => {
    const trace = lines(play(oneBuild({ firstLayers: attended('all', 0.5) })));
    expect(trace.slice(1, 5)).toEqual([
      'mon 12:00 step starts job 0 build first layers on printers 1 by technicians 1',
      'mon 12:30 step ends job 0 build first layers on printers 1 by technicians 1',
      'mon 12:30 step starts job 0 build print on printers 1',
      'tue 05:00 step ends job 0 build print on printers 1',
    ]);
  });

  it('loses a build that fails, cleans the machine, and builds the parts again with their rank', () => {
    const failure: BuildFailure = {
      chancePerBuild: 0.5,
      perPrintHour: 0,
      loses: 'the build',
      cleaning: attended('all', 1),
    };
    const seed = seedWith(
      (trace) => trace.filter((line) => line.endsWith('starts job 0 build print on printers 1')).length === 2,
      failure,
    );
    const history = play(oneBuild({ failure }), { seed });
    const trace = lines(history, (entry) => entry.what !== 'on duty' && entry.what !== 'off duty');
    const cleaning = trace.findIndex((line) => line.includes('step starts cleaning'));
    expect(cleaning).toBeGreaterThan(0);
    expect(trace[cleaning + 1]).toContain('step ends cleaning');
    expect(trace[cleaning + 2]).toContain('step starts job 0 build print');
    expect(history.machines[0]?.failures).toBe(1);
    expect(history.partHours[0]?.repeatedPieces).toBe(1);
    expect(history.partHours[0]).toMatchObject({
      builtPieces: 2,
      rebuiltPieces: 1,
      madePieces: 1,
      madeJobs: 1,
    });
    expect(history.laws.leadTimeImbalance).toBe(0);
    expect(history.laws.machineImbalance).toBe(0);
  });

  it('finds one spoilt job when the build is unloaded, and lets the others go on', () => {
    const failure: BuildFailure = { chancePerBuild: 0.5, perPrintHour: 0, loses: 'one job', cleaning: null };
    const testLab = lab({
      machines: [machine('printers', { capacity: 3, failure })],
      parts: [part('lever', [buildStage('build', 'printers')], { print: printed(10) })],
      demand: [dated('lever', [0, 0, 0])],
    });
    for (let candidate = 0; candidate < 50; candidate++) {
      const history = play(testLab, { seed: `one job ${candidate}` });
      const ends = lines(history, (entry) => entry.what === 'job ends');
      if (history.partHours[0]?.repeatedPieces !== 1) continue;
      expect(ends.map((line) => line.slice(0, 9))).toEqual(['mon 10:00', 'mon 10:00', 'mon 20:00']);
      expect(history.partHours[0]?.builtPieces).toBe(4);
      return;
    }
    throw new Error('No seed spoils exactly one job.');
  });

  it('fails builds by chance and by print hours as often as stated', () => {
    const failure: BuildFailure = {
      chancePerBuild: 0.1,
      perPrintHour: 0.02,
      loses: 'the build',
      cleaning: null,
    };
    const history = play(
      lab({
        machines: [machine('printers', { failure })],
        parts: [part('lever', [buildStage('build', 'printers')], { print: printed(5) })],
        demand: [{ ...dated('lever', []), arrivals: { kind: 'kept in the lab', jobs: 2 } }],
      }),
      { weeks: 400, trace: false },
    );
    const [unit] = history.machines;
    const builds = (unit?.runs ?? 0) + (unit?.failures ?? 0);
    const share = 1 - 0.9 * Math.exp(-0.02 * 5);
    const standardError = Math.sqrt((share * (1 - share)) / builds);
    expect(Math.abs((unit?.failures ?? 0) / builds - share)).toBeLessThan(4.05 * standardError);
  });

  it('keeps borrowed equipment to its own hours: off outside of them, and no run that would not be over in time', () => {
    const history = play(
      lab({
        calendars: [
          { name: 'day', weekly: [], closedDays: [], extra: [] },
          {
            name: 'thursdays',
            weekly: [{ fromHour: at('thu', '09:00'), toHour: at('thu', '13:00') }],
            closedDays: [],
            extra: [],
          },
        ],
        stations: [station('scanner', { calendar: 'thursdays' })],
        parts: [part('lever', [stationStage('scan', 'scanner', constant(1.5))])],
        demand: [dated('lever', [0, 0, 0])],
      }),
      { weeks: 1 },
    );
    expect(lines(history, (entry) => entry.what === 'step starts')).toEqual([
      'thu 09:00 step starts job 0 scan run on scanner 1',
      'thu 10:30 step starts job 1 scan run on scanner 1',
      // At 12:00 an hour is left: the third one waits for a week.
      'week 2 thu 09:00 step starts job 2 scan run on scanner 1',
    ]);
    const off = history.stations[0]?.timeInState.at(-1) ?? 0;
    expect(off / HOUR).toBe(168 - 4);
    expect(MACHINE_STATES.at(-1)).toBe('off');
  });
});

function seedWith(accepts: (trace: string[]) => boolean, failure: BuildFailure): string {
  for (let candidate = 0; candidate < 100; candidate++) {
    const seed = `fails ${candidate}`;
    if (accepts(lines(play(oneBuild({ failure }), { seed })))) return seed;
  }
  throw new Error('No seed gives what the test needs.');
}
