import type { Variation } from '@buildweek/model';
import type { PlanAnswer, ShownPlan } from '@buildweek/results';
import { variationName, variationPlace } from '@buildweek/study';
import { commandLine } from '../terminal/command-line.ts';
import { paragraph } from '../terminal/paragraph.ts';
import { section } from '../terminal/section.ts';
import { harmless, type Style } from '../terminal/style.ts';

/**
 * What to ask next of a plan that was found: how it bears doubts, somebody away, and growth. Empty when there is none,
 * or when it is what the scenario says already.
 *
 * @param targets sentences that were asked for in the place of those of the scenario
 * @param growth how demand is to grow, where the scenario does not say it; null where it does
 */
export function nextSteps(
  answer: PlanAnswer,
  path: string,
  variations: readonly Variation[],
  targets: readonly string[],
  growth: string | null,
  style: Style,
): string {
  const chosen = answer.shown.find(({ role }) => role === 'chosen');
  if (chosen === undefined || chosen.isToday || path === '-') return '';
  const plan = changesOf(chosen, answer, variations);
  const asked = targets.length === 0 ? [] : [`targets: [${targets.map((one) => `'${one}'`).join(', ')}]`];
  const commands = ['doubts', 'away', 'growth'].map((command) => {
    const changes = command === 'away' ? plan : [...plan, ...asked];
    const by = command === 'growth' && growth !== null ? ['--by', growth] : [];
    return `    ${commandLine([command, path, ...by, '--with', harmless(changes.join('; '))])}`;
  });
  const intro =
    'How this plan bears what is in doubt, how it bears somebody away, and until when it is large enough:';
  return `\n${section('What to ask next', [paragraph(intro, '  '), ...commands].join('\n'), style)}\n`;
}

/** What differs from today, as changes of the scenario. */
function changesOf(
  { choices }: ShownPlan,
  { varied }: PlanAnswer,
  variations: readonly Variation[],
): string[] {
  return variations.flatMap((variation) => {
    const what = variationName(variation);
    const value = choices.find((choice) => choice.what === what)?.value;
    const today = varied.find((one) => one.what === what)?.today;
    return value === undefined || value === today ? [] : [`${variationPlace(variation)}: ${value}`];
  });
}
