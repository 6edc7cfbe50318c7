import type { Lab, MachineGroup, PartType } from '@buildweek/model';
import type { AskedMoment, Overtaking, QuantityTimes, WayOfMaking } from '@buildweek/results';
import { BuildPacker, BuildTimer } from '@buildweek/timing';
import { type LoneJob, LoneJobPlayer } from './lone-job.ts';
import { type Curve, overtakesAt, refine, spreadOfOvertaking } from './overtaking.ts';
import { quantityGrid } from './quantity-grid.ts';
import { middleOf, spreadOf } from './spread.ts';
import { timelineOf } from './timeline.ts';
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

/** Hours by the clock of a job that is not finished within a year. */
const NEVER = Number.POSITIVE_INFINITY;
/** Finding out where curves cross takes about as long as the curves themselves. */
const SHARE_OF_CURVES = 0.6;

/**
 * Plays the part through an empty lab on every way of making it, many times, with the same draws for every quantity.
 *
 * @throws RangeError for fewer than 20 plays, or a quantity below 1
 */
export function waysOfMaking(question: PartQuestion): PartComparison {
  const { plays, quantities, asked, onProgress } = question;
  if (plays < 20) throw new RangeError(`At least 20 plays are needed for a spread, not ${plays}.`);
  if (quantities.some((quantity) => !(Number.isInteger(quantity) && quantity >= 1))) {
    throw new RangeError('A quantity is a whole number from 1 up.');
  }
  const grid = quantityGrid(quantities);
  const players = question.ways.map((way) => new WayPlayer(way, question));
  const steps = players.length * (grid.length + (asked.length - 1) * quantities.length);
  let done = 0;
  for (const player of players) {
    asked.forEach((_, moment) => {
      for (const quantity of moment === 0 ? grid : quantities) {
        player.cell(quantity, moment);
        onProgress?.((SHARE_OF_CURVES * ++done) / steps);
      }
    });
  }
  const ways = players.map((player) => player.wayOfMaking(grid));
  return { ways, overtakings: overtakings(players, grid, onProgress) };
}

/** Plays one way of making the part; what has been played is kept. */
class WayPlayer {
  readonly part: PartType;
  private readonly lab: Lab;
  private readonly orientation: string;
  private readonly question: PartQuestion;
  private readonly cells = new Map<string, readonly (LoneJob | null)[]>();

  constructor({ lab, orientation }: AskedWay, question: PartQuestion) {
    this.lab = undisturbedLab(lab);
    this.orientation = orientation;
    this.question = question;
    this.part = onlyPart(this.lab);
  }

  /** All plays of so many pieces, asked for at one of the moments; null for those not finished within a year. */
  cell(quantity: number, moment: number): readonly (LoneJob | null)[] {
    const key = `${moment} ${quantity}`;
    const known = this.cells.get(key);
    if (known !== undefined) return known;
    const { asked, plays, seed } = this.question;
    const player = new LoneJobPlayer(this.lab, this.part.name, quantity, asked[moment]?.hour ?? 0);
    const played = Array.from({ length: plays }, (_, replication) => player.play(seed, replication));
    this.cells.set(key, played);
    return played;
  }

  /** Hours until so many pieces are finished, asked for at the first moment; that of the middle play. */
  middleHours(quantity: number): number {
    return hoursOf(middlePlay(this.cell(quantity, 0)));
  }

  /** Hours at each quantity of the grid in one of the plays. */
  curveOf(play: number, grid: readonly number[]): Curve {
    return grid.map((quantity) => hoursOf(this.cell(quantity, 0)[play]));
  }

  wayOfMaking(grid: readonly number[]): WayOfMaking {
    const { part, question } = this;
    const { asked, quantities } = question;
    const machine = machineOf(this.lab, part);
    const { print } = part;
    if (print?.kind !== 'shape' || machine.shaped === null) {
      throw new Error(`"${part.name}" is not built from its shape.`);
    }
    const packer = new BuildPacker(machine.shaped.space, [print.shape]);
    const timer = new BuildTimer(machine.shaped.time, [print.shape]);
    const printHours = (pieces: number): number => {
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
      orientation: this.orientation,
      mostPerBuild: most,
      printHoursOfOne: printHours(1),
      printHoursOfFull: printHours(most),
      timelines: asked.flatMap(({ label }, moment) => {
        const job = middlePlay(this.cell(1, moment));
        return job === null ? [] : [timelineOf(job, label)];
      }),
      quantities: quantities.flatMap((quantity) => this.quantityTimes(quantity) ?? []),
      curve: grid.flatMap((quantity) => {
        const plays = this.cell(quantity, 0);
        const job = middlePlay(plays);
        if (job === null) return [];
        const minutes = plays.flatMap((play) => (play === null ? [] : play.peopleHours * MINUTES_PER_HOUR));
        return [{ quantity, hours: job.hours, minutesOfPeople: spreadOf(minutes).typical }];
      }),
    };
  }

  /** Null when most plays of the quantity are not finished within a year. */
  private quantityTimes(quantity: number): QuantityTimes | null {
    const { asked } = this.question;
    const first = this.cell(quantity, 0);
    const middle = middlePlay(first);
    if (middle === null) return null;
    const finished = (plays: readonly (LoneJob | null)[]): LoneJob[] => plays.filter((job) => job !== null);
    return {
      quantity,
      finished: asked.flatMap(({ label }, moment) => {
        const plays = this.cell(quantity, moment);
        if (middlePlay(plays) === null) return [];
        return [{ asked: label, hours: spreadOf(finished(plays).map(({ hours }) => hours)) }];
      }),
      hoursPerPart: spreadOf(finished(first).map(({ hours }) => hours / quantity)),
      minutesOfPeoplePerPart: spreadOf(
        finished(first).map(({ peopleHours }) => (peopleHours * MINUTES_PER_HOUR) / quantity),
      ),
      builds: middle.builds,
    };
  }
}

function overtakings(
  players: readonly WayPlayer[],
  grid: readonly number[],
  onProgress: PartQuestion['onProgress'],
): Overtaking[] {
  const middleCurve = (player: WayPlayer): Curve => grid.map((quantity) => player.middleHours(quantity));
  const pairs = players.flatMap((slower) =>
    players.flatMap((faster) => (slower === faster ? [] : [{ slower, faster }])),
  );
  return pairs.flatMap(({ slower, faster }, index): Overtaking[] => {
    onProgress?.(SHARE_OF_CURVES + ((1 - SHARE_OF_CURVES) * (index + 1)) / pairs.length);
    const place = overtakesAt(middleCurve(slower), middleCurve(faster));
    if (place === null) return [];
    const isAhead = (quantity: number): boolean =>
      faster.middleHours(quantity) < slower.middleHours(quantity);
    const quantity = refine(grid[place - 1] ?? 0, grid[place] ?? 1, isAhead);
    const plays = slower
      .cell(1, 0)
      .map((_, play) => [slower.curveOf(play, grid), faster.curveOf(play, grid)] as const);
    const { low, high } = spreadOfOvertaking(grid, plays);
    return [
      {
        slower: slower.part.route,
        faster: faster.part.route,
        quantity,
        low: Math.min(low, quantity),
        high: high === null ? null : Math.max(high, quantity),
      },
    ];
  });
}

function hoursOf(job: LoneJob | null | undefined): number {
  return job?.hours ?? NEVER;
}

/** The play that half of the others are faster than. */
function middlePlay(plays: readonly (LoneJob | null)[]): LoneJob | null {
  return middleOf(plays, hoursOf);
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
