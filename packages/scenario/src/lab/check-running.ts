import type {
  BuildStage,
  HourSpan,
  Lab,
  MachineGroup,
  PartType,
  PrintTime,
  ShapedPrint,
  StationGroup,
  StationStage,
} from '@buildweek/model';
import { BuildPacker, BuildTimer } from '@buildweek/timing';
import type { Reading } from '../reading.ts';
import type { SourcePath } from '../source/source-node.ts';
import { mostPieces } from './attended-places.ts';
import { hoursText } from './hours-text.ts';
import { stagePath } from './names.ts';
import { openWindows } from './open-windows.ts';

/** Leaves room for the rounding of sums of hours. */
const TOLERANCE = 1e-9;

/** What runs, as far as it matters whether it may ever: all hours are typical ones. */
interface Run {
  readonly equipment: MachineGroup | StationGroup;
  readonly path: SourcePath;
  /** What it is and for how many pieces, as `build of 3 "cover"`. */
  readonly what: string;
  /** Skill of those who start it; null when nobody needs to. */
  readonly skill: string | null;
  /** Attended work before it runs. */
  readonly before: number;
  /** Running with nobody needed; 0 when somebody stays. */
  readonly alone: number;
  /** All of it, from the first phase to the end of unloading. */
  readonly whole: number;
}

/**
 * Finds builds and batches that may never run: the hours in which the equipment may run alone, together with
 * those in which somebody is there, never cover them, or they never fit into the hours of borrowed equipment.
 */
export function checkRunning(lab: Lab, reading: Reading): void {
  for (const part of lab.parts) {
    for (const stage of part.stages) {
      const run =
        stage.kind === 'build'
          ? buildRun(part, stage, lab, reading)
          : stage.kind === 'station'
            ? batchRun(part, stage, lab, reading)
            : null;
      if (run === null) continue;
      checkPermission(run, lab, reading);
      checkAvailability(run, lab, reading);
    }
  }
}

function checkPermission(run: Run, lab: Lab, reading: Reading): void {
  const { unattendedHours, name } = run.equipment;
  if (unattendedHours === null || run.alone === 0) return;
  const extras = lab.people.flatMap((group) => calendarOf(lab, group.calendar)?.extra ?? []);
  const weekly = lab.people.flatMap((group) => calendarOf(lab, group.calendar)?.weekly ?? []);
  const allowed = openWindows(extras, [...unattendedHours, ...weekly]);
  const longest = startsOf(run, lab, allowed).reduce((most, start) => {
    const window = allowed.find((span) => span.fromHour <= start && start <= span.toHour);
    return window === undefined ? most : Math.max(most, window.toHour - start);
  }, 0);
  if (longest >= 168 || run.alone <= longest + TOLERANCE) return;
  reading.report(run.path, 'key', {
    message:
      `The ${run.what} may never run: alone it typically takes ${hoursText(run.alone)}, and "${name}" may ` +
      `run for at most ${hoursText(longest)} at a stretch, with somebody there or alone.`,
    found: hoursText(run.alone),
    expected: `at most ${hoursText(longest)}, or longer hours in which it may run alone`,
    write: `runs alone: always under ${placeWords(run, lab)}`,
  });
}

function checkAvailability(run: Run, lab: Lab, reading: Reading): void {
  const { calendar, name } = run.equipment;
  const hours = calendar === null ? undefined : calendarOf(lab, calendar);
  if (hours === undefined) return;
  const windows = openWindows(hours.extra, hours.weekly);
  const people = peopleWindows(run.skill, lab);
  const longest = windows.reduce((most, window) => {
    const starts =
      people === null
        ? [window.fromHour]
        : people
            .filter((span) => span.fromHour < window.toHour && window.fromHour < span.toHour)
            .map((span) => Math.max(span.fromHour, window.fromHour));
    return starts.reduce((best, start) => Math.max(best, window.toHour - start), most);
  }, 0);
  if (longest >= 168 || run.whole <= longest + TOLERANCE) return;
  reading.report(run.path, 'key', {
    message:
      `The ${run.what} never fits into the hours of "${name}": it typically takes ${hoursText(run.whole)} ` +
      `with its attended work, and there are at most ${hoursText(longest)} for it.`,
    found: hoursText(run.whole),
    expected: `at most ${hoursText(longest)}, or longer hours in which the equipment is there`,
    write: `available: always under ${placeWords(run, lab)}`,
  });
}

