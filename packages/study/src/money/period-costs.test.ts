import { createSimulator } from '@buildweek/core';
import type { Lab, PartShape, ShapedBuilds } from '@buildweek/model';
import { COST_KINDS } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import { economics, equipmentCost } from '../fixture/economics.ts';
import { benchHours, history, machineHistory, peopleHistory } from '../fixture/history.ts';
import { attended, bench, build, constant, lab, machine, part, people } from '../fixture/lab.ts';
import { committedCostPerYear } from './committed-cost.ts';
import { periodCosts } from './period-costs.ts';
import { WEEKS_PER_YEAR } from './roster-hours.ts';

const SHAPE: PartShape = {
  width: 20,
  depth: 20,
  height: 20,
  volume: 8000,
  surface: 2400,
  footprint: 400,
  overhangArea: 0,
  supportedVolume: 2000,
  supportContactArea: 0,
  layerAreas: [],
};
const MASK: ShapedBuilds = {
  space: { kind: 'platform', width: 100, depth: 100, height: 100, margin: 0, spacing: 0 },
  time: { kind: 'mask', layer: 0.1, secondsPerLayer: 8, bottomLayers: 0, secondsPerBottomLayer: 0 },
  timeFactor: { kind: 'constant', value: 1 },
  coolDownHoursPerMillimetre: 0,
  powder: null,
};
const POWDER: ShapedBuilds = {
  ...MASK,
  space: {
    ...{ kind: 'powder bed', width: 100, depth: 100, height: 200, margin: 0, spacing: 0 },
    ...{ packingDensity: 0.1, boxShare: 0.6 },
  },
  time: { kind: 'powder bed', layer: 0.1, secondsPerLayer: 20, scanRate: 500, bedding: 10 },
  powder: { bedDensity: 0.5, partDensity: 1, virginShare: 0.5 },
};

const testLab: Lab = lab({
  machines: [
    machine('resin', { process: 'VPP', shaped: MASK }),
    machine('powder', { process: 'PBF', shaped: POWDER }),
  ],
  people: [people('technicians', 2, [])],
  parts: [
    part('ring', [build('build', 'resin')], { print: { kind: 'shape', shape: SHAPE } }),
    part('clip', [build('build', 'powder')], {
      material: 'nylon',
      print: { kind: 'shape', shape: SHAPE },
    }),
    part('sign', [bench('sand', attended('hands', 1))]),
  ],
});
const costs = economics({
  equipment: [
    equipmentCost('resin', { price: 10_000, yearlyCost: 500 }),
    equipmentCost('powder', { price: 0 }),
  ],
  people: [{ group: 'technicians', perHour: 40, overtimeSupplement: 0.25 }],
  materials: [
    { material: 'grey', pricePerKilogram: 100, density: 1.2, waste: 0.25 },
    { material: 'nylon', pricePerKilogram: 50, density: null, waste: 0 },
  ],
  parts: [
    { part: 'ring', material: null, outside: 14.5 },
    { part: 'clip', material: null, outside: null },
    { part: 'sign', material: 2, outside: null },
  ],
  outsidePerJob: 35,
  otherPerYear: 12_000,
});
const none = { ...benchHours('', 0, 0, {}) };
const played = history(0, {
  weeks: {
    arrivedJobs: Float64Array.of(20),
    promisedJobs: Float64Array.of(20),
    onTimeJobs: Float64Array.of(20),
    finishedJobs: Float64Array.of(12),
    finishedParts: Float64Array.of(60),
    jobsInLab: Float64Array.of(3),
  },
  partHours: [
    {
      ...none,
      part: 'ring',
      builtPieces: 30,
      repeatedPieces: 5,
      rebuiltPieces: 4,
      madePieces: 25,
      sentOutPieces: 10,
      sentOutJobs: 2,
    },
    { ...none, part: 'clip', builtPieces: 20 },
    { ...none, part: 'sign', madePieces: 6, repeatedPieces: 1 },
  ],
  machines: [
    machineHistory('resin', {}),
    // One build of 90 mm and 10 mm of bedding: a cake of 1000 cm3 with 160 cm3 of parts in it.
    machineHistory('powder', {}, { runs: 1, pieces: 20, heightSum: 90, partVolumeSum: 160_000 }),
  ],
  people: [peopleHistory('technicians', [{ work: 30, idle: 8, overtime: 2 }, { work: 10 }])],
});

