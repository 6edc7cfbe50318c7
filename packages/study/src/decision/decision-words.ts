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
  const words = `Change ${joinWords(changes.map(changeWords))}`;
  return isMet
    ? `${words}: the cheapest plan that meets the targets.`
    : `${words}: no plan meets the targets, this one comes closest.`;
}

/** "“technicians” from 2 to 3", "“resin / start” from at once to when full". */
function changeWords({ what, from, to }: ChangedChoice): string {
  return `“${what}” from ${from} to ${to}`;
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
