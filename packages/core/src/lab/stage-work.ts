import { toMilliseconds } from '../kernel/clock.ts';
import { createStream, type Stream } from '../kernel/streams.ts';
import type { Load, Lot } from './load.ts';
import type { Simulation } from './simulation.ts';

/** For what is not random: any number strictly between 0 and 1 gives the same. */
const ANY: Stream = () => 0.5;

/** What a stage takes for a load: drawn with its build, with its jobs, or for a part of a job by itself. */
export class StageWork {
  private readonly simulation: Simulation;

  constructor(simulation: Simulation) {
    this.simulation = simulation;
  }

  /**
   * Milliseconds of the present stage for a load: what was drawn with its build, or with its jobs. A lot that
   * is only a part of its job has its share of the work per job, draws of its own for work per piece, and the
   * whole of a plain wait.
   */
  drawn(load: Load): number {
    const head = load.lots as Lot;
    const stage = head.definition;
    if (stage.atBuildLevel && stage.basis === 'none') return load.tailWork[load.tailOffset];
    let sum = 0;
    for (let lot: Lot | null = load.lots; lot !== null; lot = lot.nextInLoad) sum += this.lotWork(lot);
    return sum;
  }

  /** What the typical duration of the stage counts for: pieces or jobs that have not been given up, or 1. */
  typicalUnits(load: Load, basis: 'none' | 'job' | 'part'): number {
    if (basis === 'none') return 1;
    if (basis === 'job') return load.weight;
    let pieces = 0;
    for (let lot = load.lots; lot !== null; lot = lot.nextInLoad) if (!lot.isDead) pieces += lot.pieces;
    return pieces;
  }

  private lotWork(lot: Lot): number {
    // Nobody works on what has been given up.
    if (lot.isDead) return 0;
    const { job } = lot;
    const drawn = job.stageWork[lot.stage];
    const stage = lot.definition;
    if (lot.visit === 0) {
      // Waiting is no work that is shared: few pieces dry as long as many.
      if (lot.pieces === job.quantity || stage.kind === 'wait') return drawn;
      if (stage.basis !== 'part' || stage.constant) return Math.round((drawn * lot.pieces) / job.quantity);
    }
    if (stage.sampler === null) return 0;
    // Rare: a job split over builds, or pieces that go round again. What is constant is the same for every draw.
    const isRandom = !stage.constant || stage.isForRequester;
    const stream = isRandom ? this.keyedStream('work of a part of a job', lot, lot.stage) : ANY;
    if (stage.isForRequester && stream() >= stage.requesterChance) return 0;
    const draws = stage.basis === 'part' ? lot.pieces : 1;
    let hours = 0;
    for (let draw = 0; draw < draws; draw++) hours += stage.sampler.sample(stream());
    return toMilliseconds(
      stage.basis === 'part' || stage.kind === 'wait' ? hours : (hours * lot.pieces) / job.quantity,
    );
  }

  /** A stream for what could not be drawn at the arrival of the job: keyed by job, stage, visit, first piece and revision. */
  private keyedStream(purpose: string, lot: Lot, stage: number): Stream {
    const { settings, compiled } = this.simulation;
    const { job } = lot;
    const { stream } = compiled.streams[job.stream];
    const key = [stream.name, job.numberInStream, stage, lot.visit, lot.firstPiece];
    const owner = JSON.stringify(job.revision === 0 ? key : [...key, job.revision]);
    return createStream(settings.seed, settings.replication, purpose, owner);
  }

  /** How many pieces of a lot are found bad at the end of a stage. */
  rejected(lot: Lot, stage: number): number {
    const { rejectShare } = lot.part.stages[stage];
    const { job } = lot;
    const u =
      lot.visit === 0 && lot.pieces === job.quantity
        ? job.rejectDraws[stage]
        : this.keyedStream('rejects', lot, stage)();
    return inverseBinomial(u, lot.pieces, rejectShare);
  }
}

/** The number of successes in `count` trials below which a draw falls with probability u. */
function inverseBinomial(u: number, count: number, share: number): number {
  let probability = (1 - share) ** count;
  let cumulative = probability;
  let successes = 0;
  while (u > cumulative && successes < count) {
    probability *= ((count - successes) / (successes + 1)) * (share / (1 - share));
    cumulative += probability;
    successes++;
  }
  return successes;
}
