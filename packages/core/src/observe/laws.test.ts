import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { generatedLabs } from '../fixture/generated-lab.ts';
import {
  at,
  attended,
  buildStage,
  constant,
  dated,
  HOUR,
  lab,
  machine,
  part,
  people,
  play,
  printed,
  station,
  stationStage,
  workStage,
} from '../fixture/lab.ts';
import { Bookings } from '../lab/bookings.ts';
import { createSimulator } from '../simulate.ts';
import type { History } from './history.ts';
import { type CheckedLaw, checkLaws } from './laws.ts';
import { Recorder } from './recorder.ts';

/** One job: an hour at the bench, three hours on the machine, two in the station, from Monday 08:00 on. */
function oneJob(): History {
  return play(
    lab({
      people: [people('technicians', 1, ['all'])],
      machines: [machine('printers')],
      stations: [station('washers')],
      parts: [
        part(
          'lever',
          [
            workStage('prepare file', attended('all', 1)),
            buildStage('build', 'printers'),
            stationStage('wash', 'washers', constant(2)),
          ],
          { print: printed(3) },
        ),
      ],
      demand: [dated('lever', [at('mon', '08:00')])],
    }),
    { weeks: 1 },
  );
}

function broken(history: History): Pick<CheckedLaw, 'law' | 'difference'>[] {
  return checkLaws(history)
    .filter((check) => !check.holds)
    .map(({ law, difference }) => ({ law, difference }));
}

describe('checkLaws', () => {
  afterEach(() => {
    vi.restoreAllMocks();
  });

  it('finds every law kept to the millisecond in a plain history', () => {
    expect(checkLaws(oneJob())).toEqual([
      { law: "Little's law", difference: 0, holds: true },
      { law: 'balance of machine states', difference: 0, holds: true },
      { law: 'balance of station states', difference: 0, holds: true },
      { law: 'balance of person states', difference: 0, holds: true },
      { law: 'work and waits make the lead time', difference: 0, holds: true },
    ]);
  });

  it("catches a planted violation of Little's law: a stay that is booked an hour too short", () => {
    const book = Recorder.prototype.jobStays;
    vi.spyOn(Recorder.prototype, 'jobStays').mockImplementation(function (this: Recorder, job, now) {
      book.call(this, job, now - HOUR);
    });
    expect(broken(oneJob())).toEqual([{ law: "Little's law", difference: HOUR }]);
  });

  it("catches a planted violation of Little's law: an arrival that the running count misses", () => {
    const count = Recorder.prototype.jobsInLabChange;
    vi.spyOn(Recorder.prototype, 'jobsInLabChange').mockImplementation(function (this: Recorder, inLab, now) {
      count.call(this, Math.max(0, inLab - 1), now);
    });
    // One job for six hours.
    expect(broken(oneJob())).toEqual([{ law: "Little's law", difference: 6 * HOUR }]);
  });

  it('catches a planted violation of the balance of machine states: idle hours that are not booked', () => {
    const book = Recorder.prototype.unitState;
    vi.spyOn(Recorder.prototype, 'unitState').mockImplementation(function (
      this: Recorder,
      unit,
      now,
      presence,
    ) {
      if (unit.name !== 'printers 1' || unit.stateSince > 0) book.call(this, unit, now, presence);
    });
    const history = oneJob();
    expect(history.laws.machineImbalance).toBe(9 * HOUR);
    expect(broken(history)).toEqual([{ law: 'balance of machine states', difference: 9 * HOUR }]);
  });

  it('catches a planted violation of the balance of station states: a run that is booked twice', () => {
    const book = Recorder.prototype.unitState;
    vi.spyOn(Recorder.prototype, 'unitState').mockImplementation(function (
      this: Recorder,
      unit,
      now,
      presence,
    ) {
      book.call(this, unit, now, presence);
      if (unit.name === 'washers 1' && now - unit.stateSince === 2 * HOUR)
        book.call(this, unit, now, presence);
    });
    const history = oneJob();
    expect(history.laws.stationImbalance).toBe(2 * HOUR);
    expect(broken(history)).toEqual([{ law: 'balance of station states', difference: 2 * HOUR }]);
  });

  it('catches a planted violation of the balance of person states: a night that is not booked', () => {
    const book = Recorder.prototype.personState;
    vi.spyOn(Recorder.prototype, 'personState').mockImplementation(function (this: Recorder, person, now) {
      if (person.stateSince !== 16 * HOUR) book.call(this, person, now);
    });
    const history = oneJob();
    expect(history.laws.personImbalance).toBe(16 * HOUR);
    expect(broken(history)).toEqual([{ law: 'balance of person states', difference: 16 * HOUR }]);
  });

  it('catches a planted violation of the hours of a job: work of a millisecond and a half that is lost', () => {
    const charge = Bookings.prototype.chargeWork;
    vi.spyOn(Bookings.prototype, 'chargeWork').mockImplementation(function (
      this: Bookings,
      load,
      step,
      duration,
    ) {
      charge.call(this, load, step, duration === 2 * HOUR ? duration - 1.5 : duration);
    });
    const history = oneJob();
    expect(history.laws.leadTimeImbalance).toBe(1.5);
    expect(broken(history)).toEqual([{ law: 'work and waits make the lead time', difference: 1.5 }]);
  });

  it('adds up once more what the history says, so that a record that was changed afterwards is caught', () => {
    const plain = oneJob();
    const machines = plain.machines.map((unit) => ({
      ...unit,
      timeInState: unit.timeInState.map((time, state) => (state === 0 ? time + 1 : time)),
    }));
    expect(broken({ ...plain, machines })).toEqual([{ law: 'balance of machine states', difference: 1 }]);
    const partHours = plain.partHours.map((hours) => ({ ...hours, work: hours.work.map(() => 0) }));
    expect(broken({ ...plain, partHours })).toEqual([
      { law: 'work and waits make the lead time', difference: 6 * HOUR },
    ]);
  });

  it('does not let a law hold whose figure is not a number', () => {
    const plain = oneJob();
    const checked = checkLaws({ ...plain, laws: { ...plain.laws, jobArea: Number.NaN } });
    expect(checked[0]?.holds).toBe(false);
  });

  it('finds every law kept in whatever lab, with whatever is left out in front', () => {
    fc.assert(
      fc.property(generatedLabs, fc.integer({ min: 0, max: 1 }), (generated, ignoredWeeks) => {
        const simulator = createSimulator(generated);
        const history = simulator.simulate({
          seed: 'laws',
          replication: 3,
          ignoredWeeks,
          weeks: 2,
          capWeeks: 1,
          trace: false,
          queueWaits: false,
        });
        expect(broken(history)).toEqual([]);
      }),
      { seed: 20250106, numRuns: 300 },
    );
  });
});
