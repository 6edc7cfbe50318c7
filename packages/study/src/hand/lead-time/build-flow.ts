import type { Lab, MachineGroup } from '@buildweek/model';
import { type ExpectedBuilds, sharesBuilds } from '../expected-builds.ts';
import { type ExpectedPrint, expectedPrint } from '../expected-print.ts';
import { type Moments, sumOf, variabilityOf, withOutages } from '../formulas/process-time.ts';
import { fillAt } from './fill-choice.ts';
import { leastFill, loadsPerLaunch } from './least-fill.ts';
import type { StreamFlow } from './stream-flow.ts';
import { lostBuilds, momentsOf, outagesOf } from './trouble.ts';

/** Builds of one demand stream, and how full they may be. */
export interface BuildFlow {
  readonly flow: StreamFlow;
  readonly builds: ExpectedBuilds;
  /** Times that a week's jobs come to the machines. */
  readonly jobsPerWeek: number;
  /** Jobs a week of all streams that share these builds, and full builds that they fill. */
  readonly jobsTogether: number;
  readonly fullTogether: number;
  readonly leastFill: number;
  readonly piecesPerFullBuild: number;
  /** What a print takes at the least fill and when full; in between it is taken as a straight line. */
  readonly printWhenLeast: ExpectedPrint;
  readonly printWhenFull: ExpectedPrint;
}

/** What the builds of a stream are like at some fill. */
export interface BuildsAtFill {
  readonly perWeek: number;
  /** Jobs in a build, of all streams that share it; below 1 where a job takes several builds. */
  readonly jobsPerBuild: number;
  readonly piecesPerBuild: number;
  /** Hours of a machine for a good build without trouble, and with breakdowns and builds in vain. */
  readonly natural: Moments;
  readonly effective: Moments;
  /** Hours that the pieces cool outside of the machine. */
  readonly coolingOutside: number;
  /** Starts of a build for each good one, and times that a job is built. */
  readonly startsPerGoodBuild: number;
  readonly triesPerJob: number;
}

/** @param full builds of all streams, counted as full */
export function buildFlows(
  lab: Lab,
  flows: readonly StreamFlow[],
  full: readonly ExpectedBuilds[],
): BuildFlow[] {
  const found = full.flatMap((builds) => {
    const flow = flows.find(({ demand }) => demand === builds.demand);
    if (flow === undefined || builds.buildsPerWeek === 0) return [];
    const position = flow.part.stages.indexOf(builds.stage);
    return [{ flow, builds, position, jobsPerWeek: flow.demand.jobsPerWeek * (flow.passes[position] ?? 1) }];
  });
  return found.map(({ flow, builds, position, jobsPerWeek }) => {
    const together = found.filter((other) => sharesBuilds(flow.part, other.flow.part));
    const jobsTogether = together.reduce((sum, other) => sum + other.jobsPerWeek, 0);
    const fullTogether = together.reduce((sum, other) => sum + other.builds.buildsPerWeek, 0);
    const { part } = flow;
    const { group } = builds;
    const least = leastFill(
      { loadsPerWeek: jobsTogether, fullPerWeek: fullTogether },
      group.launch.fullShare,
      loadsPerLaunch(lab, group.launch, jobsTogether),
    );
    const piecesPerWeek = flow.demand.piecesPerWeek * (flow.pieceVisits[position] ?? 1);
    const piecesPerFullBuild = piecesPerWeek / builds.buildsPerWeek;
    const printWhenFull = expectedPrint(part, group, piecesPerFullBuild);
    const printWhenLeast =
      least === 1 ? printWhenFull : expectedPrint(part, group, piecesPerFullBuild * least);
    return {
      flow,
      builds,
      jobsPerWeek,
      jobsTogether,
      fullTogether,
      leastFill: least,
      piecesPerFullBuild,
      printWhenLeast,
      printWhenFull,
    };
  });
}

