import type { TopLevelSpec } from 'vega-lite';

/** `wide` for a screen or a sheet of paper, `narrow` for a telephone. */
export type ChartSize = 'wide' | 'narrow';

/** A chart with everything that a reader needs around it. */
export interface Chart {
  readonly id: string;
  /** What it shows, a finding in words where there is one. */
  readonly title: string;
  /** The text alternative, with the numbers. */
  readonly description: string;
  readonly spec: TopLevelSpec;
  /** How to read it, and what the drawn uncertainty is. */
  readonly footnote: string;
}

/** Width of a whole chart in CSS pixels, labels included. */
export const CHART_WIDTH: Readonly<Record<ChartSize, number>> = { wide: 860, narrow: 340 };

/** A chart made of layers. */
export type LayeredSpec = Extract<TopLevelSpec, { layer: unknown }>;

/** A layer of a layered chart. */
export type Layer = LayeredSpec['layer'][number];

type Encoding = NonNullable<LayeredSpec['encoding']>;

/** What says how a layered chart places its marks, with scale and axis. */
export type HorizontalAxis = NonNullable<Encoding['x']>;
export type VerticalAxis = NonNullable<Encoding['y']>;
