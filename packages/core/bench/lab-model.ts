import { PERSON_STATES } from '@buildweek/results';
import { MILLISECONDS_PER_HOUR } from '../src/kernel/clock.ts';
import { PERSON_WORK } from '../src/lab/person.ts';
import { Simulation } from '../src/lab/simulation.ts';
import type { History } from '../src/observe/history.ts';
import type { SimulationSettings } from '../src/settings.ts';
import { createSimulator } from '../src/simulate.ts';
import { benchLab } from './bench-lab.ts';
import { collect, type WorkloadResult } from './workload.ts';

const IGNORED_WEEKS = 2;

export function settingsFor(weeks: number, seed: string, replication: number): SimulationSettings {
  return {
    seed,
    replication,
    ignoredWeeks: IGNORED_WEEKS,
    weeks,
    capWeeks: 26,
    trace: false,
    queueWaits: false,
  };
}

/** The lab model through its one door; the answers hold one value for each replication. */
export function playLab(weeks: number, replications: number, seed: string): WorkloadResult['answers'] {
  const simulator = createSimulator(benchLab());
  const answers: Record<string, number[]> = {};
  for (let replication = 0; replication < replications; replication++) {
    const history = simulator.simulate(settingsFor(weeks, seed, replication));
    collect(answers, answersOf(history, weeks));
  }
  return answers;
}

/** Events that the calendar gives out in the first replication, cancelled ones included. */
export function eventsOfReplication(weeks: number, seed: string): number {
  const simulation = new Simulation(benchLab());
  const { calendar } = simulation;
  const take = calendar.take.bind(calendar);
  let events = 0;
  calendar.take = () => {
    events++;
    return take();
  };
  simulation.play(settingsFor(weeks, seed, 0));
  return events;
}

function answersOf(history: History, weeks: number): Record<string, number> {
  const leadTimes = Float64Array.from(history.jobClasses.flatMap((entry) => [...entry.leadTimes])).sort();
  const total = leadTimes.reduce((sum, time) => sum + time, 0);
  const runs = (group: string): number =>
    history.machines.filter((unit) => unit.group === group).reduce((sum, unit) => sum + unit.runs, 0);
  const worked = history.people.reduce((sum, group) => {
    for (let person = 0; person < group.count; person++) {
      sum += group.timeInState[person * PERSON_STATES.length + PERSON_WORK];
    }
    return sum;
  }, 0);
  const ninetieth = leadTimes[Math.ceil(0.9 * leadTimes.length) - 1] ?? Number.NaN;
  return {
    'mean lead time, h': total / leadTimes.length / MILLISECONDS_PER_HOUR,
    'p90 lead time, h': ninetieth / MILLISECONDS_PER_HOUR,
    'hours at work a week': worked / weeks / MILLISECONDS_PER_HOUR,
    'resin builds a week': runs('resin') / weeks,
    'filament builds a week': runs('filament') / weeks,
    'breakdowns a week': history.machines.reduce((sum, unit) => sum + unit.breakdowns, 0) / weeks,
  };
}
