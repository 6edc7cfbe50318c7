import { MACHINE_STATES, STATION_STATES } from '@buildweek/results';
import type { Simulation } from '../lab/simulation.ts';
import type { Unit } from '../lab/unit.ts';
import type { History, LawHistory, UnitHistory } from './history.ts';
import type { MeasuredWindow } from './window.ts';

/** Puts together what one replication leaves behind, once everything that goes on has been booked. */
export function writeHistory(simulation: Simulation, window: MeasuredWindow): History {
  const { recorder, settings, staff, compiled, units } = simulation;
  const machines: UnitHistory[] = [];
  const stations: UnitHistory[] = [];
  for (const unit of units.units) {
    const group = compiled.unitGroups[unit.group];
    const isMachine = group.kind === 'machine';
    (isMachine ? machines : stations).push({
      group: group.name,
      name: unit.name,
      timeInState: unit.timeInState.slice(0, isMachine ? MACHINE_STATES.length : STATION_STATES.length),
      runs: unit.runs,
      pieces: unit.pieces,
      fillSum: unit.fillSum,
      heightSum: unit.heightSum,
      partVolumeSum: unit.partVolumeSum,
      failures: unit.failures,
      breakdowns: unit.breakdowns,
      ranAlone: unit.ranAlone,
    });
  }
  return {
    replication: settings.replication,
    windowStart: window.start,
    windowEnd: window.end,
    endedAt: simulation.now,
    jobClasses: recorder.jobClassHistories(),
    weeks: recorder.weekHistory(),
    queues: recorder.queueHistories(),
    partHours: recorder.partHoursHistories(),
    machines,
    stations,
    people: recorder.peopleHistories(staff.persons),
    laws: lawsOf(simulation, window),
    trace: simulation.written?.entries ?? null,
    states: simulation.written?.states ?? null,
    ...(simulation.followed === null ? {} : { followed: simulation.followed.histories() }),
  };
}

function lawsOf(simulation: Simulation, window: MeasuredWindow): LawHistory {
  const { recorder, staff, compiled, units } = simulation;
  const calendarTime = window.overlap(0, simulation.now);
  const imbalance = (timeInState: Float64Array): number =>
    Math.abs(timeInState.reduce((sum, time) => sum + time, 0) - calendarTime);
  const worst = (kind: 'machine' | 'station'): number =>
    units.units
      .filter((unit: Unit) => compiled.unitGroups[unit.group].kind === kind)
      .reduce((most, unit) => Math.max(most, imbalance(unit.timeInState)), 0);
  return {
    jobArea: recorder.jobArea,
    jobStays: recorder.jobStaySum,
    machineImbalance: worst('machine'),
    stationImbalance: worst('station'),
    personImbalance: staff.persons.reduce((most, person) => Math.max(most, imbalance(person.timeInState)), 0),
    leadTimeImbalance: recorder.leadTimeImbalance,
  };
}
