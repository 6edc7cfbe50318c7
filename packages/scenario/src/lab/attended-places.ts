import type { AttendedWork, Lab, MachineGroup, PartType, Stage } from '@buildweek/model';
import type { Reading } from '../reading.ts';
import { largestCount } from '../words/numbers.ts';
import type { AttendedPlace } from './attended-place.ts';
import { stagePath } from './names.ts';
import { placesOfUpkeep } from './upkeep-places.ts';

/** Geometric quantities have no end; jobs larger than so many times their mean are left out of the check. */
const GEOMETRIC_MULTIPLE = 20;

/** All attended work of the lab, with its place in the file and how long it may become. */
export function attendedPlaces(lab: Lab, reading: Reading): AttendedPlace[] {
  return [
    ...lab.machines.flatMap(placesOfMachine),
    ...placesOfUpkeep(lab, reading),
    ...lab.parts.flatMap((part) => placesOfPart(part, lab, reading)),
  ];
}

function placesOfMachine(machine: MachineGroup): AttendedPlace[] {
  const path = ['machines', machine.name];
  const places: AttendedPlace[] = [];
  const add = (key: string, work: AttendedWork | null): void => {
    if (work !== null)
      places.push({ path: [...path, key], what: `${key} of "${machine.name}"`, work, most: 1, because: '' });
  };
  add('prepare', machine.prepare);
  add('set-up', machine.setUp);
  add('unload', machine.unload);
  add('first layers', machine.firstLayers);
  const { setUp } = machine;
  if (setUp === null) return places;
  const longest = machine.materialChanges
    .filter((change) => change.attended)
    .reduce((hours, change) => Math.max(hours, change.duration.typicalHours), 0);
  if (longest > 0) {
    const hours = setUp.duration.typicalHours + longest;
    places.push({
      path: [...path, 'material change'],
      what: `set-up with a material change of "${machine.name}"`,
      work: { ...setUp, duration: { distribution: { kind: 'constant', value: hours }, typicalHours: hours } },
      most: 1,
      because: '',
    });
  }
  return places;
}

function placesOfPart(part: PartType, lab: Lab, reading: Reading): AttendedPlace[] {
  return part.stages.flatMap((stage) => {
    const ownPath = ['parts', part.name, 'times', stage.name];
    const path = reading.nodeAt(ownPath) === undefined ? stagePath(reading, part.route, stage.name) : ownPath;
    return worksOf(stage).map(({ work, perPart, phase }): AttendedPlace => {
      const pieces = perPart ? mostPieces(part, stage, lab) : 1;
      return {
        path,
        what: `${phase === '' ? 'stage' : `${phase} of`} "${stage.name}"${path === ownPath ? ` for "${part.name}"` : ''}`,
        work,
        most: pieces,
        because: pieces === 1 ? '' : `for ${pieces} parts of "${part.name}" at once`,
      };
    });
  });
}

function worksOf(stage: Stage): { work: AttendedWork; perPart: boolean; phase: string }[] {
  if (stage.kind === 'work') return [{ work: stage.work, perPart: stage.basis === 'part', phase: '' }];
  if (stage.kind !== 'station') return [];
  const works: { work: AttendedWork; perPart: boolean; phase: string }[] = [];
  if (stage.load !== null) works.push({ work: stage.load, perPart: false, phase: 'loading' });
  if (stage.runAttendance !== null) {
    works.push({
      work: { ...stage.runAttendance, duration: stage.run },
      perPart: stage.basis === 'part',
      phase: '',
    });
  }
  if (stage.unload !== null) works.push({ work: stage.unload, perPart: false, phase: 'unloading' });
  return works;
}

/** Most pieces that can be at a stage together: those of the largest job, or of a full build. */
export function mostPieces(part: PartType, stage: Stage, lab: Lab): number {
  const build = part.stages.find((candidate) => candidate.kind === 'build');
  const machine = lab.machines.find((group) => group.name === build?.machineGroup);
  if (stage.level === 'build' && machine !== undefined) {
    return Math.max(1, Math.floor(machine.capacity / part.space + 1e-9));
  }
  const quantities = lab.demand
    .filter((stream) => stream.part === part.name)
    .map((stream) => {
      const dated =
        stream.arrivals.kind === 'dated' ? stream.arrivals.jobs.map((job) => job.quantity ?? 1) : [];
      const { quantity } = stream;
      const drawn =
        quantity.kind === 'geometric'
          ? Math.ceil(quantity.mean * GEOMETRIC_MULTIPLE)
          : largestCount(quantity);
      return dated.reduce((most, pieces) => Math.max(most, pieces), drawn);
    });
  const there = lab.initialState.jobs
    .filter((job) => lab.demand.some((stream) => stream.name === job.stream && stream.part === part.name))
    .map((job) => job.quantity);
  return [...quantities, ...there].reduce((most, pieces) => Math.max(most, pieces), 1);
}
