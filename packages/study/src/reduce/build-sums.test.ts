import type { PartShape, ShapedBuilds } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { history, machineHistory } from '../fixture/history.ts';
import { build, lab, machine, part } from '../fixture/lab.ts';
import { BuildSums } from './build-sums.ts';

const SHAPE: PartShape = {
  width: 10,
  depth: 10,
  height: 10,
  volume: 1000,
  surface: 600,
  footprint: 100,
  overhangArea: 0,
  supportedVolume: 0,
  supportContactArea: 0,
  layerAreas: [],
};

/** A bed of 100 mm by 100 mm, 200 mm high, with 10 mm of plain powder; half of it virgin. */
const POWDER: ShapedBuilds = {
  space: {
    kind: 'powder bed',
    width: 100,
    depth: 100,
    height: 200,
    margin: 0,
    spacing: 0,
    packingDensity: 0.1,
    boxShare: 1,
  },
  time: { kind: 'powder bed', layer: 0.1, secondsPerLayer: 10, scanRate: 1000, bedding: 10 },
  timeFactor: { kind: 'constant', value: 1 },
  coolDownHoursPerMillimetre: 0,
  powder: { bedDensity: 0.5, partDensity: 1, virginShare: 0.5 },
};

const shapedLab = lab({
  machines: [machine('sinter', { shaped: POWDER, count: 2 }), machine('printer', { shaped: POWDER })],
  parts: [part('cube', [build('build', 'sinter')], { print: { kind: 'shape', shape: SHAPE } })],
});

describe('BuildSums', () => {
  it('gives pieces, fill and height of a build, and the powder of a week, over the machines of a group', () => {
    const sums = new BuildSums(shapedLab);
    for (let replication = 0; replication < 20; replication++) {
      sums.add(
        history(replication, {
          machines: [
            machineHistory(
              'sinter',
              {},
              { runs: 1, pieces: 40, fillSum: 0.5, heightSum: 100, partVolumeSum: 40_000 },
            ),
            machineHistory(
              'sinter',
              {},
              { runs: 1, pieces: 20, fillSum: 0.3, heightSum: 60, partVolumeSum: 20_000 },
            ),
            machineHistory('printer', {}, { runs: 5, pieces: 5 }),
          ],
        }),
      );
    }
    // By hand: 160 mm and twice 10 mm of bedding over 100 cm2 are 1,800 cm3, of which 60 cm3 are parts. 60 g of parts and
    // 1,740 cm3 at 0.5 g of powder around them: 870 g come back; 930 g go in, half of them used.
    expect(sums.results(0.95)).toMatchObject([
      {
        group: 'sinter',
        kind: 'powder bed',
        mostHeight: 200,
        partsPerBuild: { value: 30 },
        meanFill: { value: 0.4 },
        meanHeight: { value: 80 },
        packingDensity: { value: 60 / 1800 },
        powder: {
          virgin: { value: 0.465 },
          used: { value: 0.465 },
          returned: { value: 0.87 },
          inParts: { value: 0.06 },
          surplus: { value: 0.405 },
        },
      },
    ]);
  });

  it('takes parts that fill the whole bed as such, though rounding makes them larger than the bed', () => {
    const time = {
      kind: 'volume and height',
      hoursPerBuild: 1,
      hoursPerCubicCentimetre: 0,
      hoursPerCentimetre: 0,
    } as const;
    const full = lab({
      machines: [machine('sinter', { shaped: { ...POWDER, time } })],
      parts: [part('cube', [build('build', 'sinter')], { print: { kind: 'shape', shape: SHAPE } })],
    });
    const sums = new BuildSums(full);
    for (let replication = 0; replication < 20; replication++) {
      // 100.0004 mm wide is 100 mm within half a micrometre, which packing does not see.
      const content = { runs: 1, pieces: 1, fillSum: 1, heightSum: 200, partVolumeSum: 100.0004 * 100 * 200 };
      sums.add(history(replication, { machines: [machineHistory('sinter', {}, content)] }));
    }
    expect(sums.results(0.95)).toMatchObject([
      { packingDensity: { value: 1 }, powder: { returned: { value: 0 }, inParts: { value: 2 } } },
    ]);
  });

  it('says nothing of a group on which nothing with a shape is built', () => {
    expect(new BuildSums(lab({ machines: [machine('printer', { shaped: POWDER })] })).results(0.95)).toEqual(
      [],
    );
  });
});
