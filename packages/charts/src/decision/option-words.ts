import type { DecisionAnswer, DecisionOption, Estimate, TargetOfPlan } from '@buildweek/results';

/** What the options are called beside each other. */
export const OPTION_NAMES: Readonly<Record<DecisionOption['role'], string>> = {
  today: 'As it is',
  recommended: 'Recommended',
  cheaper: 'Cheaper',
  faster: 'Faster',
};

/** Of a change as --with takes it, what a reader needs: "technicians: 3" of "people / technicians / count: 3". */
export function shortChange(change: string): string {
  return change.replace(/^(?:people|machines|stations|carriers) \/ /, '').replace(/ \/ count(?=:)/, '');
}

/** What an option changes, in one line. */
export function changeLine({ changes }: DecisionOption): string {
  return changes.length === 0 ? 'no change' : changes.map(shortChange).join(', ');
}

/** The same where the recommendation stands beside it: what comes on top of that, where it holds all of that. */
export function changesBeside(option: DecisionOption, recommended: DecisionOption | undefined): string {
  const shared = recommended?.changes ?? [];
  const more = option.changes.filter((change) => !shared.includes(change));
  const holdsAll = shared.length > 0 && shared.every((change) => option.changes.includes(change));
  if (!holdsAll || more.length === 0) return changeLine(option);
  return `recommended, and ${more.map(shortChange).join(', ')}`;
}

/** Whether an option reaches a target: by the verdict of the search, else by the interval. */
export function reaches({
  value,
  asked,
  better,
  verdict,
}: TargetOfPlan): 'reached' | 'missed' | 'not decided' {
  if (verdict === 'met') return 'reached';
  if (verdict === 'missed') return 'missed';
  if (value.kind !== 'estimate') return 'not decided';
  const { low, high } = value;
  if (better === 'lower') return high <= asked ? 'reached' : low > asked ? 'missed' : 'not decided';
  return low >= asked ? 'reached' : high < asked ? 'missed' : 'not decided';
}

/** Positions of the targets that tell the options apart best: those that one misses first, at most so many. */
export function tellingTargets({ options }: Pick<DecisionAnswer, 'options'>, most: number): number[] {
  const count = options[0]?.targets.length ?? 0;
  const misses = (position: number): number =>
    options.filter(({ targets }) => {
      const target = targets[position];
      return target !== undefined && reaches(target) === 'missed';
    }).length;
  return Array.from({ length: count }, (_, position) => position)
    .filter((position) => options.some(({ targets }) => targets[position]?.value.kind === 'estimate'))
    .toSorted((one, other) => Math.min(1, misses(other)) - Math.min(1, misses(one)) || one - other)
    .slice(0, most)
    .toSorted((one, other) => one - other);
}

/** The interval of a share, cut to what a share can be. */
export function shareRange({ low, high }: Estimate): { readonly low: number; readonly high: number } {
  return { low: Math.max(0, low), high: Math.min(1, high) };
}
