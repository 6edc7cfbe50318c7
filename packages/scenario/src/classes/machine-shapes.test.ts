import { BuildPacker } from '@buildweek/timing';
import { describe, expect, it } from 'vitest';
import { labOf } from '../fixture/lab-of.ts';
import { edited, PLAIN_LAB } from '../fixture/plain-lab.ts';
import { MACHINE_CLASSES } from './machine-classes.ts';

const SHAPED = edited('fits: 8 per build, print: 3 h per build', 'size: 42 x 42 x 11 mm, volume: 5200 mm3');

/** The one machine of the plain lab, of a class, with parts that have a size. */
function machineOf(className: string) {
  const text = SHAPED.replace('small mask VPP', `${className}, material change: none`);
  const machine = labOf(text).machines[0];
  const shaped = machine?.shaped;
  if (machine === undefined || shaped == null) throw new Error(`"${className}" has no build space`);
  return { machine, shaped };
}

describe('a machine of a class', () => {
  it('has no build space where no part with a shape is built, and a cool-down for builds of any height', () => {
    const [machine] = labOf(PLAIN_LAB.replace('small mask VPP', 'compact PBF')).machines;
    expect(machine).toMatchObject({ shaped: null, coolDown: { duration: { typicalHours: 10 } } });
  });

  it('gives a part with a size and a volume its print time and what fits', () => {
    const [part] = labOf(SHAPED).parts;
    expect(part?.print?.kind).toBe('shape');
    expect(part?.space).toBeLessThan(1);
  });

  it.each([...MACHINE_CLASSES.keys()])('packs and times what is built on it: %s', (className) => {
    const { shaped } = machineOf(className);
    const side = { width: 30, depth: 20, height: 10, volume: 3000, surface: 2200, footprint: 600 };
    const shape = { ...side, overhangArea: 0, supportedVolume: 0, supportContactArea: 0, layerAreas: [] };
    expect(new BuildPacker(shaped.space, [shape]).most(0)).toBeGreaterThan(5);
  });

  // Seconds for a layer in all, height in an hour, cool-down against print: common practice, no source.
  it.each([
    ['compact PBF', 20, 60, 6, 15],
    ['large PBF', 30, 80, 5, 15],
  ] as const)(
    'prints powder layers as fast as is usual, and cools half to all of that time: %s',
    (...row) => {
      const [className, fastest, slowest, lowest, highest] = row;
      const { machine, shaped } = machineOf(className);
      const { space, time } = shaped;
      if (time.kind !== 'powder bed' || space.kind !== 'powder bed') throw new Error('no powder bed');
      const area = space.width * space.depth * space.packingDensity;
      const secondsOfLayer = time.secondsPerLayer + area / time.scanRate;
      expect(secondsOfLayer).toBeGreaterThan(fastest);
      expect(secondsOfLayer).toBeLessThan(slowest);
      const heightPerHour = (time.layer * 3600) / secondsOfLayer;
      expect(heightPerHour).toBeGreaterThan(lowest);
      expect(heightPerHour).toBeLessThan(highest);
      for (const share of [0.2, 0.5, 1]) {
        const height = share * space.height;
        const cooling =
          (machine.coolDown?.duration.typicalHours ?? 0) + shaped.coolDownHoursPerMillimetre * height;
        const printing = (height + time.bedding) / heightPerHour;
        expect(cooling / printing).toBeGreaterThan(0.5);
        expect(cooling / printing).toBeLessThan(1);
      }
    },
  );

  it('scans a vat by laser as fast as is usual at a platform that is filled to a tenth', () => {
    // 30 to 150 s for a layer with recoating, 3 to 12 mm an hour: common practice, no source.
    const { space, time } = machineOf('large laser VPP').shaped;
    if (time.kind !== 'laser vat') throw new Error('no laser');
    const secondsOfLayer = time.secondsPerLayer + (0.1 * space.width * space.depth) / time.scanRate;
    expect(secondsOfLayer).toBeGreaterThan(30);
    expect(secondsOfLayer).toBeLessThan(150);
    const heightPerHour = (time.layer * 3600) / secondsOfLayer;
    expect(heightPerHour).toBeGreaterThan(3);
    expect(heightPerHour).toBeLessThan(12);
  });
});
