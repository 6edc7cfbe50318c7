import type { CoolDown, MaterialChange } from '@buildweek/model';
import { MACHINE_CLASSES, type MachineClass } from '../classes/machine-classes.ts';
import { MACHINE_SHAPES } from '../classes/machine-shapes.ts';
import { MACHINE_TROUBLES } from '../classes/machine-troubles.ts';
import type { ClassTexts, Fields } from '../fields.ts';
import type { ScenarioMachine } from '../scenario.ts';
import { machineCapacity } from '../words/capacity.ts';
import { anyText, choice, yesNo } from '../words/choice.ts';
import { coolDownTime } from '../words/cool-down.ts';
import { plainDuration } from '../words/duration.ts';
import { launchRule } from '../words/launch.ts';
import { MOST_ALIKE, wholeNumber } from '../words/numbers.ts';
import { durationOrNone, readAttendedWork, USUAL_SKILL, withSkill } from './attended-work.ts';
import { readConditions } from './read-conditions.ts';
import { readFailure } from './read-failure.ts';
import { readShapedBuilds, spaceOfClass } from './read-shaped-builds.ts';

const PROCESSES = ['MEX', 'VPP', 'PBF', 'other'] as const;

/** @param asked names of machines on which parts with a shape are built */
export function readMachines(fields: Fields, asked: ReadonlySet<string>): ScenarioMachine[] {
  return fields
    .names('machines')
    .map((name) => readMachine(fields.group('machines').group(name), name, asked.has(name)));
}

function readMachine(written: Fields, name: string, isAsked: boolean): ScenarioMachine {
  const className = written.read('class', choice(...MACHINE_CLASSES.keys()));
  const machineClass = MACHINE_CLASSES.get(className ?? '');
  const usual = MACHINE_SHAPES.get(className ?? '') ?? null;
  const fields =
    machineClass === undefined
      ? written
      : written.withClass({
          ...machineClass.texts,
          process: machineClass.process,
          ...usual?.texts,
          // Where no shape is known, no height of a build is either: the class then has one time for all.
          ...(isAsked ? {} : coolDownOf(machineClass)),
        });
  const troubles = MACHINE_TROUBLES.get(className ?? '') ?? null;
  const works = ['prepare', 'set-up', 'unload', 'first layers'].map(
    (key) => readAttendedWork(fields, key) ?? null,
  );
  const skill = works.some((work) => work !== null && work.skill === null)
    ? fields.readOr('by', anyText, USUAL_SKILL)
    : (fields.read('by', anyText) ?? USUAL_SKILL);
  const [prepare = null, setUp = null, unload = null, firstLayers = null] = works.map((work) =>
    withSkill(work, skill),
  );
  const materialChanges = readMaterialChanges(fields);
  const isWrong = ['set-up', 'class'].some((key) => fields.reading.isInDoubt(fields.path, key));
  if (setUp === null && !isWrong && materialChanges.some((change) => change.attended)) {
    fields.report(
      'material change',
      'key',
      'An attended material change makes the set-up longer, and there is no set-up.',
      'a set-up, or a change that runs by itself',
      'set-up: 10 min, or: material change: { takes: 10 min, attended: no }',
    );
  }
  const process = fields.readOr('process', choice(...PROCESSES), 'other');
  const { coolDown, hoursPerMillimetre } = readCoolDown(fields);
  const shaped = readShapedBuilds(fields, {
    process,
    usual,
    isAsked,
    coolDownHoursPerMillimetre: hoursPerMillimetre,
  });
  return {
    name,
    process,
    count: fields.readOr('count', wholeNumber(0, '3', MOST_ALIKE), '1'),
    capacity: fields.read('holds', machineCapacity) ?? null,
    mostJobs: fields.read('jobs per build', wholeNumber(1, '1')) ?? null,
    shaped,
    usualSpace: usual === null ? null : spaceOfClass(usual),
    prepare,
    setUp,
    materialChanges,
    warmUp: fields.readOr('warm-up', durationOrNone, 'none'),
    coolDown,
    unload,
    launch: fields.readOr('start', launchRule, 'at once'),
    carrier: fields.read('carrier', anyText) ?? null,
    initialMaterial: fields.read('loaded', anyText) ?? null,
    firstLayers,
    failure: readFailure(fields, skill, troubles?.fails ?? null),
    ...readConditions(fields, 'machine', skill, troubles),
    usualRejects: troubles?.rejects ?? null,
  };
}

function coolDownOf({ texts }: MachineClass): ClassTexts {
  const text = texts['cool-down'];
  return text === undefined ? {} : { 'cool-down': text };
}

function readCoolDown(fields: Fields): { coolDown: CoolDown | null; hoursPerMillimetre: number } {
  const key = 'cool-down';
  const isGroup = fields.node(key)?.kind === 'map';
  const classText = fields.classText(key);
  const group = fields.group(key).withClass(classText === undefined ? {} : { takes: classText });
  const where = isGroup ? group.readOr('where', choice('machine', 'outside'), 'machine') : 'machine';
  if (isGroup && !group.has('takes') && classText === undefined)
    group.missing('takes', 'how long it cools', 'takes: 4 h');
  const said = isGroup ? group.read('takes', coolDownTime) : fields.readOr(key, coolDownTime, 'none');
  if (said === undefined || said === null) return { coolDown: null, hoursPerMillimetre: 0 };
  return { coolDown: { duration: said.duration, where }, hoursPerMillimetre: said.hoursPerMillimetre };
}

function readMaterialChanges(fields: Fields): MaterialChange[] {
  const key = 'material change';
  const node = fields.node(key);
  if (node?.kind === 'list') {
    const list = fields.group(key);
    return node.items.flatMap((_, index) => readMaterialChange(list.group(index)) ?? []);
  }
  if (node?.kind === 'map') return [readMaterialChange(fields.group(key)) ?? []].flat();
  const duration = fields.readOr(key, durationOrNone, 'none');
  return duration === null ? [] : [{ from: null, to: null, duration, attended: true }];
}

function readMaterialChange(fields: Fields): MaterialChange | null {
  if (!fields.has('takes')) fields.missing('takes', 'how long the change takes', 'takes: 15 min');
  const material = (key: string): string | null => {
    const name = fields.readOr(key, anyText, 'any');
    return name === 'any' ? null : name;
  };
  const change = {
    from: material('from'),
    to: material('to'),
    duration: fields.read('takes', plainDuration),
    attended: fields.readOr('attended', yesNo, 'yes'),
  };
  return change.duration === undefined ? null : { ...change, duration: change.duration };
}