/** @param fullness 0 for the least fill, 1 for full builds */
export function buildsAtFill(builds: BuildFlow, fullness: number): BuildsAtFill {
  const {
    builds: { group, buildsPerWeek },
    jobsTogether,
    fullTogether,
    piecesPerFullBuild,
  } = builds;
  const fill = fillAt(builds.leastFill, fullness);
  const perWeek = buildsPerWeek / fill;
  const jobsPerBuild = (jobsTogether / fullTogether) * fill;
  const piecesPerBuild = piecesPerFullBuild * fill;
  const print = printTime(builds, fill, jobsPerBuild);
  const before = sumOf([
    momentsOf(group.prepare?.duration.distribution),
    momentsOf(group.setUp?.duration.distribution),
    momentsOf(group.warmUp?.distribution),
  ]);
  const further = between(builds, fill, ({ furtherCoolDown }) => furtherCoolDown);
  const coolDown = momentsOf(group.coolDown?.duration.distribution);
  const inMachine = group.coolDown?.where === 'machine';
  const natural = sumOf([
    before,
    print,
    ...(inMachine ? [{ mean: coolDown.mean + further, variance: coolDown.variance }] : []),
    momentsOf(group.unload?.duration.distribution),
  ]);
  const lost = lostBuilds(group, before.mean, print.mean, jobsPerBuild);
  const inVain = lost.perGoodBuild * lost.hours;
  const withLost = {
    mean: natural.mean + inVain,
    // A geometric number of tries in vain, each of the same length.
    variance: natural.variance + lost.perGoodBuild * (1 + lost.perGoodBuild) * lost.hours ** 2,
  };
  const outages = outagesOf(group.breakdowns);
  return {
    perWeek,
    jobsPerBuild,
    piecesPerBuild,
    natural,
    effective: outages === null ? withLost : withOutages(withLost, outages),
    coolingOutside: group.coolDown === null || inMachine ? 0 : coolDown.mean + further,
    startsPerGoodBuild: 1 + lost.perGoodBuild,
    triesPerJob: 1 + lost.perJob * Math.max(1, 1 / jobsPerBuild),
  };
}

/** Print time of a build: its mean, the luck of the build, and that jobs differ in their number of pieces. */
function printTime(builds: BuildFlow, fill: number, jobsPerBuild: number): Moments {
  const {
    flow,
    builds: { group },
    leastFill,
    piecesPerFullBuild,
  } = builds;
  const mean = between(builds, fill, ({ hours }) => hours);
  const pieces = piecesPerFullBuild * fill;
  const { print } = flow.part;
  const rise = builds.printWhenFull.hours - builds.printWhenLeast.hours;
  const hoursPerPiece =
    print?.kind === 'typed'
      ? momentsOf(print.perPart.distribution).mean
      : leastFill === 1
        ? 0
        : rise / (piecesPerFullBuild * (1 - leastFill));
  // Where a job takes several builds these are full, whatever the job.
  const pieceVariance = jobsPerBuild >= 1 - 1e-9 ? jobsPerBuild * flow.pieces.variance : 0;
  return {
    mean,
    variance: luckOfBuild(print, group, mean, pieces) + hoursPerPiece ** 2 * pieceVariance,
  };
}

function luckOfBuild(
  print: StreamFlow['part']['print'],
  group: MachineGroup,
  mean: number,
  pieces: number,
): number {
  if (print?.kind === 'typed') {
    // One draw for each of the two terms: all pieces share the luck of their build.
    return (
      momentsOf(print.perBuild.distribution).variance +
      pieces ** 2 * momentsOf(print.perPart.distribution).variance
    );
  }
  return mean ** 2 * variabilityOf(momentsOf(group.shaped?.timeFactor));
}

function between(builds: BuildFlow, fill: number, of: (print: ExpectedPrint) => number): number {
  const { leastFill, printWhenLeast, printWhenFull } = builds;
  if (leastFill === 1) return of(printWhenFull);
  const share = (fill - leastFill) / (1 - leastFill);
  return of(printWhenLeast) + share * (of(printWhenFull) - of(printWhenLeast));
}
