import type { BuildFailure, Distribution, Lab, LaunchRule } from '@buildweek/model';
import { toMilliseconds } from '../kernel/clock.ts';
import { createSampler } from '../kernel/sampler.ts';
import type { AttendanceCompiler } from './compile-attendance.ts';
import type { ClassCompiler } from './compile-classes.ts';
import { compileConditions, compileFailure } from './compile-conditions.ts';
import {
  type CompiledCarrier,
  type CompiledUnit,
  type CompiledUnitClass,
  type CompiledUnitGroup,
  DRAW_SLOTS,
} from './compiled-lab.ts';

/** Puts together the groups of machines and stations, once all parts, and with them all classes, are compiled. */
export class UnitCompiler {
  private readonly lab: Lab;
  private readonly attendance: AttendanceCompiler;
  private readonly classes: ClassCompiler;

  constructor(lab: Lab, attendance: AttendanceCompiler, classes: ClassCompiler) {
    this.lab = lab;
    this.attendance = attendance;
    this.classes = classes;
  }

  unitGroups(kindRanks: { machine: number; station: number }): CompiledUnitGroup[] {
    let firstUnit = 0;
    const common = (name: string, count: number, index: number) => {
      const classes = this.classes.unitClasses.filter((unitClass) => unitClass.group === index);
      const first = firstUnit;
      firstUnit += count;
      return {
        index,
        name,
        firstUnit: first,
        count,
        classes: classes.map((unitClass) => unitClass.index),
        startQueues: startQueuesOf(classes),
      };
    };
    const machines = this.lab.machines.map((machine, index): CompiledUnitGroup => {
      const outside =
        machine.coolDown !== null && machine.coolDown.where === 'outside' ? machine.coolDown : null;
      const shared = common(machine.name, machine.count, index);
      return {
        ...shared,
        kind: 'machine',
        kindRank: kindRanks.machine,
        capacity: machine.capacity,
        capacityUnit: 'space',
        mostJobs: machine.mostJobs ?? Number.POSITIVE_INFINITY,
        launch: orAtOnce(machine.launch),
        conditions: compileConditions(machine, machine.name, this.attendance),
        failure: compileFailure(machine.failure, machine.name, this.attendance),
        carrier: machine.carrier === null ? -1 : this.carrierIndex(machine.carrier),
        initialMaterial:
          machine.initialMaterial === null ? -1 : this.classes.material(machine.initialMaterial),
        materialChanges: machine.materialChanges.map((change) => ({
          from: change.from === null ? -1 : this.classes.material(change.from),
          to: change.to === null ? -1 : this.classes.material(change.to),
          sampler: createSampler(change.duration.distribution),
          typical: toMilliseconds(change.duration.typicalHours),
          attended: change.attended,
        })),
        outsideCoolDown: outside === null ? null : createSampler(outside.duration.distribution),
        randomSlots: this.randomSlots(shared.classes, {
          change: machine.materialChanges.some((change) => change.duration.distribution.kind !== 'constant'),
          coolDown: outside !== null && outside.duration.distribution.kind !== 'constant',
          failure: machine.failure,
          ...this.randomPrint(machine.name),
        }),
      };
    });
    const stations = this.lab.stations.map((station, position): CompiledUnitGroup => {
      const shared = common(station.name, station.count, this.lab.machines.length + position);
      return {
        ...shared,
        kind: 'station',
        kindRank: kindRanks.station,
        capacity: station.capacity,
        capacityUnit: station.unit,
        mostJobs: Number.POSITIVE_INFINITY,
        launch: {
          fullShare: station.fullShare,
          waitedHours: station.waitedHours,
          beforeClosing: false,
          fixedHours: null,
          promiseAtRisk: false,
          preferAttendedEnd: false,
        },
        conditions: compileConditions(station, station.name, this.attendance),
        failure: null,
        carrier: -1,
        initialMaterial: -1,
        materialChanges: [],
        outsideCoolDown: null,
        randomSlots: this.randomSlots(shared.classes, {
          change: false,
          coolDown: false,
          failure: null,
          print: false,
          printPerPart: false,
          run: this.lab.parts.some((part) =>
            part.stages.some(
              (stage) =>
                stage.kind === 'station' &&
                stage.stationGroup === station.name &&
                stage.basis === 'batch' &&
                stage.run.distribution.kind !== 'constant',
            ),
          ),
        }),
      };
    });
    return [...machines, ...stations];
  }

