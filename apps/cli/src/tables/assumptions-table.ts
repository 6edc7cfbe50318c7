import type { Assumption } from '@buildweek/results';
import type { Style } from '../terminal/style.ts';
import { tableText, words } from '../terminal/table.ts';

/** The lab as understood: every value, and whether the file, a machine class or the program says so. */
export function assumptionsTable(assumptions: readonly Assumption[], style: Style): string {
  return tableText(
    [words('what'), words('value'), words('from')],
    assumptions.map(({ what, value, source, line }) => ({
      cells: [what, value, line === null ? source : `line ${line}`],
    })),
    style,
  );
}
