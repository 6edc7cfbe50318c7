import type { MachineGroup, PartType, Stage } from '@buildweek/model';
import type { Reading } from '../reading.ts';
import type { Scenario, ScenarioMachine, ScenarioPart } from '../scenario.ts';
import type { SourcePath } from '../source/source-node.ts';
import { buildStages } from './build-stages.ts';
import { resolves, stagePath } from './names.ts';

/** Machine groups with their capacity; where a group does not say what it holds, one build is its unit. */
export function buildMachines(scenario: Scenario): MachineGroup[] {
  return scenario.machines.map(({ usualRejects: _, ...machine }) => ({
    ...machine,
    capacity: machine.capacity ?? 1,
  }));
}

/** Part types with their routes written out. */
export function buildParts(scenario: Scenario, reading: Reading): PartType[] {
  for (const route of scenario.routes) {
    const stages = buildStages(route, scenario, [], null, reading);
    // With a stage that could not be read there is no saying what stands behind what.
    if (stages.length === route.stages.length) checkRoute(route.name, stages, scenario, reading);
  }
  return scenario.parts.map((part) => buildPart(part, scenario, reading));
}

function buildPart(part: ScenarioPart, scenario: Scenario, reading: Reading): PartType {
  const path = ['parts', part.name];
  const routeNames = scenario.routes.map((route) => route.name);
  resolves(reading, [...path, 'route'], part.route, 'route', routeNames);
  const route = scenario.routes.find((candidate) => candidate.name === part.route);
  const stages = route === undefined ? [] : buildStages(route, scenario, part.times, path, reading);
  if (route !== undefined) {
    const stageNames = route.stages.map((stage) => stage.name);
    for (const own of part.times) resolvesKey(reading, [...path, 'times', own.stage], own.stage, stageNames);
  }
  const build = stages.find((stage) => stage.kind === 'build');
  const machine = scenario.machines.find((candidate) => candidate.name === build?.machineGroup);
  if (route !== undefined && stages.length === route.stages.length)
    checkBuildKeys(part, path, machine, reading);
  return {
    name: part.name,
    route: part.route,
    material: part.material,
    settings: part.settings,
    space: spaceOf(part, machine),
    print: build === undefined ? null : part.print,
    stages,
  };
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
    for (const key of ['print', 'fits', 'space'].filter(isWritten)) {
      reading.report([...path, key], 'key', {
        message: `"${key}" has no meaning here: the route "${part.route}" has no build.`,
        found: key,
        expected: 'a route with a stage on a machine',
        write: 'the part without it, or another route',
      });
    }
    return;
  }
  if (part.print === null && !isWritten('print') && !quiet) {
    reading.report(path, 'key', {
      message: `"${part.name}" is built on "${machine.name}", but its print time is missing.`,
      expected: 'print: a time per build, per part or both',
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

/** At most one build, and carriers that are emptied where whole builds still are. */
function checkRoute(route: string, stages: readonly Stage[], scenario: Scenario, reading: Reading): void {
  const builds = stages.filter((stage) => stage.kind === 'build');
  for (const again of builds.slice(1)) {
    reading.report([...stagePath(reading, route, again.name), 'on'], 'value', {
      message: `The route "${route}" has a second build.`,
      found: again.name,
      expected: 'one stage on a machine in a route',
      write: 'a route and a part type for each build',
    });
  }
  const build = builds[0];
  const machine = scenario.machines.find((candidate) => candidate.name === build?.machineGroup);
  let seen = false;
  for (const stage of stages) {
    if (stage === build) seen = true;
    if (!stage.emptiesCarrier) continue;
    const path = [...stagePath(reading, route, stage.name), 'empties carrier'];
    if (machine !== undefined && machine.carrier === null) {
      if (reading.isInDoubt(['machines', machine.name], 'carrier')) continue;
      reading.report(path, 'key', {
        message: `The builds of "${machine.name}" hold no carrier that could be emptied.`,
        found: 'empties carrier',
        expected: 'a machine with a carrier',
        write: `carrier: … under machines / ${machine.name}`,
      });
    } else if ((!seen || stage.level !== 'build') && !reading.hasErrorsWithin(['stations'])) {
      reading.report(path, 'key', {
        message: `At "${stage.name}" there is no whole build on its carrier.`,
        found: 'empties carrier',
        expected: 'the build, or a stage of level build directly behind it',
        write: 'level: build at this stage and at those before it, or the key at an earlier stage',
      });
    }
  }
}
