import { formatPlain, formatShare } from '@buildweek/charts';
import type { HandLoad } from '@buildweek/results';
import type { Style } from '../terminal/style.ts';
import { numbers, tableText, words } from '../terminal/table.ts';

/** Load by hand calculation, one line for each resource with what it rests on below. */
export function handTable(loads: readonly HandLoad[], style: Style): string {
  const columns = [
    words('resource'),
    words('kind'),
    numbers('count'),
    numbers('hours asked for a week'),
    numbers('hours there'),
    numbers('load'),
  ];
  return tableText(
    columns,
    loads.map((load) => ({
      cells: [
        load.name,
        load.kind,
        String(load.count),
        formatPlain(load.demandHoursPerWeek),
        formatPlain(load.availableHoursPerWeek),
        formatShare(load.load) + (load.load >= 1 ? ' !' : ''),
      ],
      under: load.note,
    })),
    style,
  );
}
