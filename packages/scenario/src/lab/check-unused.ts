import { listed, nearest } from '../nearest.ts';
import { SENT_OUT } from '../read/read-sent-out.ts';
import type { Reading } from '../reading.ts';
import type { Scenario, ScenarioStage } from '../scenario.ts';
import type { SourcePath } from '../source/source-node.ts';
import { USUAL_FINISH } from '../words/finish.ts';
import { equipmentHours } from './equipment-hours.ts';
import { skillPath, stagePath } from './names.ts';

/** Warns of what is described and has no effect, and of materials that no part is made of. */
export function checkUnused(scenario: Scenario, labCalendar: string, reading: Reading): void {
  const stages = scenario.routes
    .filter((route) => scenario.parts.some((part) => part.route === route.name))
    .flatMap((route) => route.stages);
  const places = new Set(stages.flatMap((stage) => (stage.kind === 'placed' ? [stage.on] : [])));
  const hours = new Set([
    labCalendar,
    ...scenario.people.map((group) => group.calendar),
    ...equipmentHours(scenario, reading).map(({ name }) => name),
    ...scenario.demand.flatMap(({ arrivals }) =>
      arrivals.kind === 'poisson' &&
      arrivals.when !== null &&
      typeof arrivals.when === 'object' &&
      'hours' in arrivals.when
        ? [arrivals.when.hours]
        : [],
    ),
  ]);
  const asked = new Set(scenario.demand.map((demand) => demand.part));
  const carriers = new Set(scenario.machines.map((machine) => machine.carrier));
  const routes = new Set(scenario.parts.map((part) => part.route));
  const warn: Warn = (path, message, write) =>
    reading.report(path, 'key', {
      severity: 'warning',
      message,
      found: String(path[path.length - 1]),
      expected: 'something that is used',
      write,
    });
  for (const { name } of scenario.calendars) {
    if (!hours.has(name))
      warn(['hours', name], `Nobody works the hours "${name}".`, `hours: ${name} at a group of people`);
  }
  for (const { name } of scenario.machines) {
    if (!places.has(name))
      warn(['machines', name], `No part is built on "${name}".`, `on: ${name} in a route that parts take`);
  }
  for (const { name } of scenario.stations) {
    if (!places.has(name))
      warn(['stations', name], `No stage is done at "${name}".`, `on: ${name} in a route that parts take`);
  }
  for (const { name } of scenario.carriers) {
    if (!carriers.has(name))
      warn(['carriers', name], `No machine uses "${name}".`, `carrier: ${name} at a machine`);
  }
  for (const { name } of scenario.routes) {
    if (!routes.has(name))
      warn(['routes', name], `No part takes the route "${name}".`, `route: ${name} at a part`);
  }
  for (const { name } of scenario.parts) {
    if (!asked.has(name))
      warn(['parts', name], `Nobody asks for "${name}".`, `${name}: { jobs: 14 per week } under demand`);
  }
  if (reading.nodeAt([SENT_OUT]) !== undefined && scenario.demand.every(({ sentOut }) => sentOut === null)) {
    warn(
      [SENT_OUT],
      'Nothing is ever sent out: neither all jobs nor those of a demand are said to be.',
      'when: more than 12 jobs wait, or "sent out: always" at a demand',
    );
  }
  checkShapeKeys(scenario, warn);
  checkFinishes(scenario, reading, warn);
  checkMaterials(scenario, reading);
}

type Warn = (path: SourcePath, message: string, write: string) => void;

/** What is said of the builds of a machine has an effect on parts that have a shape, or on those that have none. */
function checkShapeKeys(scenario: Scenario, warn: Warn): void {
  for (const machine of scenario.machines) {
    const built = scenario.parts.filter((part) =>
      scenario.routes
        .find((route) => route.name === part.route)
        ?.stages.some((stage) => stage.kind === 'placed' && stage.on === machine.name),
    );
    const shaped = built.filter((part) => part.shape !== null).length;
    const path = ['machines', machine.name];
    if (machine.shaped !== null && shaped === 0 && built.length > 0) {
      warn(
        [...path, 'platform'],
        `No part with a size or a mesh is built on "${machine.name}": what is said of its builds has no effect.`,
        'size: 42 x 42 x 11 mm, and volume: 5200 mm3, at a part instead of its print time',
      );
    }
    if (machine.capacity !== null && shaped > 0 && shaped === built.length) {
      warn(
        [...path, 'holds'],
        `What fits on "${machine.name}" follows from the sizes of its parts: "holds" has no effect.`,
        'the machine without it',
      );
    }
  }
}

