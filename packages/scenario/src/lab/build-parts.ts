import type { MachineGroup, PartType } from '@buildweek/model';
import type { Reading } from '../reading.ts';
import type { Scenario, ScenarioMachine, ScenarioPart, ScenarioRoute } from '../scenario.ts';
import type { SourcePath } from '../source/source-node.ts';
import { saysShape, shapeOf } from './build-shape.ts';
import { buildStages, isAskedBy } from './build-stages.ts';
import { checkRoute } from './check-route.ts';
import { checkStationVolumes, checkTypedPrint, mostOf } from './check-shapes.ts';
import { resolves } from './names.ts';

/** Machine groups with their capacity; where a group does not say what it holds, one build is its unit. */
export function buildMachines(scenario: Scenario): MachineGroup[] {
  return scenario.machines.map(({ usualRejects: _, usualSpace: __, ...machine }) => ({
    ...machine,
    capacity: machine.capacity ?? 1,
  }));
}

/** Part types with their routes written out. */
export function buildParts(scenario: Scenario, reading: Reading): PartType[] {
  for (const route of scenario.routes) {
    const stages = buildStages(route, scenario, null, reading);
    // With a stage that could not be read there is no saying what stands behind what.
    if (stages.length === route.stages.length) checkRoute(route, stages, scenario, reading);
  }
  const parts = scenario.parts.map((part) => buildPart(part, scenario, reading));
  checkStationVolumes(parts, scenario, reading);
  return parts;
}

function buildPart(part: ScenarioPart, scenario: Scenario, reading: Reading): PartType {
  const path = ['parts', part.name];
  const routeNames = scenario.routes.map((route) => route.name);
  resolves(reading, [...path, 'route'], part.route, 'route', routeNames);
  const route = scenario.routes.find((candidate) => candidate.name === part.route);
  const machine = route === undefined ? undefined : machineOf(route, scenario);
  const known = machine === undefined ? null : shapeOf(part, machine, reading);
  const stages =
    route === undefined
      ? []
      : buildStages(
          route,
          scenario,
          { ...part, shape: known, saysShape: saysShape(part, reading), path },
          reading,
        );
  if (route !== undefined) checkOwnTimes(part, route, reading);
  if (route?.stages.some(({ finishes }) => finishes !== null)) {
    reading.assume([...path, 'finish'], part.finish, 'default of the program');
  }
  const asked = route === undefined ? [] : route.stages.filter((stage) => isAskedBy(part.finish, stage));
  if (route !== undefined && stages.length === asked.length) checkBuildKeys(part, path, machine, reading);
  const most =
    known === null || machine === undefined ? null : mostOf(part, known.shape, machine, scenario, reading);
  const build = stages.find((stage) => stage.kind === 'build');
  return {
    name: part.name,
    route: part.route,
    material: part.material,
    settings: part.settings,
    space: most === null ? spaceOf(part, machine) : (machine?.capacity ?? 1) / most,
    print: build === undefined ? null : known === null ? part.print : { kind: 'shape', shape: known.shape },
    stages,
  };
}

/** The machines of a route; undefined when it has no build. */
function machineOf(route: ScenarioRoute, scenario: Scenario): ScenarioMachine | undefined {
  for (const stage of route.stages) {
    if (stage.kind !== 'placed' || scenario.stations.some((station) => station.name === stage.on)) continue;
    const machine = scenario.machines.find((candidate) => candidate.name === stage.on);
    if (machine !== undefined) return machine;
  }
  return undefined;
}

/** Times of its own belong to stages that there are, and that this part goes through. */
function checkOwnTimes(part: ScenarioPart, route: ScenarioRoute, reading: Reading): void {
  const stageNames = route.stages.map((stage) => stage.name);
  for (const own of part.times) {
    const path = ['parts', part.name, 'times', own.stage];
    resolvesKey(reading, path, own.stage, stageNames);
    const stage = route.stages.find((candidate) => candidate.name === own.stage);
    if (stage === undefined || isAskedBy(part.finish, stage)) continue;
    reading.report(path, 'key', {
      message: `"${part.name}" leaves out "${own.stage}": it is finished "${part.finish}".`,
      found: own.stage,
      expected: 'times of stages that the part goes through',
      write: `finish: ${stage.finishes?.[0]} at the part, or its times without this one`,
    });
  }
}

function resolvesKey(reading: Reading, path: SourcePath, name: string, candidates: readonly string[]): void {
  // The name is a key here; the same proposal, at the key.
  if (reading.nodeAt(path) !== undefined)
    resolves(reading, path, name, 'stage of this route', candidates, 'key');
}

function spaceOf(part: ScenarioPart, machine: ScenarioMachine | undefined): number {
  const capacity = machine?.capacity ?? 1;
  if (part.space === null) return 1;
  return 'fits' in part.space ? capacity / part.space.fits : capacity * part.space.share;
}

/** A part that is built needs a print time and a place; one that is not has neither. */
function checkBuildKeys(
  part: ScenarioPart,
  path: SourcePath,
  machine: ScenarioMachine | undefined,
  reading: Reading,
): void {
  const isWritten = (key: string): boolean => reading.nodeAt([...path, key]) !== undefined;
  const holdsInDoubt = machine !== undefined && reading.isInDoubt(['machines', machine.name], 'holds');
  const quiet = reading.isMisspelt(path) || reading.isBroken(path);
  if (machine === undefined) {
    for (const key of ['print', 'fits', 'space', 'size', 'mesh'].filter(isWritten)) {
      reading.report([...path, key], 'key', {
        message: `"${key}" has no meaning here: the route "${part.route}" has no build.`,
        found: key,
        expected: 'a route with a stage on a machine',
        write: 'the part without it, or another route',
      });
    }
    return;
  }
  if (saysShape(part, reading)) return;
  checkTypedPrint(part, machine, reading);
  if (part.print === null && !isWritten('print') && !quiet) {
    reading.report(path, 'key', {
      message: `"${part.name}" is built on "${machine.name}", but its print time is missing.`,
      expected: 'a size or a mesh from which it follows, or print: a time per build, per part or both',
      write: 'print: 3 h per build',
    });
  }
  if (
    part.space === null &&
    machine.capacity === null &&
    !isWritten('fits') &&
    !isWritten('space') &&
    !quiet &&
    !holdsInDoubt
  ) {
    reading.report(path, 'key', {
      message: `How many of "${part.name}" fit into a build on "${machine.name}" is missing.`,
      expected: 'fits: a number per build',
      write: 'fits: 24 per build',
    });
  }
  if (part.space === null && machine.capacity !== null) {
    reading.assume(
      [...path, 'fits'],
      `${machine.capacity} per build (what "${machine.name}" holds)`,
      'default of the program',
    );
  }
}
