import { toMilliseconds } from '../kernel/clock.ts';
import type { Sampler } from '../kernel/sampler.ts';
import { createStream } from '../kernel/streams.ts';
import {
  type CompiledMaterialChange,
  type CompiledPhase,
  type CompiledUnitGroup,
  DRAW_SLOTS,
} from './compiled-lab.ts';
import type { Load } from './load.ts';
import type { ShapedBuild } from './shaped-build.ts';
import type { Simulation } from './simulation.ts';
import type { Unit } from './unit.ts';
import type { UnitClass } from './unit-class.ts';

const SLOT_SET_UP = DRAW_SLOTS.indexOf('set-up');
const SLOT_CHANGE = DRAW_SLOTS.indexOf('change');
const SLOT_PRINT = DRAW_SLOTS.indexOf('print');
const SLOT_PRINT_PER_PART = DRAW_SLOTS.indexOf('print per part');
const SLOT_FAILURE = DRAW_SLOTS.indexOf('failure');
const SLOT_FAILURE_POINT = DRAW_SLOTS.indexOf('failure point');
const SLOT_FAILURE_BY_HOUR = DRAW_SLOTS.indexOf('failure by hour');
const SLOT_CLEANING = DRAW_SLOTS.indexOf('cleaning');
const SLOT_COOL_DOWN = DRAW_SLOTS.indexOf('cool-down');

/** For what is not random: any number strictly between 0 and 1 gives the same. */
const ANY = 0.5;

/** Gives a unit its streams, and the first number of each. */
export function openStreams(simulation: Simulation, unit: Unit, group: CompiledUnitGroup): void {
  const { seed, replication } = simulation.settings;
  unit.uniforms.fill(ANY);
  unit.streams.fill(null);
  for (const slot of group.randomSlots) {
    const purpose = DRAW_SLOTS[slot] ?? `stage ${slot - DRAW_SLOTS.length + 1} of the build`;
    unit.streams[slot] = createStream(seed, replication, purpose, unit.name);
  }
  drawAhead(unit);
}

/** Draws the numbers of the unit's next run: the n-th run takes the n-th number of every stream. */
function drawAhead(unit: Unit): void {
  for (let slot = 0; slot < unit.streams.length; slot++) {
    const stream = unit.streams[slot];
    if (stream !== null) unit.uniforms[slot] = stream();
  }
}

/** The change from what a unit holds to the material of a class; null when none is needed. */
export function materialChangeFor(
  group: CompiledUnitGroup,
  unit: Unit,
  material: number,
): CompiledMaterialChange | null {
  if (unit.material < 0 || unit.material === material) return null;
  for (const change of group.materialChanges) {
    const matches =
      (change.from < 0 || change.from === unit.material) && (change.to < 0 || change.to === material);
    if (matches) return change;
  }
  return null;
}

/** Milliseconds that an attended phase will take on this unit, as drawn. */
export function attendedDuration(
  unit: Unit,
  phase: CompiledPhase,
  change: CompiledMaterialChange | null,
): number {
  const work = phase.work;
  if (work === null) return 0;
  const own = draw(work.sampler, unit.uniforms[phase.slot]);
  return phase.slot === SLOT_SET_UP && change?.attended
    ? own + draw(change.sampler, unit.uniforms[SLOT_CHANGE])
    : own;
}

/** Milliseconds that an attended phase typically takes, a material change included. */
export function attendedTypical(phase: CompiledPhase, change: CompiledMaterialChange | null): number {
  const own = phase.work?.typical ?? 0;
  return phase.slot === SLOT_SET_UP && change?.attended ? own + change.typical : own;
}

/** Milliseconds that a run of a station typically takes with this load alone, or with a share of its pieces. */
export function typicalRun(simulation: Simulation, unitClass: UnitClass, load: Load, share = 1): number {
  const { runBasis, typicalRun: one } = unitClass.compiled;
  return runBasis === 'part' || runBasis === 'job'
    ? one * share * simulation.stageWork.typicalUnits(load, runBasis)
    : one;
}

/**
 * Fixes the durations of all phases of a run from the numbers drawn ahead, and draws those of the next run.
 *
 * @param change from the material that the unit holds, or null
 */
export function fixDurations(
  simulation: Simulation,
  unit: Unit,
  unitClass: UnitClass,
  group: CompiledUnitGroup,
  change: CompiledMaterialChange | null,
): void {
  const { phases } = unitClass.compiled;
  const { shaped } = unitClass;
  if (shaped !== null) shaped.countLoad(unit.loads as Load);
  for (let position = 0; position < phases.length; position++) {
    const phase = phases[position];
    unit.typicals[position] = phase.work?.typical ?? phase.typical;
    if (phase.what === 'run') {
      const isMachine = group.kind === 'machine';
      unit.durations[position] = isMachine
        ? printDuration(unit.loads as Load, unit.uniforms, shaped)
        : runDuration(simulation, unit, unitClass, phase);
      unit.typicals[position] = isMachine
        ? typicalPrint(unit.loads as Load, shaped)
        : typicalBatch(simulation, unitClass, unit.loads as Load);
    } else if (phase.what === 'attended') {
      unit.durations[position] = attendedDuration(unit, phase, change);
      unit.typicals[position] = attendedTypical(phase, change);
    } else if (phase.what === 'change') {
      const isAlone = change !== null && !change.attended;
      unit.durations[position] = isAlone ? draw(change.sampler, unit.uniforms[SLOT_CHANGE]) : 0;
      unit.typicals[position] = isAlone ? change.typical : 0;
    } else {
      unit.durations[position] = draw(phase.sampler as Sampler, unit.uniforms[phase.slot]);
      if (shaped !== null && phase.phase === 'cool-down') {
        unit.durations[position] += shaped.furtherCoolDown;
        unit.typicals[position] += shaped.furtherCoolDown;
      }
    }
  }
  if (group.kind === 'machine') {
    drawTail(unit, unitClass, group);
    cutFirstLayers(unit, unitClass);
    drawFailure(unit, unitClass, group);
  }
  drawAhead(unit);
}

