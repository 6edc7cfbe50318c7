import type { Lab, MachineGroup, PartType } from '@buildweek/model';
import type { AskedMoment, Overtaking, QuantityTimes, WayOfMaking } from '@buildweek/results';
import { BuildPacker, BuildTimer } from '@buildweek/timing';
import { type LoneJob, loneJobSimulator, playLoneJob } from './lone-job.ts';
import { type Curve, overtakesAt, refine, spreadOfOvertaking } from './overtaking.ts';
import { quantityGrid } from './quantity-grid.ts';
import { spreadOf } from './spread.ts';
import { timelineOf } from './timeline.ts';
import { typicalLab } from './typical-lab.ts';
import { undisturbedLab } from './undisturbed-lab.ts';

const MINUTES_PER_HOUR = 60;

/** A way of making the part. */
export interface AskedWay {
  /** The lab with the part as its only part type. */
  readonly lab: Lab;
  /** How the part stands in a build, and why. */
  readonly orientation: string;
}

/** What is asked of one part. */
export interface PartQuestion {
  readonly ways: readonly AskedWay[];
  /** The first is the one that curves and comparisons are for. */
  readonly asked: readonly AskedMoment[];
  readonly quantities: readonly number[];
  readonly seed: string;
  /** Plays behind every spread, at least 20. */
  readonly plays: number;
  /** @param share of the work that is done, 0 to 1 */
  readonly onProgress?: (share: number) => void;
}

/** The ways of making one part, in an empty lab, and where they overtake each other. */
export interface PartComparison {
  readonly ways: readonly WayOfMaking[];
  readonly overtakings: readonly Overtaking[];
}

/**
 * Plays the part through an empty lab on every way of making it: once with typical times, and many times with the
 * times as they may come, the same draws for every quantity.
 *
 * @throws RangeError for fewer than 20 plays, or a quantity below 1
 */
export function waysOfMaking(question: PartQuestion): PartComparison {
  const { plays, quantities, asked } = question;
  if (plays < 20) throw new RangeError(`At least 20 plays are needed for a spread, not ${plays}.`);
  if (quantities.some((quantity) => !(Number.isInteger(quantity) && quantity >= 1))) {
    throw new RangeError('A quantity is a whole number from 1 up.');
  }
  const grid = quantityGrid(quantities);
  const steps = question.ways.length * (grid.length + (asked.length - 1) * quantities.length);
  let done = 0;
  const tables = question.ways.map(({ lab, orientation }): Table => {
    const random = undisturbedLab(lab);
    const typical = typicalLab(random);
    const part = onlyPart(random);
    const columns = asked.map(({ hour }, moment) =>
      (moment === 0 ? grid : quantities).map((quantity): Cell => {
        const cell = playCell({ random, typical }, part.name, quantity, hour, question);
        question.onProgress?.(++done / steps);
        return cell;
      }),
    );
    return { lab: typical, part, orientation, columns };
  });
  return {
    ways: tables.map((table) => wayOf(table, question)),
    overtakings: overtakings(tables, grid, question),
  };
}

/** One way, one quantity, one moment of asking. */
interface Cell {
  readonly quantity: number;
  readonly typical: LoneJob | null;
  /** In the order of the replications. */
  readonly plays: readonly (LoneJob | null)[];
}

interface Table {
  /** The lab of the way with typical times. */
  readonly lab: Lab;
  readonly part: PartType;
  readonly orientation: string;
  /** One for each moment of asking. */
  readonly columns: readonly (readonly Cell[])[];
}

function playCell(
  labs: { readonly random: Lab; readonly typical: Lab },
  part: string,
  quantity: number,
  hour: number,
  { seed, plays }: PartQuestion,
): Cell {
  const simulator = loneJobSimulator(labs.random, part, quantity, hour);
  return {
    quantity,
    typical: playTypical(labs.typical, part, quantity, hour),
    plays: Array.from({ length: plays }, (_, replication) => playLoneJob(simulator, seed, replication)),
  };
}

/** In a lab without anything random one play says it all. */
function playTypical(lab: Lab, part: string, quantity: number, hour: number): LoneJob | null {
  return playLoneJob(loneJobSimulator(lab, part, quantity, hour), '', 0);
}

