import type { PlanAnswer, ShownPlan } from '@buildweek/results';
import { commandLine } from '../terminal/command-line.ts';
import { paragraph } from '../terminal/paragraph.ts';
import { section } from '../terminal/section.ts';
import { harmless, type Style } from '../terminal/style.ts';

/**
 * What to ask next of a plan that was found: how it bears doubts, somebody away, and growth. Empty when there is none,
 * or when it is what the scenario says already.
 *
 * @param counts names of the groups of which a number was chosen; all else was chosen in words of the scenario
 * @param targets sentences that were asked for in the place of those of the scenario
 */
export function nextSteps(
  answer: PlanAnswer,
  path: string,
  counts: readonly string[],
  targets: readonly string[],
  style: Style,
): string {
  const chosen = answer.shown.find(({ role }) => role === 'chosen');
  if (chosen === undefined || chosen.isToday || path === '-') return '';
  const plan = changesOf(chosen, answer, counts);
  const asked = targets.length === 0 ? [] : [`targets: [${targets.map((one) => `'${one}'`).join(', ')}]`];
  const commands = ['doubts', 'away', 'growth'].map((command) => {
    const changes = command === 'away' ? plan : [...plan, ...asked];
    return `    ${commandLine([command, path, '--with', harmless(changes.join('; '))])}`;
  });
  const intro =
    'How this plan bears what is in doubt, how it bears somebody away, and until when it is large enough:';
  return `\n${section('What to ask next', [paragraph(intro, '  '), ...commands].join('\n'), style)}\n`;
}

function changesOf({ choices }: ShownPlan, { varied }: PlanAnswer, counts: readonly string[]): string[] {
  return choices
    .filter(({ what, value }) => varied.find((one) => one.what === what)?.today !== value)
    .map(({ what, value }) => `${what}${counts.includes(what) ? ' / count' : ''}: ${value}`);
}
