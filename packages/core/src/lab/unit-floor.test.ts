import type { Lab, PartType } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import {
  attended,
  buildStage,
  constant,
  dated,
  machine,
  part,
  people,
  play,
  printed,
  waitStage,
} from '../fixture/lab.ts';
import { change, coloured, printing } from '../fixture/printing-lab.ts';
import { begun, ended, finished } from '../fixture/timeline.ts';

describe('The machine that is taken', () => {
  const changes = [change('grey', 'white', 0.5), change('black', 'white', 0.25), change(null, null, 2)];

  it('is the idle one that holds the material already, whatever its number', () => {
    const testLab = coloured(
      [
        ['grey', 1],
        ['white', 1],
        ['white', 5],
        ['grey', 5],
      ],
      {
        count: 2,
        materialChanges: changes,
        setUp: attended('all', 0),
      },
    );
    expect(begun(play(testLab), 'build', 'print')).toEqual([
      'mon 01:00 job 0 on printers 1',
      'mon 01:00 job 1 on printers 2',
      'mon 05:00 job 2 on printers 2',
      'mon 05:00 job 3 on printers 1',
    ]);
  });

  it('is else the one with the shortest change, and else the lowest number', () => {
    const set = { count: 3, materialChanges: changes, setUp: attended('all', 0) };
    // Machine 1 holds grey (30 min to white), machine 2 black (15 min), machine 3 black too.
    const jobs = [
      ['grey', 1],
      ['black', 1],
      ['black', 1],
      ['white', 9],
    ] as const;
    expect(begun(play(coloured(jobs, set)), 'build', 'set-up')[3]).toBe(
      'mon 09:00 job 3 on printers 2 by technicians 1',
    );
    expect(ended(play(coloured(jobs, set)), 'build', 'set-up')[3]).toBe(
      'mon 09:15 job 3 on printers 2 by technicians 1',
    );
    const none = coloured(
      [
        ['grey', 1],
        ['white', 9],
      ],
      { count: 3, initialMaterial: 'black' },
    );
    expect(begun(play(none), 'build')).toEqual([
      'mon 01:00 job 0 on printers 1',
      'mon 09:00 job 1 on printers 1',
    ]);
  });
});

describe('A carrier', () => {
  const tanks = (count: number): Pick<Lab, 'carriers'> => ({ carriers: [{ name: 'tanks', count }] });
  const group = { count: 3, capacity: 1, carrier: 'tanks' };

  it('limits what can run: a build holds its carrier until the build stage is over', () => {
    const testLab = printing(
      { fullShare: 0 },
      [
        [1, 1],
        [1, 1],
        [1, 1],
      ],
      group,
      tanks(2),
    );
    expect(begun(play(testLab), 'build')).toEqual([
      'mon 01:00 job 0 on printers 1',
      'mon 01:00 job 1 on printers 2',
      'mon 02:00 job 2 on printers 1',
    ]);
  });

  it('is held through the stages that follow for the build until one empties it, else to the end of the build stage', () => {
    const route = (emptied: 'drip' | 'dry' | null): PartType =>
      part(
        'lever',
        [
          buildStage('build', 'printers', { move: 'per build' }),
          waitStage('drip', 2, { level: 'build', move: 'per build', emptiesCarrier: emptied === 'drip' }),
          waitStage('dry', 4, { level: 'build', emptiesCarrier: emptied === 'dry' }),
          waitStage('rest', 8),
        ],
        { print: printed(1) },
      );
    const second = (emptied: 'drip' | 'dry' | null): string | undefined =>
      begun(
        play(
          printing(
            { fullShare: 0 },
            [
              [1, 1],
              [1, 1],
            ],
            group,
            { ...tanks(1), parts: [route(emptied)] },
          ),
        ),
        'build',
      )[1];
    expect(second('drip')).toBe('mon 04:00 job 1 on printers 1');
    expect(second('dry')).toBe('mon 08:00 job 1 on printers 1');
    expect(second(null)).toBe('mon 02:00 job 1 on printers 1');
  });

  it('is one for several groups where they share it', () => {
    const testLab = printing(
      { fullShare: 0 },
      [[1, 1]],
      {},
      {
        ...tanks(1),
        machines: [machine('printers', { carrier: 'tanks' }), machine('others', { carrier: 'tanks' })],
        parts: [
          part('lever', [buildStage('build', 'printers')], { print: printed(3) }),
          part('ring', [buildStage('build', 'others')], { print: printed(1) }),
        ],
        demand: [dated('lever', [1]), dated('ring', [2])],
      },
    );
    expect(begun(play(testLab), 'build')).toEqual([
      'mon 01:00 job 0 on printers 1',
      'mon 04:00 job 1 on others 1',
    ]);
  });

  it('cools elsewhere where it can be taken out: the machine is free after the swap, the carrier later', () => {
    const cooled = {
      coolDown: { duration: constant(10), where: 'outside' as const },
      unload: attended('all', 0.5),
    };
    const always = { people: [people('technicians', 1, ['all'], { calendar: 'always' })] };
    const jobs = [
      [1, 1],
      [1, 1],
      [1, 1],
    ] as const;
    const history = play(
      printing(
        { fullShare: 0 },
        jobs,
        { capacity: 1, carrier: 'tanks', ...cooled },
        { ...tanks(2), ...always },
      ),
    );
    expect(begun(history, 'build', 'print')).toEqual([
      'mon 01:00 job 0 on printers 1',
      // Free after the swap at 02:30; the second carrier is there.
      'mon 02:30 job 1 on printers 1',
      // The first one is empty when it has cooled from 02:30 to 12:30.
      'mon 12:30 job 2 on printers 1',
    ]);
    expect(begun(history, 'build', 'cool-down')[0]).toBe('mon 02:30 job 0');
    expect(finished(history)[0]).toBe('mon 12:30 job 0');
  });
});
