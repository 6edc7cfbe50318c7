import { joinWords, type Money } from '@buildweek/results';
import type { ChangedChoice } from './option-plans.ts';

/** What the sentences at the top of a decision are made of. */
export interface DecisionFacts {
  /** Changes of the recommendation; empty: leave everything as it is. */
  readonly changes: readonly ChangedChoice[];
  /** Whether a plan was found that meets the targets. */
  readonly isMet: boolean;
  /** Money of the recommendation, and of today. */
  readonly money: Money | null;
  readonly moneyToday: Money | null;
}

/** The recommendation in one sentence. */
export function proposalOf({ changes, isMet }: DecisionFacts): string {
  if (changes.length === 0) {
    return isMet
      ? 'Change nothing: the lab as it is meets its targets.'
      : 'Change nothing yet: no plan that was looked at comes closer to the targets than today’s lab.';
  }
  const words = joinWords(changes.map(changeWords));
  return isMet
    ? `${words}: the cheapest plan that meets the targets.`
    : `${words}: no plan meets the targets, this one comes closest.`;
}

/** "Go from 2 to 3 technicians", "set resin / start to “at once”". */
function changeWords({ what, from, to }: ChangedChoice, position: number): string {
  const isCount = /^\d+$/.test(to) && /^\d+$/.test(from);
  const words = isCount ? `from ${from} to ${to} “${what}”` : `“${what}”: ${to} instead of ${from}`;
  if (!isCount) return position === 0 ? `Change ${words}` : `change ${words}`;
  return position === 0 ? `Go ${words}` : `go ${words}`;
}

/** By when to order what is bought beyond today’s lab; nothing without purchases. */
export function orderSentences({ money, moneyToday }: DecisionFacts): string[] {
  const more = (money?.purchases ?? []).filter(({ group, count }) => {
    const before = moneyToday?.purchases.find((one) => one.group === group)?.count ?? 0;
    return count > before;
  });
  const slow = more.filter(({ leadWeeks }) => leadWeeks > 0);
  if (slow.length === 0) return [];
  const words = slow.map(({ group, leadWeeks }) => `${group} ${weeks(leadWeeks)}`);
  return [`From the order until it works: ${joinWords(words)}.`];
}

function weeks(count: number): string {
  const rounded = Number(count.toFixed(1));
  return `${rounded} ${rounded === 1 ? 'week' : 'weeks'}`;
}
