import type { PartType, ShapedBuilds } from '@buildweek/model';
import { BuildPacker } from '@buildweek/timing';
import { describe, expect, it } from 'vitest';
import { attended, constant, play } from '../fixture/lab.ts';
import { order, printing } from '../fixture/printing-lab.ts';
import { block, PLATFORM, POWDER_BED, shapedGroup, shapedPart } from '../fixture/shaped-lab.ts';
import { begun, contents, ended } from '../fixture/timeline.ts';

/** 50 mm by 50 mm: four fill the platform. 36 mm high: an hour under the mask. */
const lever = shapedPart('lever', block(50, 50, 36));

function lab(
  launch: Parameters<typeof printing>[0],
  parts: readonly PartType[],
  jobs: readonly (readonly [part: string, hour: number, pieces: number])[],
  shaped: ShapedBuilds = PLATFORM,
  group: Parameters<typeof printing>[2] = {},
) {
  return printing(launch, [], shapedGroup(shaped, group), {
    parts,
    demand: jobs.map(([name, hour, pieces]) => order(name, hour, pieces)),
  });
}

describe('A build from shapes', () => {
  it('holds what fits side by side, and the misfits are built next', () => {
    const history = play(
      lab(
        { fixedHours: [10] },
        [lever],
        [
          ['lever', 1, 3],
          ['lever', 2, 2],
          ['lever', 3, 1],
        ],
      ),
    );
    expect(contents(history, 'build', 'print')).toEqual([
      'mon 10:00 on printers 1: 3 of job 0, 1 of job 2',
      'mon 11:00 on printers 1: 2 of job 1',
    ]);
  });

  it('splits a job that is larger than a machine over several builds', () => {
    const history = play(lab({ fullShare: 0 }, [lever], [['lever', 9, 10]]));
    expect(contents(history, 'build', 'print')).toEqual([
      'mon 09:00 on printers 1: 4 of job 0',
      'mon 10:00 on printers 1: 4 of job 0',
      'mon 11:00 on printers 1: 2 of job 0',
    ]);
  });

  it('prints as long as its tallest part under a mask, however many stand there', () => {
    const ring = shapedPart('ring', block(50, 50, 72));
    const history = play(
      lab(
        { fixedHours: [10] },
        [lever, ring],
        [
          ['lever', 1, 3],
          ['ring', 2, 1],
        ],
      ),
    );
    expect(ended(history, 'build', 'print')).toEqual([
      'mon 12:00 job 1 on printers 1',
      'mon 12:00 job 0 on printers 1',
    ]);
  });

  it('gains nothing per part from a fuller platform in extrusion', () => {
    // 90,000 mm3 at 25 mm3/s: an hour for each piece.
    const extruded: ShapedBuilds = {
      ...PLATFORM,
      time: {
        kind: 'extrusion',
        layer: 0.2,
        rate: 25,
        secondsPerLayer: 0,
        wallThickness: 100,
        skinThickness: 100,
        infillShare: 1,
        supportShare: 0,
      },
    };
    const history = play(lab({ fullShare: 0 }, [lever], [['lever', 9, 3]], extruded));
    expect(ended(history, 'build', 'print')).toEqual(['mon 12:00 job 0 on printers 1']);
  });

  it('is as high as the stack of its parts in powder, and cools longer the higher it is', () => {
    // Four blocks fill a layer of the bed, but only a tenth of the cake may be part: 4 × 50 × 50 × 36 mm3 at 10 %
    // are 360 mm of 100 × 100 mm2, too many; two make 180 mm, 1,800 layers of ten seconds: five hours.
    const powder: ShapedBuilds = { ...POWDER_BED, coolDownHoursPerMillimetre: 0.05 };
    const history = play(
      lab({ fullShare: 0 }, [shapedPart('lever', block(50, 50, 36), powder)], [['lever', 1, 2]], powder, {
        coolDown: { duration: constant(1), where: 'machine' },
        unload: attended('all', 0.5),
      }),
    );
    expect(ended(history, 'build', 'print')).toEqual(['mon 06:00 job 0 on printers 1']);
    // An hour, and 180 mm at 0.05 h: ten hours.
    expect(ended(history, 'build', 'cool-down')).toEqual(['mon 16:00 job 0 on printers 1']);
    expect(begun(history, 'build', 'unload')).toEqual(['tue 08:00 job 0 on printers 1 by technicians 1']);
    const [machine] = history.machines;
    expect(machine).toMatchObject({ runs: 1, fillSum: 0.9, heightSum: 180, partVolumeSum: 180_000 });
  });

  it('cools outside the machine as long as its height asks for', () => {
    const powder: ShapedBuilds = { ...POWDER_BED, coolDownHoursPerMillimetre: 0.05 };
    const history = play(
      lab({ fullShare: 0 }, [shapedPart('lever', block(50, 50, 36), powder)], [['lever', 1, 2]], powder, {
        coolDown: { duration: constant(1), where: 'outside' },
      }),
    );
    expect(ended(history, 'build', 'cool-down')).toEqual(['mon 16:00 job 0']);
  });

  it('takes the estimated print time times one draw for the whole build', () => {
    const spread: ShapedBuilds = { ...PLATFORM, timeFactor: { kind: 'measured', values: [1.5] } };
    const history = play(lab({ fullShare: 0 }, [lever], [['lever', 9, 4]], spread));
    expect(ended(history, 'build', 'print')).toEqual(['mon 10:30 job 0 on printers 1']);
  });

  it('is full when the next job does not fit, whatever its fill', () => {
    const [wide, narrow] = awkwardPair();
    // Nothing but a full build starts: the first two jobs alone never fill it.
    const history = play(
      lab(
        { fullShare: 1 },
        [shapedPart('wide', wide.shape), shapedPart('narrow', narrow.shape)],
        [
          ['wide', 9, wide.pieces],
          ['narrow', 11, narrow.pieces],
        ],
      ),
    );
    expect(contents(history, 'build', 'print')).toEqual([`mon 11:00 on printers 1: ${wide.pieces} of job 0`]);
  });

  it('never holds parts with and without a shape together', () => {
    const typed = shapedPart('typed', block(1, 1, 1), PLATFORM, {
      print: { kind: 'typed', perBuild: constant(1), perPart: constant(0) },
      space: 0.1,
    });
    const history = play(
      lab(
        { fixedHours: [10] },
        [lever, typed],
        [
          ['lever', 1, 1],
          ['typed', 2, 1],
        ],
      ),
    );
    expect(contents(history, 'build', 'print')).toEqual([
      'mon 10:00 on printers 1: 1 of job 0',
      'mon 11:00 on printers 1: 1 of job 1',
    ]);
  });

  it('cannot be made of a part that is larger than the machine', () => {
    expect(() => play(lab({}, [shapedPart('beam', block(120, 20, 10))], [['beam', 1, 1]]))).toThrow(
      /A piece of "beam" is larger than what "printers" holds/,
    );
  });
});

/** Pieces of two kinds that do not fit together although their shares of a full platform add up to less than one. */
function awkwardPair() {
  for (let width = 35; width <= 75; width += 5) {
    for (let depth = 35; depth <= width; depth += 5) {
      for (let size = 30; size <= 60; size += 3) {
        const shapes = [block(width, depth, 36), block(size, size, 36)] as const;
        const packer = new BuildPacker(PLATFORM.space, shapes);
        const [most, others] = [packer.most(0), packer.most(1)];
        for (let wide = 1; wide < most; wide++) {
          for (let narrow = 1; narrow / others + wide / most < 0.999; narrow++) {
            if (packer.fits(Int32Array.of(wide, narrow))) continue;
            return [
              { shape: shapes[0], pieces: wide },
              { shape: shapes[1], pieces: narrow },
            ] as const;
          }
        }
      }
    }
  }
  throw new Error('There is no such pair.');
}
