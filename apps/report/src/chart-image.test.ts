import { chartsOf } from '@buildweek/charts';
import { resultsFixture } from '@buildweek/charts/fixture';
import { textMetrics } from 'vega';
import type { TopLevelSpec } from 'vega-lite';
import { expect, test } from 'vitest';
import { chartImage } from './chart-image.ts';

const bars: TopLevelSpec = {
  data: { values: [{ name: '<img src=x onerror=alert(1)>', value: 3 }] },
  mark: 'bar',
  encoding: { y: { field: 'name', type: 'nominal' }, x: { field: 'value', type: 'quantitative' } },
};

test('A chart is drawn without a screen, as one SVG element of the size that is said.', () => {
  const image = chartImage(bars);
  expect(image.svg.startsWith('<svg ')).toBe(true);
  expect(image.svg.endsWith('</svg>')).toBe(true);
  expect(image.svg).toContain(`viewBox="0 0 ${image.width} ${image.height}"`);
});

test('A drawing that is narrower than asked for is given room, not scaled.', () => {
  const { svg, width, height } = chartImage(bars);
  const roomy = chartImage(bars, width + 100);
  expect([roomy.width, roomy.height]).toEqual([width + 100, height]);
  expect(roomy.svg.length).toBe(svg.length);
});

test('Names in a chart are text.', () => {
  const { svg } = chartImage(bars);
  expect(svg).not.toContain('<img');
  expect(svg).toContain('&lt;img src=x onerror=alert(1)&gt;');
});

test('A chart needs no code to be evaluated.', () => {
  const native = globalThis.Function;
  globalThis.Function = (() => {
    throw new Error('code was evaluated');
  }) as unknown as FunctionConstructor;
  try {
    for (const chart of chartsOf(resultsFixture(), 'narrow')) chartImage(chart.spec);
  } finally {
    globalThis.Function = native;
  }
});

test('A chart holds no styles, scripts, links or images.', () => {
  for (const chart of chartsOf(resultsFixture())) {
    expect(chartImage(chart.spec).svg, chart.id).not.toMatch(/ style=|<script|<a |<image|href=/);
  }
});

test('Drawing leaves the measure of text as it was.', () => {
  const before = textMetrics.width;
  chartImage(bars);
  expect(textMetrics.width).toBe(before);
});

test('Compacting numbers never touches text.', () => {
  const name = 'x d="M1.23456789,2" y';
  const spec: TopLevelSpec = { ...bars, data: { values: [{ name, value: 1 / 3 }] } };
  expect(chartImage(spec).svg).toContain('x d="M1.23456789,2" y');
});
