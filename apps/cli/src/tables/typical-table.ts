import type { TypicalClass, TypicalParameter } from '@buildweek/scenario';
import { section } from '../terminal/section.ts';
import type { Style } from '../terminal/style.ts';
import { numbers, tableText, words } from '../terminal/table.ts';

const COMMON_PRACTICE = 'common practice, no source';
const USES: Readonly<Record<TypicalParameter['use'], string>> = {
  'stands in': '',
  'for routes': 'for the times of a route',
  'for planning money later': 'for planning money; not used yet',
};

/** One generic class with what is low, typical and high. */
export function typicalTable({ name, kind, process, parameters }: TypicalClass, style: Style): string {
  const title = kind === 'machines' ? `${name} (machines, ${process})` : `${name} (stations)`;
  const table = tableText(
    [words('what'), numbers('low'), numbers('typical'), numbers('high'), words('unit'), words('remark')],
    parameters.map((parameter) => ({
      cells: [
        parameter.name,
        String(parameter.low),
        String(parameter.typical),
        String(parameter.high),
        parameter.unit,
        USES[parameter.use],
      ],
      ...(parameter.source === COMMON_PRACTICE ? {} : { under: parameter.source }),
    })),
    style,
  );
  return section(title, table, style);
}
