import { confidenceNote, targetConfidence, targetFound, VERDICT_MARKS } from '@buildweek/charts';
import type { Results } from '@buildweek/results';
import { paragraph } from '../terminal/paragraph.ts';
import type { Style } from '../terminal/style.ts';
import { tableText, words } from '../terminal/table.ts';

/** Each target with what was found and its verdict; below, what each means. */
export function targetTable({ targets, run }: Pick<Results, 'targets' | 'run'>, style: Style): string {
  const columns = [words('target'), words('found'), words('verdict'), words('')];
  const rows = targets.map((target) => ({
    cells: [
      target.wording,
      targetFound(target, run.weeks),
      `${VERDICT_MARKS[target.verdict]} ${target.verdict}`,
      targetConfidence(target),
    ],
  }));
  return [
    tableText(columns, rows, style),
    ...targets.map(({ wording, meaning }) => paragraph(`${wording}: ${meaning}`, '  - ')),
    paragraph(confidenceNote(targets), '  '),
  ].join('\n');
}
