import type { PartType } from './demand.ts';
import type { MachineGroup } from './resources.ts';

/** What happens in a step; a stage has one or several. */
export type Phase =
  | 'prepare'
  | 'set-up'
  | 'warm-up'
  | 'first layers'
  | 'print'
  | 'cool-down'
  | 'unload'
  | 'load'
  | 'run'
  | 'work'
  | 'wait'
  | 'outside';

/** The smallest thing that hours are booked on: one phase of one stage of a part type. */
export interface Step {
  /** Position of the stage in `PartType.stages`; -1 for what is made outside. */
  readonly stageIndex: number;
  readonly stage: string;
  readonly phase: Phase;
  readonly attended: boolean;
}

/** Name of the step of jobs that are made outside, in the place of a stage. */
export const SENT_OUT = 'sent out';

/**
 * The steps of a part type in the order in which they happen, and last the one of jobs that are sent out instead:
 * every part type has it, so that a rule for sending out changes no record until it holds. Waits are booked on the
 * step that is waited for.
 *
 * @param part the part type
 * @param machineGroups the machine groups of the lab
 * @throws Error when a build stage names a machine group that is not there
 */
export function stepsOf(part: PartType, machineGroups: readonly MachineGroup[]): Step[] {
  const steps: Step[] = [];
  part.stages.forEach((stage, stageIndex) => {
    const add = (phase: Phase, attended: boolean): void => {
      steps.push({ stageIndex, stage: stage.name, phase, attended });
    };
    switch (stage.kind) {
      case 'work':
        add('work', true);
        break;
      case 'wait':
        add('wait', false);
        break;
      case 'station':
        if (stage.load !== null) add('load', true);
        add('run', stage.runAttendance !== null);
        if (stage.unload !== null) add('unload', true);
        break;
      case 'build': {
        const group = machineGroups.find((candidate) => candidate.name === stage.machineGroup);
        if (group === undefined) {
          throw new Error(`Stage "${stage.name}" of "${part.name}" names no machine group of the lab.`);
        }
        if (group.prepare !== null) add('prepare', true);
        add('set-up', true);
        add('warm-up', false);
        if (group.firstLayers !== null) add('first layers', true);
        add('print', false);
        add('cool-down', false);
        add('unload', true);
        break;
      }
    }
  });
  steps.push({ stageIndex: -1, stage: SENT_OUT, phase: 'outside', attended: false });
  return steps;
}
