import type { Stage } from '@buildweek/model';
import type { Reading } from '../reading.ts';
import type { Scenario, ScenarioRoute, ScenarioStage } from '../scenario.ts';
import { stagePath } from './names.ts';

/** At most one build, for every part, and carriers that are emptied where whole builds still are. */
export function checkRoute(
  { name: route, stages: said }: ScenarioRoute,
  stages: readonly Stage[],
  scenario: Scenario,
  reading: Reading,
): void {
  checkFinishes(route, said, stages, reading);
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

/** Stages that some parts leave out must not be those that the others rely on. */
function checkFinishes(
  route: string,
  said: readonly ScenarioStage[],
  stages: readonly Stage[],
  reading: Reading,
): void {
  for (const { name, finishes, emptiesCarrier } of said) {
    if (finishes === null) continue;
    const isBuild = stages.some((stage) => stage.name === name && stage.kind === 'build');
    if (!isBuild && !emptiesCarrier) continue;
    reading.report([...stagePath(reading, route, name), 'for finish'], 'key', {
      message: isBuild
        ? 'Parts are built whatever their finish.'
        : `Parts that leave out "${name}" would never free their carrier, which it empties.`,
      found: 'for finish',
      expected: 'the key at a stage that parts can do without',
      write: isBuild
        ? 'the build without it'
        : 'the stage without it, or "empties carrier" at a stage for all parts',
    });
  }
}
