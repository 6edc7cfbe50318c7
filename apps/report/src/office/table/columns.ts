import type { ReportDocument } from '@buildweek/results';
import { isStated } from '../content/origin-part.ts';
import { shownResults } from '../document.ts';
import type { FigureRow } from './figure-row.ts';

/** A column of the table of numbers: its heading, what stands in it, and its width in letters. */
export interface FigureColumn {
  readonly title: string;
  readonly width: number;
  readonly contentOf: (row: FigureRow) => string | number | null;
}

/** The columns, the same in every form of the table. */
export const FIGURE_COLUMNS: readonly FigureColumn[] = [
  { title: 'section', width: 22, contentOf: ({ section }) => section },
  { title: 'subject', width: 34, contentOf: ({ subject }) => subject },
  { title: 'measure', width: 54, contentOf: ({ measure }) => measure },
  { title: 'value', width: 18, contentOf: ({ value }) => value },
  { title: 'unit', width: 22, contentOf: ({ unit }) => unit },
  { title: 'low', width: 14, contentOf: ({ low }) => low },
  { title: 'high', width: 14, contentOf: ({ high }) => high },
  { title: 'interval', width: 12, contentOf: ({ interval }) => interval },
  { title: 'level', width: 8, contentOf: ({ level }) => level },
  { title: 'replications', width: 12, contentOf: ({ replications }) => replications },
  { title: 'note', width: 60, contentOf: ({ note }) => note },
];

/** Everything that was taken for granted as rows without numbers: what, its value in words, and where from. */
export function assumptionRows(document: ReportDocument): FigureRow[] {
  return [...shownResults(document).assumptions]
    .sort((one, other) => Number(isStated(one)) - Number(isStated(other)))
    .map(({ what, value, source, line }) => ({
      section: 'Assumptions',
      subject: what,
      measure: source,
      unit: '',
      value: null,
      low: null,
      high: null,
      interval: '',
      level: null,
      replications: null,
      note: line === null ? value : `${value} (line ${line})`,
    }));
}