function buildRun(part: PartType, stage: BuildStage, lab: Lab, reading: Reading): Run | null {
  const machine = lab.machines.find((group) => group.name === stage.machineGroup);
  const { print } = part;
  if (machine === undefined || print === null) return null;
  // What is put together with a build runs with it: a full one has to fit where it runs alone.
  const pieces = Math.max(1, Math.floor(machine.capacity / part.space + TOLERANCE));
  const typical = (work: { duration: { typicalHours: number } } | null): number =>
    work?.duration.typicalHours ?? 0;
  const full = fullBuild(print, pieces, machine);
  const cooling =
    machine.coolDown?.where === 'machine' ? machine.coolDown.duration.typicalHours + full.furtherCoolDown : 0;
  const before = typical(machine.prepare) + typical(machine.setUp);
  const warmUp = machine.warmUp?.typicalHours ?? 0;
  return {
    equipment: machine,
    path: ['parts', part.name, ...printKey(part, reading)],
    what: `build of ${pieces} "${part.name}"`,
    skill: machine.prepare?.skill ?? machine.setUp?.skill ?? null,
    before,
    // Whether it may be started is judged on the whole print, first layers or not.
    alone: warmUp + full.print + cooling,
    whole: before + warmUp + full.print + cooling + typical(machine.unload),
  };
}

/** Where the print time of a part comes from. */
function printKey(part: PartType, reading: Reading): string[] {
  return ['print', 'size', 'mesh']
    .filter((key) => reading.nodeAt(['parts', part.name, key]) !== undefined)
    .slice(0, 1);
}

/** Typical hours of a full build: its print, and what its height adds to the cool-down. */
function fullBuild(
  print: PrintTime | ShapedPrint,
  pieces: number,
  { shaped }: MachineGroup,
): { print: number; furtherCoolDown: number } {
  if (print.kind === 'typed') {
    const hours = print.perBuild.typicalHours + pieces * print.perPart.typicalHours;
    return { print: hours, furtherCoolDown: 0 };
  }
  if (shaped === null) return { print: 0, furtherCoolDown: 0 };
  const counts = Int32Array.of(pieces);
  const height = new BuildPacker(shaped.space, [print.shape]).height(counts);
  return {
    print: new BuildTimer(shaped.time, [print.shape]).printHours(counts, height),
    furtherCoolDown: shaped.coolDownHoursPerMillimetre * height,
  };
}

function batchRun(part: PartType, stage: StationStage, lab: Lab, reading: Reading): Run | null {
  const station = lab.stations.find((group) => group.name === stage.stationGroup);
  if (station === undefined) return null;
  const pieces = stage.basis === 'part' ? mostPieces(part, stage, lab) : 1;
  const run = stage.run.typicalHours * pieces;
  const before = stage.load?.duration.typicalHours ?? 0;
  return {
    equipment: station,
    path: stagePath(reading, part.route, stage.name),
    what: `stage "${stage.name}" for "${part.name}"`,
    skill: stage.load?.skill ?? stage.runAttendance?.skill ?? null,
    before,
    alone: stage.runAttendance === null ? run : 0,
    whole: before + run + (stage.unload?.duration.typicalHours ?? 0),
  };
}

/** Moments at which running can begin at the earliest: when those who start it come, and have done their part. */
function startsOf(run: Run, lab: Lab, allowed: readonly HourSpan[]): number[] {
  const people = peopleWindows(run.skill, lab);
  return people === null
    ? allowed.map((window) => window.fromHour)
    : people.map((window) => window.fromHour + run.before);
}

/** Windows of the people with a skill; null when nobody is needed. */
function peopleWindows(skill: string | null, lab: Lab): HourSpan[] | null {
  if (skill === null) return null;
  return lab.people
    .filter((group) => group.skills.includes(skill))
    .flatMap((group) => {
      const calendar = calendarOf(lab, group.calendar);
      return calendar === undefined ? [] : openWindows(calendar.extra, calendar.weekly);
    });
}

function calendarOf(lab: Lab, name: string) {
  return lab.calendars.find((calendar) => calendar.name === name);
}

function placeWords(run: Run, lab: Lab): string {
  const isMachine = lab.machines.some((group) => group.name === run.equipment.name);
  return `${isMachine ? 'machines' : 'stations'} / ${run.equipment.name}`;
}
