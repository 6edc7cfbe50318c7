import type { ChangeOfMind, Lab, PinnedBuild, SendOutRule } from '@buildweek/model';
import { createCountSampler } from '../kernel/count-sampler.ts';
import { createSampler } from '../kernel/sampler.ts';
import { AttendanceCompiler } from './compile-attendance.ts';
import { ClassCompiler } from './compile-classes.ts';
import { compilePart } from './compile-parts.ts';
import { UnitCompiler } from './compile-units.ts';
import type {
  CompiledChange,
  CompiledLab,
  CompiledPart,
  CompiledSendOut,
  CompiledStream,
  CompiledUnitClass,
} from './compiled-lab.ts';

/**
 * Resolves the names of a lab and makes its samplers.
 *
 * @throws Error when a name does not resolve or a rule of the model is broken; `scenario` reports these with
 *   their place in the file before a lab gets here
 */
export function compileLab(lab: Lab): CompiledLab {
  const attendance = new AttendanceCompiler(lab);
  const classCompiler = new ClassCompiler(lab, attendance);
  const parts = lab.parts.map((part, index) => compilePart(part, index, lab, attendance, classCompiler));
  for (const pinned of lab.initialState.pinned ?? []) {
    classCompiler.pinnedClass(pinned, pinnedClasses(pinned, lab, parts, classCompiler.unitClasses));
  }
  const rankOf = (kind: 'machine' | 'station' | 'bench'): number => lab.dispatch.order.indexOf(kind);
  const kindRanks = { machine: rankOf('machine'), station: rankOf('station'), bench: rankOf('bench') };
  const unitCompiler = new UnitCompiler(lab, attendance, classCompiler);
  const unitGroups = unitCompiler.unitGroups(kindRanks);
  const persons = attendance.persons();
  const most = (numbers: readonly number[]): number => numbers.reduce((a, b) => Math.max(a, b), 1);
  return {
    attendedQueues: attendance.attendedQueues(persons),
    workLabels: attendance.workLabels,
    peopleGroups: lab.people,
    persons,
    carriers: unitCompiler.carriers(),
    materials: classCompiler.materialNames,
    unitGroups,
    units: unitCompiler.units(unitGroups),
    unitClasses: classCompiler.unitClasses,
    parts,
    streams: lab.demand.map((stream, index): CompiledStream => {
      const part = parts.find((candidate) => candidate.name === stream.part);
      if (part === undefined) throw new Error(`Demand "${stream.name}" names no part of the lab.`);
      return {
        index,
        stream,
        part,
        quantity: createCountSampler(stream.quantity),
        quantityConstant: stream.quantity.kind === 'fixed',
        cancels: compileChange(stream.changes.cancels),
        revises: compileChange(stream.changes.revises),
        sentOut: compileSendOut(stream.sentOut, part, classCompiler.unitClasses),
      };
    }),
    mostPhases: most(classCompiler.unitClasses.map((unitClass) => unitClass.phases.length)),
    mostStages: most(parts.map((part) => part.stages.length)),
    mostSteps: most(parts.map((part) => part.steps.length)),
    mostTailStages: most(classCompiler.unitClasses.map((unitClass) => unitClass.tailWork.length + 1)),
    mostPersons: attendance.mostPersons,
    shortestFirst: lab.dispatch.within === 'shortest work',
    rushInterrupts: lab.dispatch.rushInterrupts,
    fitOnDrawn: lab.dispatch.fitOn === 'drawn',
    deadlines: lab.deadlines,
    kindRanks,
  };
}

/** The classes in which the jobs of a pinned build would be built on its machine otherwise. */
function pinnedClasses(
  { machine, jobs }: PinnedBuild,
  { initialState, demand, machines }: Lab,
  parts: readonly CompiledPart[],
  classes: readonly CompiledUnitClass[],
): number[] {
  const group = machines.findIndex(({ name }) => name === machine.replace(/ \d+$/, ''));
  return jobs.map((position) => {
    const stream = demand.find(({ name }) => name === initialState.jobs[position]?.stream);
    const part = parts.find(({ name }) => name === stream?.part);
    const stage = part?.stages.find(
      ({ kind, unitClass }) => kind === 'unit' && classes[unitClass].group === group,
    );
    if (stage === undefined) throw new Error(`A job that is pinned to "${machine}" is not built on it.`);
    return stage.unitClass;
  });
}

function compileChange(change: ChangeOfMind | null): CompiledChange | null {
  if (change === null) return null;
  return {
    chance: change.chance,
    after: createSampler(change.after),
    onlyBeforeStart: change.onlyBeforeStart,
  };
}

function compileSendOut(
  rule: SendOutRule | null,
  { stages }: CompiledPart,
  classes: readonly CompiledUnitClass[],
): CompiledSendOut | null {
  if (rule === null) return null;
  const build = stages.find(
    (stage) => stage.kind === 'unit' && classes[stage.unitClass].runBasis === 'print',
  );
  const { leadTime } = rule;
  return {
    rule,
    group: build === undefined ? -1 : classes[build.unitClass].group,
    hours: leadTime.kind === 'clock' ? createSampler(leadTime.duration.distribution) : null,
    days: leadTime.kind === 'working days' ? createSampler(leadTime.days) : null,
    cutOffHour: leadTime.kind === 'working days' ? leadTime.cutOffHour : null,
  };
}
