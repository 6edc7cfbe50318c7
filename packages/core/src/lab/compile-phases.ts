import type { AttendedWork, Duration, MachineGroup, Phase, StationStage } from '@buildweek/model';
import { MACHINE_STATES, type MachineState, STATION_STATES, type StationState } from '@buildweek/results';
import { toMilliseconds } from '../kernel/clock.ts';
import { createSampler } from '../kernel/sampler.ts';
import type { AttendanceCompiler } from './compile-attendance.ts';
import { type CompiledPhase, DRAW_SLOTS, type DrawSlot } from './compiled-lab.ts';

/**
 * The phases of a build on a machine, in order.
 *
 * @param stageName name of the build stage, for the booking of hours
 */
export function machinePhases(
  group: MachineGroup,
  stageName: string,
  attendance: AttendanceCompiler,
): CompiledPhase[] {
  const step = stepOffsets(group);
  const attended = (
    phase: 'prepare' | 'set-up' | 'first layers' | 'unload',
    work: AttendedWork | null,
    stepOffset: number,
    waitState: MachineState,
  ): CompiledPhase[] =>
    work === null
      ? []
      : [
          {
            phase,
            what: 'attended',
            slot: slotOf(phase),
            work: attendance.work(work, `${stageName}: ${phase}`),
            sampler: null,
            constant: true,
            state: machineState(phase === 'first layers' ? 'print' : phase),
            waitState: machineState(waitState),
            stepOffset,
            isRunning: phase === 'first layers',
            typical: 0,
          },
        ];
  const timed = (
    phase: 'warm-up' | 'cool-down',
    duration: Duration | null,
    stepOffset: number,
  ): CompiledPhase[] => (duration === null ? [] : [unattended('timed', phase, phase, duration, stepOffset)]);
  const unattended = (
    what: 'timed' | 'change' | 'run',
    phase: Phase & MachineState,
    slot: DrawSlot,
    duration: Duration | null,
    stepOffset: number,
  ): CompiledPhase => ({
    phase,
    what,
    slot: slotOf(slot),
    work: null,
    sampler: duration === null ? null : createSampler(duration.distribution),
    constant: duration === null || duration.distribution.kind === 'constant',
    state: machineState(phase),
    waitState: machineState('waiting to start'),
    stepOffset,
    isRunning: what !== 'change',
    typical: duration === null ? 0 : toMilliseconds(duration.typicalHours),
  });
  const coolsInside = group.coolDown !== null && group.coolDown.where === 'machine';
  return [
    ...attended('prepare', group.prepare, step.prepare, 'waiting to start'),
    ...attended('set-up', group.setUp, step.setUp, 'waiting to start'),
    ...(group.materialChanges.some((change) => !change.attended)
      ? [unattended('change', 'set-up', 'change', null, step.setUp)]
      : []),
    ...timed('warm-up', group.warmUp, step.warmUp),
    ...attended('first layers', group.firstLayers, step.firstLayers, 'waiting to start'),
    unattended('run', 'print', 'print', null, step.print),
    ...timed('cool-down', coolsInside ? (group.coolDown?.duration ?? null) : null, step.coolDown),
    ...attended('unload', group.unload, step.unload, 'waiting to be unloaded'),
  ];
}

/** Position of the cool-down among the steps of a build stage. */
export function coolDownStepOf(group: MachineGroup): number {
  return stepOffsets(group).coolDown;
}

/** Positions of the steps of a build stage, as `stepsOf` of the model lists them. */
function stepOffsets(group: MachineGroup) {
  const before = group.prepare === null ? 0 : 1;
  const watched = group.firstLayers === null ? 0 : 1;
  return {
    prepare: 0,
    setUp: before,
    warmUp: before + 1,
    firstLayers: before + 2,
    print: before + watched + 2,
    coolDown: before + watched + 3,
    unload: before + watched + 4,
  };
}

/** The phases of a batch in a station, in order. */
export function stationPhases(stage: StationStage, attendance: AttendanceCompiler): CompiledPhase[] {
  const phases: CompiledPhase[] = [];
  const add = (
    phase: 'load' | 'run' | 'unload',
    work: AttendedWork | null,
    waitState: StationState,
  ): void => {
    phases.push({
      phase,
      what: phase === 'run' ? 'run' : 'attended',
      slot: slotOf(phase),
      work:
        work === null
          ? null
          : attendance.work(work, phase === 'run' ? stage.name : `${stage.name}: ${phase}`),
      sampler: null,
      constant: true,
      state: STATION_STATES.indexOf(phase),
      waitState: STATION_STATES.indexOf(waitState),
      stepOffset: phases.length,
      isRunning: phase === 'run',
      typical: 0,
    });
  };
  if (stage.load !== null) add('load', stage.load, 'waiting to start');
  add(
    'run',
    stage.runAttendance === null ? null : { ...stage.runAttendance, duration: stage.run },
    'waiting to start',
  );
  if (stage.unload !== null) add('unload', stage.unload, 'waiting to be unloaded');
  return phases;
}

function slotOf(slot: DrawSlot): number {
  return DRAW_SLOTS.indexOf(slot);
}

function machineState(state: MachineState): number {
  return MACHINE_STATES.indexOf(state);
}
