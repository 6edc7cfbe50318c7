import { formatEstimate, MILLIMETRES, PERCENT, PLAIN, type Unit } from '@buildweek/charts';
import type { Builds, EstimateOrRefused } from '@buildweek/results';
import type { Style } from '../terminal/style.ts';
import { numbers, tableText, words } from '../terminal/table.ts';

const KILOGRAMS: Unit = { size: 1, one: 'kg', many: 'kg', leastDecimals: 1 };

/** How full and how high the builds are that follow from the shapes of their parts, and what powder they take. */
export function buildsTables(builds: readonly Builds[], style: Style): string {
  const powders = builds.flatMap(({ group, powder }) => (powder === null ? [] : [{ group, ...powder }]));
  const fills = tableText(
    [
      words('machines'),
      numbers('parts in a build'),
      numbers('fill'),
      numbers('height, mm'),
      numbers('of at most'),
      numbers('part in the cake'),
    ],
    builds.map((one) => ({
      cells: [
        one.group,
        cell(one.partsPerBuild, PLAIN),
        cell(one.meanFill, PERCENT),
        cell(one.meanHeight, MILLIMETRES, false),
        String(one.mostHeight),
        one.kind === 'platform' ? '' : cell(one.packingDensity, PERCENT),
      ],
    })),
    style,
  );
  if (powders.length === 0) return fills;
  const powder = tableText(
    [
      words('powder, kg a week'),
      numbers('virgin, in'),
      numbers('used, in'),
      numbers('comes back'),
      numbers('in parts'),
      numbers('stock of used grows by'),
    ],
    powders.map(({ group, virgin, used, returned, inParts, surplus }) => ({
      cells: [
        group,
        ...[virgin, used, returned, inParts, surplus].map((mass) => cell(mass, KILOGRAMS, false)),
      ],
    })),
    style,
  );
  return `${fills}\n\n${powder}`;
}

function cell(estimate: EstimateOrRefused, unit: Unit, named = true): string {
  if (estimate.kind !== 'estimate') return 'never ran';
  return formatEstimate(estimate, named ? unit : { ...unit, one: '', many: '' }).trim();
}