function wayOf({ lab, part, orientation, columns }: Table, question: PartQuestion): WayOfMaking {
  const { asked, quantities } = question;
  const machine = machineOf(lab, part);
  const { print } = part;
  if (print?.kind !== 'shape' || machine.shaped === null) {
    throw new Error(`"${part.name}" is not built from its shape.`);
  }
  const packer = new BuildPacker(machine.shaped.space, [print.shape]);
  const timer = new BuildTimer(machine.shaped.time, [print.shape]);
  const hoursOf = (pieces: number): number => {
    const counts = Int32Array.of(pieces);
    return timer.printHours(counts, packer.height(counts));
  };
  const most = packer.most(0);
  const { width, depth, height } = print.shape;
  return {
    route: part.route,
    process: machine.process,
    machines: machine.name,
    machineCount: machine.count,
    size: { width, depth, height },
    orientation,
    mostPerBuild: most,
    printHoursOfOne: hoursOf(1),
    printHoursOfFull: hoursOf(most),
    timelines: asked.flatMap(({ label, hour }) => {
      const job = playTypical(lab, part.name, 1, hour);
      return job === null ? [] : [timelineOf(job, label)];
    }),
    quantities: quantities.flatMap((quantity) => quantityTimes(quantity, columns, asked) ?? []),
    curve: (columns[0] ?? []).flatMap(({ quantity, typical }) =>
      typical === null
        ? []
        : [
            {
              quantity,
              hours: typical.hours,
              minutesOfPeople: typical.peopleHours * MINUTES_PER_HOUR,
            },
          ],
    ),
  };
}

/** Null when the quantity is not finished within a year. */
function quantityTimes(
  quantity: number,
  columns: Table['columns'],
  asked: readonly AskedMoment[],
): QuantityTimes | null {
  const cells = columns.map((column) => column.find((cell) => cell.quantity === quantity));
  const [first] = cells;
  if (first === undefined || first.typical === null) return null;
  const spread = (cell: Cell, measure: (job: LoneJob) => number) =>
    spreadOf(
      cell.typical === null ? Number.POSITIVE_INFINITY : measure(cell.typical),
      cell.plays.flatMap((job) => (job === null ? [] : [measure(job)])),
    );
  return {
    quantity,
    finished: cells.flatMap((cell, moment) => {
      const label = asked[moment]?.label;
      return cell === undefined || cell.typical === null || label === undefined
        ? []
        : [{ asked: label, hours: spread(cell, ({ hours }) => hours) }];
    }),
    hoursPerPart: spread(first, ({ hours }) => hours / quantity),
    minutesOfPeoplePerPart: spread(first, ({ peopleHours }) => (peopleHours * MINUTES_PER_HOUR) / quantity),
    builds: first.typical.builds,
  };
}

function overtakings(
  tables: readonly Table[],
  grid: readonly number[],
  { asked }: PartQuestion,
): Overtaking[] {
  const [moment] = asked;
  if (moment === undefined) return [];
  const hoursOf = (job: LoneJob | null | undefined): number => job?.hours ?? Number.POSITIVE_INFINITY;
  const typicalCurve = (table: Table): Curve => (table.columns[0] ?? []).map((cell) => hoursOf(cell.typical));
  const playCurve = (table: Table, play: number): Curve =>
    (table.columns[0] ?? []).map((cell) => hoursOf(cell.plays[play]));
  return tables.flatMap((slower) =>
    tables.flatMap((faster): Overtaking[] => {
      if (slower === faster) return [];
      const place = overtakesAt(typicalCurve(slower), typicalCurve(faster));
      if (place === null) return [];
      const played = (table: Table, quantity: number): number =>
        hoursOf(playTypical(table.lab, table.part.name, quantity, moment.hour));
      const quantity = refine(
        grid[place - 1] ?? 0,
        grid[place] ?? 1,
        (pieces) => played(faster, pieces) < played(slower, pieces),
      );
      const plays = (slower.columns[0]?.[0]?.plays ?? []).map(
        (_, play) => [playCurve(slower, play), playCurve(faster, play)] as const,
      );
      const spread = spreadOfOvertaking(grid, plays);
      return [
        {
          slower: slower.part.route,
          faster: faster.part.route,
          quantity,
          low: Math.min(spread.low, quantity),
          high: spread.high === null ? null : Math.max(spread.high, quantity),
        },
      ];
    }),
  );
}

function onlyPart(lab: Lab): PartType {
  const [part] = lab.parts;
  if (part === undefined || lab.parts.length > 1) {
    throw new Error(`A way of making a part has one part type, not ${lab.parts.length}.`);
  }
  return part;
}

function machineOf(lab: Lab, part: PartType): MachineGroup {
  const build = part.stages.find((stage) => stage.kind === 'build');
  const machine = lab.machines.find((group) => group.name === build?.machineGroup);
  if (machine === undefined) throw new Error(`The route of "${part.name}" has no machine.`);
  return machine;
}
