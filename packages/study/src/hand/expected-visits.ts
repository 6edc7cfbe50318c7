import type { PartType } from '@buildweek/model';

/**
 * How often a piece passes each stage of its route on average, when pieces that are rejected go round again from an
 * earlier stage.
 *
 * Across the border before any stage one good piece goes forward on balance: what goes forward is one more than what
 * is sent back across it from the stages behind. From the last stage, which has to give one good piece, this gives
 * stage by stage what has to come in.
 * @returns one number for each stage, at least 1
 * @throws Error when a stage sends pieces back to one that is not on the route
 */
export function expectedVisits(part: PartType): number[] {
  const { stages } = part;
  const rejects = stages.map((stage, index) => {
    const found = 'rejects' in stage ? stage.rejects : null;
    if (found === null) return { share: 0, backTo: index };
    const backTo = stages.findIndex((candidate) => candidate.name === found.backTo);
    if (backTo < 0) throw new Error(`The route of "${part.name}" has no stage "${found.backTo}".`);
    return { share: found.share, backTo };
  });
  const visits: number[] = stages.map(() => 1);
  for (let stage = stages.length - 1; stage >= 0; stage--) {
    let sentBack = 0;
    for (let later = stage + 1; later < stages.length; later++) {
      const { share, backTo } = rejects[later] ?? { share: 0, backTo: later };
      if (backTo <= stage) sentBack += share * (visits[later] ?? 1);
    }
    visits[stage] = (1 + sentBack) / (1 - (rejects[stage]?.share ?? 0));
  }
  return visits;
}
