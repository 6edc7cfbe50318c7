import type { LearnedAnswer } from '@buildweek/results';
import { paragraph } from '../terminal/paragraph.ts';
import { listSection, section } from '../terminal/section.ts';
import { harmless, type Style } from '../terminal/style.ts';
import { tableText, words } from '../terminal/table.ts';

/** What was learned from a log, in the words in which it stands in the scenario. */
export function learnedWordsText({ values, verdict, tests, left }: LearnedAnswer, style: Style): string {
  const table = tableText(
    [words('of'), words('what'), words('learned'), words('from')],
    values.map(({ of, what, value, source, others }) => ({
      cells: [of, what, value, source],
      ...(others.length === 0 ? {} : { under: `or ${others.join(', or ')}` }),
    })),
    style,
  );
  return [
    section('Learned from the log', verdict.map((one) => paragraph(one, '  ')).join('\n'), style),
    table,
    listSection(
      'How jobs come in',
      tests.map(({ name, pValue, finding }) => `${harmless(name)}: ${finding} (p ${pText(pValue)})`),
      style,
    ),
    listSection('Not taken over', left, style),
  ]
    .filter((text) => text !== '')
    .join('\n\n');
}

function pText(p: number): string {
  return p < 0.001 ? 'below 0.001' : String(Number(p.toPrecision(2)));
}
