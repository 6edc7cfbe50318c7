import type { Lab, StationStage } from '@buildweek/model';
import { MACHINE_STATES } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import {
  at,
  attended,
  constant,
  dated,
  HOUR,
  lab,
  part,
  people,
  play,
  station,
  stationStage,
  workStage,
} from '../fixture/lab.ts';
import { order, printing } from '../fixture/printing-lab.ts';
import { begun, ended } from '../fixture/timeline.ts';

describe('A machine', () => {
  it('is held until it is unloaded, over the night too', () => {
    const testLab = printing(
      { fullShare: 0 },
      [
        [at('mon', '15:00'), 1],
        [at('mon', '16:00'), 1],
      ],
      {
        capacity: 1,
        unload: attended('all', 0.25),
      },
    );
    const history = play(testLab, { weeks: 1 });
    expect(ended(history, 'build', 'print')[0]).toBe('mon 16:00 job 0 on printers 1');
    expect(begun(history, 'build', 'unload')[0]).toBe('tue 08:00 job 0 on printers 1 by technicians 1');
    expect(begun(history, 'build', 'print')[1]).toBe('tue 08:15 job 1 on printers 1');
    const state = (name: (typeof MACHINE_STATES)[number]): number =>
      (history.machines[0]?.timeInState[MACHINE_STATES.indexOf(name)] ?? Number.NaN) / HOUR;
    expect(state('waiting to be unloaded')).toBe(16);
    expect(state('print')).toBe(2);
    expect(state('unload')).toBe(0.5);
    expect(state('idle')).toBe(149.5);
  });

  it('waits to start while something waits for it and nobody is there', () => {
    const history = play(printing({ fullShare: 0 }, [[6, 1]], { setUp: attended('all', 1) }), { weeks: 1 });
    const times = history.machines[0]?.timeInState ?? new Float64Array();
    expect(times[MACHINE_STATES.indexOf('waiting to start')]).toBe(2 * HOUR);
    expect(times[MACHINE_STATES.indexOf('set-up')]).toBe(HOUR);
    expect(times[MACHINE_STATES.indexOf('idle')]).toBe(164 * HOUR);
  });
});

describe('A station', () => {
  const stationLab = (stage: Partial<StationStage>, hour: number, pieces = 1): Lab =>
    lab({
      people: [people('technicians', 1, ['all'])],
      stations: [station('washers', { capacity: 10, unit: 'parts' })],
      parts: [
        part('lever', [
          stationStage('wash', 'washers', constant(1), {
            load: attended('all', 0.5),
            unload: attended('all', 0.25),
            ...stage,
          }),
        ]),
      ],
      demand: [order('lever', hour, pieces), order('lever', hour + 0.25, pieces)],
    });

  it('is loaded only when the loading fits the window', () => {
    expect(begun(play(stationLab({}, at('mon', '15:31'))), 'wash', 'load')[0]).toMatch(/^tue 08:00/);
    expect(begun(play(stationLab({}, at('mon', '15:30'))), 'wash', 'load')[0]).toMatch(/^mon 15:30/);
  });

  it('may end its unattended run at night and is held until it is unloaded', () => {
    const history = play(stationLab({ run: constant(4) }, at('mon', '15:00')));
    expect(ended(history, 'wash', 'run')[0]).toBe('mon 19:30 job 0 on washers 1');
    expect(begun(history, 'wash', 'unload')[0]).toBe('tue 08:00 job 0 on washers 1 by technicians 1');
    expect(begun(history, 'wash', 'load')[1]).toBe('tue 08:15 job 1 on washers 1 by technicians 1');
  });

  it('needs a person for the whole of an attended run, which pauses or must fit like other work', () => {
    const attendance = { skill: 'all', persons: 1 };
    const alone = { load: null, unload: null, run: constant(2) };
    const pausing = play(
      stationLab({ ...alone, runAttendance: { ...attendance, pausable: true } }, at('mon', '15:00')),
    );
    expect(ended(pausing, 'wash')[0]).toBe('tue 09:00 job 0 on washers 1 by technicians 1');
    const fitting = play(
      stationLab({ ...alone, runAttendance: { ...attendance, pausable: false } }, at('mon', '15:00')),
    );
    expect(begun(fitting, 'wash')[0]).toBe('tue 08:00 job 0 on washers 1 by technicians 1');
  });

  it('fits an attended run per part by all its pieces, also behind the loading', () => {
    const runAttendance = { skill: 'all', persons: 1, pausable: false };
    const perPart = { run: constant(0.5), basis: 'part' as const, runAttendance };
    // Four pieces of half an hour: two hours fit after neither 14:15 nor 14:45.
    const bare = play(stationLab({ ...perPart, load: null }, at('mon', '14:15'), 4));
    expect(begun(bare, 'wash', 'run')[0]).toBe('tue 08:00 job 0 on washers 1 by technicians 1');
    const loaded = play(stationLab(perPart, at('mon', '14:15'), 4));
    expect(ended(loaded, 'wash', 'load')[0]).toBe('mon 14:45 job 0 on washers 1 by technicians 1');
    expect(begun(loaded, 'wash', 'run')[0]).toBe('tue 08:00 job 0 on washers 1 by technicians 1');
  });

  it('fits an attended run by the longest load that goes into it', () => {
    const runAttendance = { skill: 'all', persons: 1, pausable: false };
    const batch = (fitOn: 'typical' | 'drawn'): Lab => ({
      ...stationLab({ run: constant(0.5), basis: 'part', runAttendance, load: null }, 0),
      stations: [station('washers', { capacity: 5, unit: 'parts', fullShare: 1 })],
      demand: [order('lever', at('mon', '14:00'), 1), order('lever', at('mon', '14:15'), 4)],
      dispatch: { order: ['machine', 'station', 'bench'], fitOn, within: 'promise', rushInterrupts: false },
    });
    // The second load takes two hours. Of constant durations typical and drawn agree.
    for (const fitOn of ['typical', 'drawn'] as const) {
      expect(begun(play(batch(fitOn)), 'wash', 'run')[0]).toBe(
        'tue 08:00 job 0 on washers 1 by technicians 1',
      );
    }
  });

  it('runs as long as its longest load where the run is drawn per job or per piece', () => {
    const testLab = lab({
      stations: [station('washers', { capacity: 2, unit: 'jobs', fullShare: 1 })],
      parts: [part('lever', [stationStage('wash', 'washers', constant(1), { basis: 'part' })])],
      demand: [order('lever', 1, 2), order('lever', 2, 5)],
    });
    expect(ended(play(testLab), 'wash')).toEqual([
      'mon 07:00 job 0 on washers 1',
      'mon 07:00 job 1 on washers 1',
    ]);
  });

  it('leaves its people free while it runs by itself', () => {
    const testLab = {
      ...stationLab({ run: constant(3) }, at('mon', '08:00')),
      parts: [
        ...stationLab({ run: constant(3) }, 0).parts,
        part('ring', [workStage('sand', attended('all', 1))]),
      ],
      demand: [dated('lever', [at('mon', '08:00')]), dated('ring', [at('mon', '08:00')])],
    };
    expect(begun(play(testLab), 'sand')).toEqual(['mon 08:30 job 1 by technicians 1']);
  });
});
