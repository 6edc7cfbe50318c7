import type { Lab } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { at, attended, exponential, people, play } from '../fixture/lab.ts';
import { change, coloured, printing } from '../fixture/printing-lab.ts';
import { begun, ended } from '../fixture/timeline.ts';

describe('A material change', () => {
  const setUp = attended('all', 1);

  it('depends on the pair: the first entry that matches counts', () => {
    const materialChanges = [change('grey', 'white', 1), change(null, 'white', 2), change('white', null, 3)];
    const testLab = coloured(
      [
        ['grey', 0],
        ['white', 10],
        ['grey', 20],
        ['black', 30],
        ['white', 40],
      ],
      {
        setUp,
        materialChanges,
      },
    );
    // To white from grey 1 h; to grey from white 3 h; to black from grey nothing; to white from black 2 h.
    expect(ended(play(testLab), 'build', 'set-up')).toEqual([
      'mon 01:00 job 0 on printers 1 by technicians 1',
      'mon 12:00 job 1 on printers 1 by technicians 1',
      'tue 00:00 job 2 on printers 1 by technicians 1',
      'tue 07:00 job 3 on printers 1 by technicians 1',
      'tue 19:00 job 4 on printers 1 by technicians 1',
    ]);
  });

  it('lengthens the set-up where it is attended, and the fit is judged with it', () => {
    const testLab = coloured(
      [
        ['grey', at('mon', '08:00')],
        ['white', at('mon', '14:00')],
      ],
      {
        setUp,
        materialChanges: [change('grey', 'white', 1.5)],
      },
      { people: [people('technicians', 1, ['all'])] },
    );
    // Two hours and a half do not fit before 16:00.
    expect(begun(play(testLab), 'build', 'set-up')).toEqual([
      'mon 08:00 job 0 on printers 1 by technicians 1',
      'tue 08:00 job 1 on printers 1 by technicians 1',
    ]);
    expect(begun(play(testLab), 'build', 'print')[1]).toBe('tue 10:30 job 1 on printers 1');
  });

  it('runs by itself behind the set-up where it is not attended', () => {
    const testLab = coloured(
      [
        ['grey', at('mon', '08:00')],
        ['white', at('mon', '15:00')],
      ],
      {
        setUp,
        materialChanges: [change('grey', 'white', 3, false)],
      },
      { people: [people('technicians', 1, ['all'])] },
    );
    const history = play(testLab);
    expect(ended(history, 'build', 'set-up')).toEqual([
      'mon 09:00 job 0 on printers 1 by technicians 1',
      'mon 16:00 job 1 on printers 1 by technicians 1',
      'mon 19:00 job 1 on printers 1',
    ]);
    expect(begun(history, 'build', 'print')[1]).toBe('mon 19:00 job 1 on printers 1');
  });

  it('is not paid by the first build of a machine that holds nothing at the start', () => {
    const materialChanges = [change(null, null, 2)];
    const testLab = (initialMaterial: string | null): Lab =>
      coloured([['white', 1]], { setUp, materialChanges, initialMaterial });
    expect(ended(play(testLab(null)), 'build', 'set-up')).toEqual([
      'mon 02:00 job 0 on printers 1 by technicians 1',
    ]);
    expect(ended(play(testLab('grey')), 'build', 'set-up')).toEqual([
      'mon 04:00 job 0 on printers 1 by technicians 1',
    ]);
  });
});

describe('The durations of a build', () => {
  it('come from the n-th number of the streams of its machine for the n-th build, whenever and with whatever it is', () => {
    const times = (hours: readonly number[], pieces: number): number[] => {
      const testLab = printing(
        { fullShare: 0 },
        hours.map((hour) => [hour, pieces] as const),
        {
          warmUp: exponential(1),
        },
      );
      const trace = play(testLab).trace ?? [];
      const warmUps = trace.filter((entry) => entry.phase === 'warm-up');
      return [0, 2, 4].map((position) => (warmUps[position + 1]?.time ?? 0) - (warmUps[position]?.time ?? 0));
    };
    expect(times([0, 40, 80], 1)).toEqual(times([7, 50, 200], 10));
    expect(new Set(times([0, 40, 80], 1)).size).toBe(3);
  });
});