  units(groups: readonly CompiledUnitGroup[]): CompiledUnit[] {
    return groups.flatMap((group) =>
      Array.from({ length: group.count }, (_, position) => ({
        index: group.firstUnit + position,
        group: group.index,
        name: `${group.name} ${position + 1}`,
      })),
    );
  }

  carriers(): CompiledCarrier[] {
    return this.lab.carriers.map((pool) => ({
      count: pool.count,
      groups: Int32Array.from(
        this.lab.machines.flatMap((machine, index) => (machine.carrier === pool.name ? [index] : [])),
      ),
    }));
  }

  private carrierIndex(name: string): number {
    const index = this.lab.carriers.findIndex((pool) => pool.name === name);
    if (index < 0) throw new Error(`There is no carrier "${name}" in the lab.`);
    return index;
  }

  private randomPrint(machineGroup: string): { print: boolean; printPerPart: boolean; run: boolean } {
    const prints = this.lab.parts
      .filter((part) =>
        part.stages.some((stage) => stage.kind === 'build' && stage.machineGroup === machineGroup),
      )
      .flatMap((part) => (part.print === null ? [] : [part.print]));
    const isRandom = (distribution: Distribution): boolean => distribution.kind !== 'constant';
    const shaped = this.lab.machines.find((machine) => machine.name === machineGroup)?.shaped ?? null;
    return {
      print: prints.some((print) =>
        print.kind === 'typed'
          ? isRandom(print.perBuild.distribution)
          : shaped !== null && isRandom(shaped.timeFactor),
      ),
      printPerPart: prints.some((print) => print.kind === 'typed' && isRandom(print.perPart.distribution)),
      run: false,
    };
  }

  private randomSlots(
    classIndexes: readonly number[],
    random: {
      change: boolean;
      coolDown: boolean;
      failure: BuildFailure | null;
      print: boolean;
      printPerPart: boolean;
      run: boolean;
    },
  ): number[] {
    const slots = new Set<number>();
    const add = (slot: (typeof DRAW_SLOTS)[number], isRandom: boolean): void => {
      if (isRandom) slots.add(DRAW_SLOTS.indexOf(slot));
    };
    for (const index of classIndexes) {
      const unitClass = this.classes.unitClasses[index];
      for (const phase of unitClass.phases) {
        const isRandom = phase.work !== null ? !phase.work.constant : !phase.constant;
        // The run of a station is drawn per unit only when it is drawn per batch.
        if (isRandom && phase.what !== 'run') slots.add(phase.slot);
      }
      unitClass.tailWork.forEach((work, offset) => {
        if (work !== null && !work.constant) slots.add(DRAW_SLOTS.length + offset);
      });
    }
    add('change', random.change);
    add('cool-down', random.coolDown);
    add('print', random.print);
    add('print per part', random.printPerPart);
    add('run', random.run);
    const { failure } = random;
    add('failure', failure !== null && failure.chancePerBuild > 0);
    add('failure point', failure !== null);
    add('failure by hour', failure !== null && failure.perPrintHour > 0);
    add('cleaning', failure !== null && failure.cleaning?.duration.distribution.kind !== 'constant');
    return [...slots].sort((a, b) => a - b);
  }
}

/** A rule that states no condition launches with the first part. */
function orAtOnce(launch: LaunchRule): LaunchRule {
  const isEmpty =
    launch.fullShare === null &&
    launch.waitedHours === null &&
    launch.fixedHours === null &&
    !launch.beforeClosing &&
    !launch.promiseAtRisk;
  return isEmpty ? { ...launch, fullShare: 0 } : launch;
}

function startQueuesOf(classes: readonly CompiledUnitClass[]): number[] {
  const queues = new Set<number>();
  for (const unitClass of classes) {
    const first = unitClass.phases[0];
    if (first?.work != null) queues.add(first.work.queue);
  }
  return [...queues];
}
