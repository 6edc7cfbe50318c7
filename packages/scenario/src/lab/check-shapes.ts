import type { BuildSpace, PartShape, PartType } from '@buildweek/model';
import { BuildPacker } from '@buildweek/timing';
import { listed } from '../nearest.ts';
import type { Reading } from '../reading.ts';
import type { Scenario, ScenarioMachine, ScenarioPart } from '../scenario.ts';
import { volumeText } from '../words/measure.ts';
import { type Size, sizeText } from '../words/size.ts';
import { saysShape } from './build-shape.ts';
import { stagePath } from './names.ts';

/**
 * How many pieces fill an empty machine; a part that is too large for it is reported, with what it lacks and the
 * machines that would hold it.
 *
 * @returns null when not even one goes in, or when the space of the machine is wrong
 */
export function mostOf(
  part: ScenarioPart,
  shape: PartShape,
  machine: ScenarioMachine,
  scenario: Scenario,
  reading: Reading,
): number | null {
  const space = machine.shaped?.space;
  if (space === undefined || reading.hasErrorsWithin(['machines', machine.name])) return null;
  const most = mostIn(space, shape);
  if (most >= 1) return most;
  const holders = scenario.machines.filter((other) => {
    const otherSpace = other.shaped?.space ?? other.usualSpace;
    return otherSpace !== null && mostIn(otherSpace, shape) >= 1;
  });
  const turned = turnedToFit(shape, space);
  const key = part.shape?.kind === 'mesh' ? 'mesh' : 'size';
  const path = ['parts', part.name, key];
  const node = reading.nodeAt(path);
  reading.report(path, 'value', {
    message: `"${part.name}" is too large for "${machine.name}": ${excessText(shape, space)}.`,
    found: node?.kind === 'scalar' ? node.text : '',
    expected:
      holders.length === 0
        ? 'a part that a machine of this lab can hold; none holds this one'
        : `a machine that holds it: ${listed(holders.map(({ name }) => `"${name}"`))}`,
    write:
      turned !== null && key === 'size'
        ? `size: ${sizeText(turned)} (laid on another side)`
        : holders.length === 0
          ? 'platform: … of a larger machine, or a part in pieces'
          : `a route with a build on ${listed(holders.map(({ name }) => name))}`,
  });
  return null;
}

function mostIn(space: BuildSpace, shape: PartShape): number {
  return new BuildPacker(space, [shape]).most(0);
}

/** The part laid on another of its sides, when it then fits. */
function turnedToFit(shape: PartShape, space: BuildSpace): Size | null {
  const { width, depth, height } = shape;
  const layings: Size[] = [
    { width, depth: height, height: depth },
    { width: height, depth, height: width },
  ];
  return layings.find((laid) => mostIn(space, { ...shape, ...laid }) >= 1) ?? null;
}

/** By how much a part is too large, turned about z as it sticks out least. */
function excessText(shape: PartShape, space: BuildSpace): string {
  const room = { width: space.width - 2 * space.margin, depth: space.depth - 2 * space.margin };
  const asItIs = Math.max(0, shape.width - room.width) + Math.max(0, shape.depth - room.depth);
  const turned = Math.max(0, shape.depth - room.width) + Math.max(0, shape.width - room.depth);
  const [width, depth] = turned < asItIs ? [shape.depth, shape.width] : [shape.width, shape.depth];
  const excesses = [
    { over: width - room.width, what: 'wide' },
    { over: depth - room.depth, what: 'deep' },
    { over: shape.height - space.height, what: 'high' },
  ].filter(({ over }) => over > 1e-6);
  const free = `${sizeText({ ...room, height: space.height })} between its margins`;
  if (excesses.length === 0) return `it does not go into the ${free}`;
  const texts = excesses.map(({ over, what }) => `${Number(over.toFixed(2))} mm too ${what}`);
  return `${texts.join(' and ')} for the ${free}`;
}

/** Finds typed print times where the cool-down needs the height of a build. */
export function checkTypedPrint(part: ScenarioPart, machine: ScenarioMachine, reading: Reading): void {
  const path = ['parts', part.name, 'print'];
  const perMillimetre = machine.shaped?.coolDownHoursPerMillimetre ?? 0;
  if (part.shape !== null || part.print === null || perMillimetre === 0) return;
  const isWritten = reading.nodeAt(['machines', machine.name, 'cool-down']) !== undefined;
  reading.report(path, 'key', {
    message:
      `The higher a build on "${machine.name}", the longer it cools${isWritten ? '' : ', as its class has it'}, ` +
      `and of "${part.name}" no size is known.`,
    found: 'print',
    expected: 'a size or a mesh for every part of this machine, or one cool-down for all heights',
    write: `size: 40 x 30 x 20 mm, and volume: 6 cm3; or cool-down: 4 to 20 h, usually 10 under machines / ${machine.name}`,
  });
}

/** Finds parts without a size, or with too large a one, at stations that are filled by volume. */
export function checkStationVolumes(parts: readonly PartType[], scenario: Scenario, reading: Reading): void {
  for (const [index, part] of parts.entries()) {
    const path = ['parts', part.name];
    const said = scenario.parts[index];
    // What keeps a shape that is said from being known has been reported.
    const isReported = part.print?.kind !== 'shape' && said !== undefined && saysShape(said, reading);
    if (isReported || reading.hasErrorsWithin(path)) continue;
    for (const stage of part.stages) {
      if (stage.kind !== 'station') continue;
      const station = scenario.stations.find((group) => group.name === stage.stationGroup);
      if (station?.unit !== 'box volume') continue;
      if (part.print?.kind !== 'shape') {
        reading.report(path, 'key', {
          message: `"${station.name}" is filled by volume, and of "${part.name}" no size is known.`,
          expected: 'a part with a size or a mesh that is built on a machine, or a station that counts parts',
          write: `size: 40 x 30 x 20 mm, and volume: 6 cm3; or holds: 20 parts under stations / ${station.name}`,
        });
        continue;
      }
      const { width, depth, height } = part.print.shape;
      const box = width * depth * height;
      if (box <= station.capacity) continue;
      reading.report([...stagePath(reading, part.route, stage.name), 'on'], 'value', {
        message: `"${part.name}" does not go into "${station.name}": its box takes ${volumeText(box)}.`,
        found: station.name,
        expected: `a station that holds ${volumeText(box)}; this one holds ${volumeText(station.capacity)}`,
        write: `holds: ${box <= 1e6 ? `${Math.ceil(box / 1000)} cm3` : `${Math.ceil(box / 1e6)} litres`} under stations / ${station.name}`,
      });
    }
  }
}
