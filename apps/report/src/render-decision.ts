import type { DecisionAnswer } from '@buildweek/results';

export function renderDecision(answer: DecisionAnswer): string {
  return answer.proposal;
}
