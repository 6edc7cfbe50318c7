import type { EquipmentConditions, Lab } from '@buildweek/model';
import { scaleDistribution } from './scale-distribution.ts';

/** Of what goes round again at least so much comes out in the end: otherwise work would never end. */
const LARGEST_CHANCE = 0.98;

/**
 * Machines and stations break down so many times as often: the times between failures get as much shorter. How long
 * they are down stays.
 *
 * @param of name of a machine or station group; null: all
 * @param factor 0: never again
 */
export function scaleBreakdowns(lab: Lab, of: string | null, factor: number): Lab {
  const changed = <Group extends EquipmentConditions & { readonly name: string }>(group: Group): Group => {
    if (of !== null && of !== group.name) return group;
    if (factor === 0) return { ...group, breakdowns: [] };
    return {
      ...group,
      breakdowns: group.breakdowns.map((breakdown) => ({
        ...breakdown,
        between: scaleDistribution(breakdown.between, 1 / factor),
      })),
    };
  };
  return { ...lab, machines: lab.machines.map(changed), stations: lab.stations.map(changed) };
}

/** Builds fail so many times as often. @param of name of a machine group; null: all */
export function scaleFailedBuilds(lab: Lab, of: string | null, factor: number): Lab {
  return {
    ...lab,
    machines: lab.machines.map((machine) => {
      const { failure } = machine;
      if (failure === null || (of !== null && of !== machine.name)) return machine;
      return {
        ...machine,
        failure: {
          ...failure,
          chancePerBuild: possible(failure.chancePerBuild, factor),
          perPrintHour: failure.perPrintHour * factor,
        },
      };
    }),
  };
}

/** So many times as large a share of pieces is found bad. @param of name of a part type; null: all */
export function scaleRejects(lab: Lab, of: string | null, factor: number): Lab {
  return {
    ...lab,
    parts: lab.parts.map((part) =>
      of !== null && of !== part.name
        ? part
        : {
            ...part,
            stages: part.stages.map((stage) =>
              stage.rejects === null
                ? stage
                : { ...stage, rejects: { ...stage.rejects, share: possible(stage.rejects.share, factor) } },
            ),
          },
    ),
  };
}

/** Spells of absence begin so many times as often. @param of name of a people group; null: all */
export function scaleAbsence(lab: Lab, of: string | null, factor: number): Lab {
  return {
    ...lab,
    people: lab.people.map((group) => {
      const { absence } = group;
      if (absence === null || (of !== null && of !== group.name)) return group;
      return { ...group, absence: { ...absence, chancePerDay: Math.min(1, absence.chancePerDay * factor) } };
    }),
  };
}

/** A chance that was small enough stays as it is when nothing is changed. */
function possible(chance: number, factor: number): number {
  return factor <= 1 ? chance * factor : Math.max(chance, Math.min(LARGEST_CHANCE, chance * factor));
}