/** A finish makes a difference where a stage of the route is for some finishes alone, and such a stage where a part has it. */
function checkFinishes(scenario: Scenario, reading: Reading, warn: Warn): void {
  for (const route of scenario.routes) {
    const parts = scenario.parts.filter((part) => part.route === route.name);
    for (const { name, finishes } of route.stages) {
      if (parts.length === 0 || finishes === null) continue;
      if (parts.some(({ finish }) => finishes.includes(finish))) continue;
      warn(
        [...stagePath(reading, route.name, name), 'for finish'],
        `No part asks for "${name}": none of "${route.name}" is finished "${listed(finishes)}".`,
        `finish: ${finishes[0]} at a part`,
      );
    }
  }
  for (const { name, route, finish } of scenario.parts) {
    const stages = scenario.routes.find((candidate) => candidate.name === route)?.stages ?? [];
    if (finish === USUAL_FINISH || stages.some(({ finishes }) => finishes !== null)) continue;
    warn(
      ['parts', name, 'finish'],
      `All stages of "${route}" are for every finish: "${finish}" makes no difference.`,
      `for finish: ${finish} at a stage of the route`,
    );
  }
}

/**
 * Warns of skills that no work asks for: a slip in one takes a person away from the work without a word.
 *
 * @param needed the skills that work of the lab asks for
 */
export function checkSkills(scenario: Scenario, needed: readonly string[], reading: Reading): void {
  const all = [...new Set([...needed, ...scenario.routes.flatMap(({ stages }) => stages.flatMap(skillsOf))])];
  for (const { name, skills } of scenario.people) {
    for (const skill of skills) {
      if (all.includes(skill)) continue;
      const meant = nearest(skill, all);
      reading.report(skillPath(reading, name, skill), 'value', {
        severity: 'warning',
        message: `Nobody needs the skill "${skill}"${meant === null ? '.' : `; did you mean "${meant}"?`}`,
        found: skill,
        expected: `a skill that some work asks for: ${listed(all, 12)}`,
        write: meant ?? `by: ${skill} at the work that needs it, or the skills without it`,
      });
    }
  }
}

/** Skills that a stage names, whether or not a part takes its route. */
function skillsOf(stage: ScenarioStage): string[] {
  if (stage.kind === 'wait') return [];
  const named =
    stage.kind === 'work'
      ? [stage.work.skill]
      : [stage.times.by, stage.times.load?.skill, stage.times.unload?.skill];
  return named.flatMap((skill) => (skill == null || skill === '' ? [] : [skill]));
}

function checkMaterials(scenario: Scenario, reading: Reading): void {
  const materials = [...new Set(scenario.parts.map((part) => part.material))];
  const told = new Set<string>();
  const check = (path: SourcePath, material: string | null, part: 'key' | 'value' = 'value'): void => {
    if (material === null || materials.includes(material) || told.has(material)) return;
    told.add(material);
    reading.report(path, part, {
      severity: 'warning',
      message: `No part is made of "${material}".`,
      found: material,
      expected: `a material of a part: ${materials.join(', ')}`,
      write: nearest(material, materials) ?? 'a material that parts have',
    });
  };
  for (const machine of scenario.machines) {
    const path = ['machines', machine.name];
    check([...path, 'loaded'], machine.initialMaterial);
    machine.materialChanges.forEach((change, index) => {
      const node = reading.nodeAt([...path, 'material change']);
      const changePath = [...path, 'material change', ...(node?.kind === 'list' ? [index] : [])];
      check([...changePath, 'from'], change.from);
      check([...changePath, 'to'], change.to);
    });
  }
  for (const { material } of scenario.money?.materials ?? []) check(['materials', material], material, 'key');
}
