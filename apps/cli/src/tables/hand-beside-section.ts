import { formatShare } from '@buildweek/charts';
import type { ComparedPlan } from '@buildweek/results';
import { paragraph } from '../terminal/paragraph.ts';
import { section } from '../terminal/section.ts';
import type { Style } from '../terminal/style.ts';

/** What a page of arithmetic says of each plan; empty when it says nothing. */
export function handBesideSection(
  plans: readonly Pick<ComparedPlan, 'name' | 'handSentence' | 'handCalculation'>[],
  style: Style,
): string {
  const lines = plans.flatMap(({ name, handSentence, handCalculation }) => {
    const [highest] = [...handCalculation].sort((one, other) => other.load - one.load);
    const load =
      highest === undefined ? '' : ` Highest load by hand: ${highest.name}, ${formatShare(highest.load)}.`;
    return handSentence === '' && load === '' ? [] : [paragraph(`“${name}”: ${handSentence}${load}`, '  ')];
  });
  return lines.length === 0 ? '' : section('Beside it, by hand', lines.join('\n'), style);
}