/**
 * Longest time per build among the part types, plus the time of every piece, with one draw for each of the two; or
 * what the shapes say, with one draw for how far the build is from its estimate.
 */
function printDuration(build: Load, uniforms: Float64Array, shaped: ShapedBuild | null): number {
  if (shaped !== null)
    return toMilliseconds(shaped.printHours * shaped.timeFactor.sample(uniforms[SLOT_PRINT]));
  let longest = 0;
  let pieces = 0;
  for (let lot = build.lots; lot !== null; lot = lot.nextInLoad) {
    const { print } = lot.part;
    if (print === null) continue;
    longest = Math.max(longest, print.perBuild.sample(uniforms[SLOT_PRINT]));
    pieces += lot.pieces * print.perPart.sample(uniforms[SLOT_PRINT_PER_PART]);
  }
  return toMilliseconds(longest + pieces);
}

/** Typical milliseconds of a print with this content, which is what `shaped` counts. */
function typicalPrint(build: Load, shaped: ShapedBuild | null): number {
  if (shaped !== null) return toMilliseconds(shaped.printHours);
  let longest = 0;
  let pieces = 0;
  for (let lot = build.lots; lot !== null; lot = lot.nextInLoad) {
    const { print } = lot.part;
    if (print === null) continue;
    longest = Math.max(longest, print.typicalPerBuild);
    pieces += lot.pieces * print.typicalPerPart;
  }
  return longest + pieces;
}

/** Milliseconds that a station's run typically takes with these loads: as long as the longest of them. */
function typicalBatch(simulation: Simulation, unitClass: UnitClass, first: Load): number {
  let longest = 0;
  for (let load: Load | null = first; load !== null; load = load.nextInUnit) {
    longest = Math.max(longest, typicalRun(simulation, unitClass, load));
  }
  return longest;
}

/** The first layers are a part of the print: what is watched does not run by itself afterwards. */
function cutFirstLayers(unit: Unit, unitClass: UnitClass): void {
  const { phases, runPhase } = unitClass.compiled;
  const watched = runPhase - 1;
  if (watched < 0 || phases[watched].phase !== 'first layers') return;
  unit.durations[watched] = Math.min(unit.durations[watched], unit.durations[runPhase]);
  unit.durations[runPhase] -= unit.durations[watched];
  unit.typicals[watched] = Math.min(unit.typicals[watched], unit.typicals[runPhase]);
  unit.typicals[runPhase] -= unit.typicals[watched];
}

/** Decides whether and when the build fails: by chance at an even moment of the print, or by print hours. */
function drawFailure(unit: Unit, unitClass: UnitClass, group: CompiledUnitGroup): void {
  unit.willFail = false;
  unit.spoilsOneJob = false;
  const { failure } = group;
  if (failure === null) return;
  const { runPhase } = unitClass.compiled;
  const print = unit.durations[runPhase];
  const { uniforms } = unit;
  const byChance =
    uniforms[SLOT_FAILURE] < failure.chancePerBuild
      ? Math.floor(uniforms[SLOT_FAILURE_POINT] * print)
      : Number.POSITIVE_INFINITY;
  const byHour =
    failure.perPrintHour > 0
      ? toMilliseconds(-Math.log1p(-uniforms[SLOT_FAILURE_BY_HOUR]) / failure.perPrintHour)
      : Number.POSITIVE_INFINITY;
  const failsAt = Math.min(byChance, byHour);
  if (failure.cleaning !== null) {
    unit.cleaningDuration = draw(failure.cleaning.sampler, uniforms[SLOT_CLEANING]);
  }
  if (failsAt >= print) return;
  if (failure.losesBuild) {
    unit.willFail = true;
    unit.durations[runPhase] = failsAt;
  } else {
    unit.spoilsOneJob = true;
    unit.spoiltShare = uniforms[SLOT_FAILURE_POINT];
  }
}

function runDuration(simulation: Simulation, unit: Unit, unitClass: UnitClass, phase: CompiledPhase): number {
  const { batchSampler } = unitClass.compiled;
  if (batchSampler !== null) return draw(batchSampler, unit.uniforms[phase.slot]);
  let longest = 0;
  for (let load = unit.loads; load !== null; load = load.nextInUnit) {
    longest = Math.max(longest, simulation.stageWork.drawn(load));
  }
  return longest;
}

function drawTail(unit: Unit, unitClass: UnitClass, group: CompiledUnitGroup): void {
  const { tailWork } = unitClass.compiled;
  const build = unit.loads as Load;
  build.tailWork[0] =
    group.outsideCoolDown === null
      ? 0
      : draw(group.outsideCoolDown, unit.uniforms[SLOT_COOL_DOWN]) + (unitClass.shaped?.furtherCoolDown ?? 0);
  for (let offset = 0; offset < tailWork.length; offset++) {
    const work = tailWork[offset];
    build.tailWork[offset + 1] =
      work === null ? 0 : draw(work.sampler, unit.uniforms[DRAW_SLOTS.length + offset]);
  }
}

function draw(sampler: Sampler, u: number): number {
  return toMilliseconds(sampler.sample(u));
}
