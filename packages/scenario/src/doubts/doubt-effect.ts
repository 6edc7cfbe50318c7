import type { AttendedWork, DoubtSubject, Lab } from '@buildweek/model';

/** What of a lab a doubt changes. */
export interface DoubtEffect {
  /** Whether there is anything that it changes. */
  readonly changes: boolean;
  /** The largest chance or share among it, which has to stay below 1; 0 for what is no share. */
  readonly largestShare: number;
}

/** Looks up what a doubt would change. */
export function effectOf(about: DoubtSubject, lab: Lab): DoubtEffect {
  const sizes = sizesOf(about, lab);
  const isShare = ['failed builds', 'rejects', 'absence', 'share of rush'].includes(about.kind);
  return {
    changes: sizes.some((size) => size > 0),
    largestShare: isShare ? sizes.reduce((most, size) => Math.max(most, size), 0) : 0,
  };
}

/** Whether some attended work takes longer when the doubt says so. */
export function isWorkInDoubt(about: DoubtSubject, work: AttendedWork, stage: string | null): boolean {
  if (about.kind !== 'work times') return false;
  if (about.by === 'everything') return true;
  return about.by === 'skill' ? about.of === work.skill : about.of === stage;
}

function sizesOf(about: DoubtSubject, lab: Lab): number[] {
  const isMeant = ({ name }: { readonly name: string }): boolean =>
    about.kind !== 'work times' && (about.of === null || about.of === name);
  switch (about.kind) {
    case 'demand':
      return lab.demand
        .filter(isMeant)
        .map(({ arrivals }) => (arrivals.kind === 'poisson' || arrivals.kind === 'renewal' ? 1 : 0));
    case 'work times':
      return [1];
    case 'print times': {
      const groups = lab.machines.filter(isMeant).map(({ name }) => name);
      return lab.parts.flatMap(({ stages }) =>
        stages.map((stage) => (stage.kind === 'build' && groups.includes(stage.machineGroup) ? 1 : 0)),
      );
    }
    case 'breakdowns':
      return [...lab.machines, ...lab.stations].filter(isMeant).map(({ breakdowns }) => breakdowns.length);
    case 'failed builds':
      return lab.machines
        .filter(isMeant)
        .flatMap(({ failure }) =>
          failure === null ? [] : [failure.chancePerBuild, failure.perPrintHour > 0 ? Number.MIN_VALUE : 0],
        );
    case 'rejects':
      return lab.parts
        .filter(isMeant)
        .flatMap(({ stages }) => stages.map(({ rejects }) => rejects?.share ?? 0));
    case 'absence':
      return lab.people.filter(isMeant).map(({ absence }) => absence?.chancePerDay ?? 0);
    case 'share of rush':
      return lab.demand.filter(isMeant).map(({ rushShare }) => rushShare);
  }
}
