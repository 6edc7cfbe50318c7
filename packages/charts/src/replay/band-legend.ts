import type { Layer } from '../chart.ts';
import { LINE, SECOND_LINE } from '../palette.ts';

export const HAPPENED = 'what happened';
export const EXPECTED = 'expected';
const NAMES = [HAPPENED, EXPECTED];
const COLOURS = [SECOND_LINE, LINE];

/** A line that is one of the two that the legend names. */
export function namedLine(
  values: readonly Record<string, number>[],
  field: string,
  name: typeof HAPPENED | typeof EXPECTED,
  hasLegend: boolean,
  along: 'x' | 'y' = 'x',
): Layer[] {
  const series = {
    datum: name,
    type: 'nominal' as const,
    scale: { domain: NAMES, range: COLOURS },
    legend: hasLegend
      ? { title: null, orient: 'top' as const, symbolType: 'stroke', symbolStrokeWidth: 2, offset: 4 }
      : null,
  };
  const place = { field: 'at', type: 'quantitative' } as const;
  const value = { field, type: 'quantitative' } as const;
  const places = along === 'x' ? { x: place, y: value } : { y: place, x: value };
  const isDashed = name === EXPECTED;
  const line: Layer = {
    data: { values: [...values] },
    mark: {
      type: 'line',
      strokeWidth: isDashed ? 1.4 : 2,
      order: false,
      ...(isDashed ? { strokeDash: [5, 3] } : {}),
    },
    encoding: { ...places, color: series },
  };
  if (isDashed) return [line];
  return [
    line,
    {
      data: { values: [...values] },
      mark: { type: 'point', filled: true, color: SECOND_LINE, size: 26, opacity: 1 },
      encoding: places,
    },
  ];
}
