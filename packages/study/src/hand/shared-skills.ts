import { FlowNetwork } from './maximum-flow.ts';

/** People who share skills, and the hours they have for work in a week. */
export interface SkilledGroup {
  readonly skills: readonly string[];
  readonly availableHours: number;
}

/** Groups that carry their work together when it is spread as evenly as their skills allow. */
export interface SharedLoad {
  /** Positions of the groups. */
  readonly groups: readonly number[];
  /** Skills that nobody outside these groups can relieve them of; empty for groups that nothing is asked of. */
  readonly skills: readonly string[];
  readonly demandHours: number;
  readonly availableHours: number;
}

/**
 * How heavily each group of people is loaded when work is given to those who can do it as evenly as possible.
 *
 * A set of skills asks for some hours, and only the groups that have one of them can give any: the largest ratio of
 * the two over all sets of skills is a bound that no way of sharing the work can go below, and one that some way
 * reaches (the condition of P. Hall, "On representatives of subsets", Journal of the London Mathematical Society 10
 * (1935), 26–30, in its form for flows). The groups of the worst set are that heavily loaded; the rest is looked at
 * in the same way. The ratio is found by W. Dinkelbach, "On nonlinear fractional programming", Management Science 13
 * (1967), 492–498: for a trial ratio the worst set is the smallest cut of a network (all from memory).
 *
 * @param demand hours asked for in a week, by skill
 * @returns heaviest first; a skill that no group has, or whose groups have no hours, is left out
 */
export function sharedLoads(
  demand: ReadonlyMap<string, number>,
  groups: readonly SkilledGroup[],
): SharedLoad[] {
  const loads: SharedLoad[] = [];
  let left = groups.map((_, group) => group);
  let skills = [...demand].filter(([, hours]) => hours > 0).map(([skill]) => skill);
  for (;;) {
    skills = skills.filter((skill) => availableTo([skill], groups, left) > 0);
    if (skills.length === 0) break;
    const worst = worstSet(skills, demand, groups, left);
    const members = left.filter((group) => hasOneOf(groups[group], worst));
    loads.push({
      groups: members,
      skills: worst,
      demandHours: demandOf(worst, demand),
      availableHours: availableTo(worst, groups, left),
    });
    left = left.filter((group) => !members.includes(group));
    skills = skills.filter((skill) => !worst.includes(skill));
  }
  for (const group of left) {
    const availableHours = groups[group]?.availableHours ?? 0;
    loads.push({ groups: [group], skills: [], demandHours: 0, availableHours });
  }
  return loads;
}

/** The set of skills with the largest ratio of hours asked for to hours available; of several the largest set. */
function worstSet(
  skills: readonly string[],
  demand: ReadonlyMap<string, number>,
  groups: readonly SkilledGroup[],
  left: readonly number[],
): string[] {
  let set = [...skills];
  for (;;) {
    const ratio = demandOf(set, demand) / availableTo(set, groups, left);
    const better = setAbove(ratio, skills, demand, groups, left);
    if (better.length === 0) return set;
    if (!(demandOf(better, demand) / availableTo(better, groups, left) > ratio * (1 + 1e-12))) return set;
    set = better;
  }
}

/** A set of skills that asks for most above `ratio` times what is available to it; empty when none asks for more. */
function setAbove(
  ratio: number,
  skills: readonly string[],
  demand: ReadonlyMap<string, number>,
  groups: readonly SkilledGroup[],
  left: readonly number[],
): string[] {
  const sink = 1 + skills.length + left.length;
  const network = new FlowNetwork(sink + 1);
  skills.forEach((skill, position) => {
    network.connect(0, 1 + position, demand.get(skill) ?? 0);
    left.forEach((group, other) => {
      if (hasOneOf(groups[group], [skill])) {
        network.connect(1 + position, 1 + skills.length + other, Number.POSITIVE_INFINITY);
      }
    });
  });
  left.forEach((group, other) => {
    network.connect(1 + skills.length + other, sink, ratio * (groups[group]?.availableHours ?? 0));
  });
  const reached = network.fill(1e-9 * demandOf(skills, demand));
  return skills.filter((_, position) => reached[1 + position]);
}

function demandOf(skills: readonly string[], demand: ReadonlyMap<string, number>): number {
  return skills.reduce((sum, skill) => sum + (demand.get(skill) ?? 0), 0);
}

function availableTo(
  skills: readonly string[],
  groups: readonly SkilledGroup[],
  left: readonly number[],
): number {
  return left.reduce(
    (sum, group) => sum + (hasOneOf(groups[group], skills) ? (groups[group]?.availableHours ?? 0) : 0),
    0,
  );
}

function hasOneOf(group: SkilledGroup | undefined, skills: readonly string[]): boolean {
  return group?.skills.some((skill) => skills.includes(skill)) ?? false;
}
