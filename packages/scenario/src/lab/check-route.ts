import type { Stage } from '@buildweek/model';
import type { Reading } from '../reading.ts';
import type { Scenario, ScenarioRoute, ScenarioStage } from '../scenario.ts';
import type { SizeTerm } from '../words/stage-time.ts';
import { stagePath } from './names.ts';

/** At most one build, for every part, and carriers that are emptied where whole builds still are. */
export function checkRoute(
  { name: route, stages: said }: ScenarioRoute,
  stages: readonly Stage[],
  scenario: Scenario,
  reading: Reading,
): void {
  checkWholeBuilds(route, said, stages, scenario, reading);
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

/** Whole builds hold parts of many types and finishes: what they go through together is the same for all. */
function checkWholeBuilds(
  route: string,
  said: readonly ScenarioStage[],
  stages: readonly Stage[],
  scenario: Scenario,
  reading: Reading,
): void {
  for (const stage of said) {
    const path = stagePath(reading, route, stage.name);
    const level = stages.find(({ name }) => name === stage.name)?.level;
    if (level === 'build' && timeOf(stage, scenario).length > 0) {
      reading.report([...path, 'takes'], 'key', {
        message: `Whole builds go through "${stage.name}", and no single part has a time there.`,
        found: 'takes',
        expected: 'a time per build, or a stage that goes job by job',
        write: 'takes: 30 min per build',
      });
    }
    if (stage.finishes === null || (level !== 'build' && !stage.emptiesCarrier)) continue;
    const isBuild = stages.some(({ name, kind }) => name === stage.name && kind === 'build');
    reading.report([...path, 'for finish'], 'key', {
      message: isBuild
        ? 'Parts are built whatever their finish.'
        : `Whole builds go through "${stage.name}", with parts of every finish.`,
      found: 'for finish',
      expected: 'the key at a stage that goes job by job',
      write: isBuild ? 'the build without it' : 'the stage without it',
    });
  }
}

/** Terms by the size of parts in the time of a stage. */
function timeOf(stage: ScenarioStage, scenario: Scenario): readonly SizeTerm[] {
  if (stage.kind === 'wait') return [];
  if (stage.kind === 'work') return stage.bySize;
  const station = scenario.stations.find(({ name }) => name === stage.on);
  return (stage.times.run ?? station?.times.run)?.bySize ?? [];
}
