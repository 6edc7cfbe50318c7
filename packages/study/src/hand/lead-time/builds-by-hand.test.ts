import type { Lab } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { byHand, estimateOf } from '../../fixture/by-hand.ts';
import { attended, bench, build, constant, lab, machine, part, people } from '../../fixture/lab.ts';

const print = { kind: 'typed', perBuild: constant(2), perPart: constant(1) } as const;

describe('handLeadTimes of builds', () => {
  it('lets jobs wait until their build is full, where it starts no sooner', () => {
    const launch = machine('printer').launch;
    const full = (waitedHours: number | null): Lab =>
      lab({
        machines: [machine('printer', { capacity: 12, launch: { ...launch, fullShare: 1, waitedHours } })],
        parts: [part('lever', [build('build', 'printer')], { print })],
      });
    // 10 jobs a week of 3 pieces, 4 to a build: 3 / (2 × 10 / 168) h of batching, 2 + 12 h of build.
    expect(byHand(full(null))).toMatchObject({
      batchHours: expect.closeTo((3 * 168) / 20, 9),
      stageHours: expect.closeTo(14, 9),
    });
    // After 16.8 h one more job has come: 2 jobs to a build, 8.4 h of batching on average.
    expect(byHand(full(16.8))).toMatchObject({
      batchHours: expect.closeTo(8.4, 9),
      stageHours: expect.closeTo(8, 9),
    });
  });

  it('fills builds that start at once only as far as the machines need it', () => {
    const crowded = (jobsPerWeek: number): Lab =>
      lab(
        {
          machines: [machine('printer', { capacity: 30 })],
          parts: [
            part('lever', [build('build', 'printer')], {
              print: { kind: 'typed', perBuild: constant(10), perPart: constant(0.1) },
            }),
          ],
        },
        jobsPerWeek,
      );
    expect(byHand(crowded(2))).toMatchObject({ batchHours: 0, stageHours: expect.closeTo(10.3, 9) });
    // One job to a build would take 309 of 168 hours.
    const shared = byHand(crowded(30));
    expect(shared.batchHours).toBeGreaterThan(0);
    expect(shared.stageHours).toBeGreaterThan(10.5);
    // Full builds of 10 jobs take 13 h: 168 / 13 × 10 jobs are too many.
    expect(estimateOf(crowded(130))).toEqual({
      kind: 'refused',
      reason: '101 % of the hours of “printer” are asked for, trouble counted: the queue grows without end.',
    });
  });

  it('builds a large job in several builds, one after the other', () => {
    const large = lab(
      {
        machines: [machine('printer', { capacity: 1 })],
        parts: [part('lever', [build('build', 'printer')], { print })],
      },
      1e-6,
    );
    expect(byHand(large).stageHours).toBeCloseTo(9, 9);
    const three = { ...large, machines: [machine('printer', { capacity: 1, count: 3 })] };
    expect(byHand(three).stageHours).toBeCloseTo(3, 9);
  });

  it('sends jobs round again whose pieces are rejected or whose build is lost', () => {
    const sand = { ...bench('sand', attended('hands', 1)), rejects: { share: 0.2, backTo: 'sand' } };
    const again = lab(
      { people: [people('technicians', 1, ['hands'])], parts: [part('lever', [sand])] },
      1e-6,
    );
    const single: Lab = {
      ...again,
      demand: again.demand.map((stream) => ({ ...stream, quantity: { kind: 'fixed', value: 1 } })),
    };
    expect(byHand(single).stageHours).toBeCloseTo(1.25, 6);
    // The largest of three geometric numbers, less one: 3 q/(1−q) − 3 q²/(1−q²) + q³/(1−q³) with q = 0.2.
    expect(byHand(again).stageHours).toBeCloseTo(1 + 0.75 - 0.125 + 1 / 124, 6);
    const failing = lab(
      {
        machines: [
          machine('printer', {
            capacity: 3,
            failure: { chancePerBuild: 0.2, perPrintHour: 0, loses: 'the build', cleaning: null },
          }),
        ],
        parts: [part('lever', [build('build', 'printer')], { print })],
      },
      1e-6,
    );
    // A quarter of a build in vain for each good one, each half a print of 5 h.
    expect(byHand(failing)).toMatchObject({
      stageHours: expect.closeTo(5, 9),
      troubleHours: expect.closeTo(0.625, 9),
    });
  });

  it('has jobs that leave a build together wait for each other', () => {
    const together = lab(
      {
        people: [people('technicians', 1, ['hands'], { calendar: 'always' })],
        machines: [
          machine('printer', {
            count: 50,
            capacity: 12,
            launch: { ...machine('printer').launch, fullShare: 1 },
          }),
        ],
        parts: [part('lever', [build('build', 'printer'), bench('sand', attended('hands', 1))], { print })],
      },
      0.01,
    );
    // Four come at once: on average three halves of an hour.
    expect(byHand(together).peopleHours).toBeCloseTo(1.5, 3);
  });
});