describe('costs of one replication', () => {
  const found = periodCosts(testLab, costs, played);

  it('take equipment, upkeep, people and the rest by the weeks, whatever happened', () => {
    expect(found.byKind.equipment).toBeCloseTo(2000 / WEEKS_PER_YEAR, 9);
    expect(found.byKind.upkeep).toBeCloseTo(500 / WEEKS_PER_YEAR, 9);
    // Two persons of 40 hours, though one was away most of the week.
    expect(found.byKind.people).toBeCloseTo(2 * 40 * 40, 9);
    expect(found.byKind.other).toBeCloseTo(12_000 / WEEKS_PER_YEAR, 9);
    const { equipment, upkeep, people: paid, other } = found.byKind;
    expect((equipment + upkeep + paid + other) * WEEKS_PER_YEAR).toBeCloseTo(
      committedCostPerYear(testLab, costs),
      6,
    );
  });

  it('pay hours of overtime with their supplement', () => {
    expect(found.byKind.overtime).toBeCloseTo(2 * 40 * 1.25, 9);
  });

  it('take material of all that was built, with supports, waste, and the powder that has to be bought', () => {
    // 8 cm3 and a twentieth of 2 cm3 of supported volume, at 1.2 g/cm3, a quarter more, at 100 per kg.
    const ring = ((8.1 * 1.2) / 1000) * 1.25 * 100;
    // 840 cm3 of bed at 0.5 and 160 cm3 of parts at 1 g/cm3: 580 g, half of them virgin, for 160 cm3.
    const clip = ((8 * (290 / 160)) / 1000) * 50;
    expect(found.parts.map(({ material }) => material)).toEqual([
      expect.closeTo(30 * ring, 9),
      expect.closeTo(20 * clip, 9),
      expect.closeTo(7 * 2, 9),
    ]);
    expect(found.byKind.material).toBeCloseTo(30 * ring + 20 * clip + 14, 9);
    expect(found.repeats).toBeCloseTo(4 * ring + 2, 9);
  });

  it('never buy less powder than stays in the parts', () => {
    const lean = {
      ...testLab,
      machines: testLab.machines.map((group) =>
        group.name === 'powder'
          ? { ...group, shaped: { ...POWDER, powder: { bedDensity: 0.5, partDensity: 1, virginShare: 0.1 } } }
          : group,
      ),
    };
    // A tenth of 580 g is less than the 160 g in the parts.
    expect(periodCosts(lean, costs, played).parts[1]?.material).toBeCloseTo(0.16 * 50, 9);
  });

  it('pay work sent out by piece and by job', () => {
    expect(found.byKind.outside).toBe(10 * 14.5 + 2 * 35);
  });

  it('add up', () => {
    expect(found.total).toBeCloseTo(
      COST_KINDS.reduce((sum, kind) => sum + found.byKind[kind], 0),
      9,
    );
    expect([found.finishedParts, found.finishedJobs, found.weeks]).toEqual([60, 12, 1]);
  });

  it('are refused where something was sent out that has no price', () => {
    const without = { ...costs, parts: costs.parts.map((cost) => ({ ...cost, outside: null })) };
    expect(() => periodCosts(testLab, without, played)).toThrow('"ring" has no price outside.');
  });
});

describe('costs of a lab that is played', () => {
  it('charge the material of failed builds', () => {
    const failing = lab({
      // Somebody who notices.
      people: [people('technicians', 1, [], { calendar: 'always' })],
      machines: [
        machine('printer', {
          capacity: 3,
          failure: { chancePerBuild: 0.3, perPrintHour: 0, loses: 'the build', cleaning: null },
        }),
      ],
      parts: [
        part('lever', [build('build', 'printer')], {
          print: { kind: 'typed', perBuild: constant(2), perPart: constant(0) },
        }),
      ],
    });
    const prices = economics({ parts: [{ part: 'lever', material: 10, outside: null }] });
    const settings = {
      seed: 'failing',
      ignoredWeeks: 0,
      weeks: 200,
      capWeeks: 1,
      trace: false,
      queueWaits: false,
    };
    const one = createSimulator(failing).simulate({ ...settings, replication: 0 });
    const { byKind, repeats, finishedParts } = periodCosts(failing, prices, one);
    // A build takes 1 / 0.7 goes: about 6000 pieces in 2000 builds, of which the goes vary by 0.3 / 0.49 each.
    const goes = byKind.material / 10 / finishedParts;
    expect(Math.abs(goes - 1 / 0.7)).toBeLessThan(4.05 * Math.sqrt(0.3 / 0.49 / 2000) + 0.002);
    expect(repeats / byKind.material).toBeCloseTo(0.3, 1);
  });
});
