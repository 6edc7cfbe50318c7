import type { AwayAnswer, AwayGroup, Band } from '@buildweek/results';
import { type BandRow, bandRows } from '../band-layers.ts';
import { CHART_WIDTH, type Chart, type ChartSize, type Layer, type LayeredSpec } from '../chart.ts';
import { formatLevel, formatPlain, formatShare, shorten } from '../format.ts';
import { BAND, CLOSED_HOURS, INK, LINE, MUTED_INK, SECOND_BAND, SECOND_LINE } from '../palette.ts';
import { themeFor } from '../theme.ts';
import { weekAxis } from '../time-axes.ts';

const THERE = 'everybody there';
const AWAY = 'one away';

const X = { field: 'x', type: 'quantitative' } as const;

function curve(rows: readonly BandRow[], isAway: boolean, legend: boolean): Layer[] {
  return [
    {
      data: { values: [...rows] },
      mark: { type: 'area', color: isAway ? SECOND_BAND : BAND, opacity: 0.7 },
      encoding: { x: X, y: { field: 'low', type: 'quantitative' }, y2: { field: 'high' } },
    },
    {
      data: { values: [...rows] },
      mark: { type: 'line', strokeWidth: 1.8, ...(isAway ? { strokeDash: [6, 4] } : {}) },
      encoding: {
        x: X,
        y: { field: 'value', type: 'quantitative' },
        color: {
          datum: isAway ? AWAY : THERE,
          type: 'nominal',
          scale: { domain: [THERE, AWAY], range: [LINE, SECOND_LINE] },
          legend: legend
            ? { title: null, orient: 'top', symbolType: 'stroke', symbolStrokeWidth: 2, offset: 4 }
            : null,
        },
      },
    },
  ];
}

/** The weeks of the absence as a ground; a point stands for the average of its week. */
function absence({ fromWeek, awayWeeks }: AwayAnswer): Layer {
  return {
    data: { values: [{ from: fromWeek - 0.5, to: fromWeek + awayWeeks - 0.5 }] },
    mark: { type: 'rect', color: CLOSED_HOURS, opacity: 1 },
    encoding: { x: { field: 'from', type: 'quantitative' }, x2: { field: 'to' } },
  };
}

function normalLine(most: readonly number[]): Layer {
  return {
    data: { values: most.map((value, week) => ({ x: week + 1, value })) },
    mark: { type: 'line', color: MUTED_INK, strokeWidth: 1.2, strokeDash: [2, 3] },
    encoding: { x: X, y: { field: 'value', type: 'quantitative' } },
  };
}

function panel(
  answer: AwayAnswer,
  there: Band,
  away: Band,
  extra: readonly Layer[],
  axis: { title: string; format: string; domain: [number, number] },
  size: ChartSize,
  isFirst: boolean,
): LayeredSpec {
  const rows = (band: Band): BandRow[] => bandRows(band, (index) => index + 1);
  return {
    width: CHART_WIDTH[size] - (size === 'wide' ? 90 : 74),
    height: size === 'wide' ? 170 : 150,
    layer: [
      absence(answer),
      ...curve(rows(there), false, isFirst),
      ...curve(rows(away), true, isFirst),
      ...extra,
    ],
    encoding: {
      x: weekAxis({ lab: answer, run: answer.run }, size, !isFirst),
      y: {
        type: 'quantitative',
        axis: { title: axis.title, format: axis.format, tickCount: 4 },
        scale: { domain: axis.domain, nice: false, zero: false },
      },
    },
  };
}

function groupChart(answer: AwayAnswer, group: AwayGroup, position: number, size: ChartSize): Chart {
  const { there } = answer;
  const panels: LayeredSpec[] = [];
  if (there.onTimeByWeek !== null && group.onTimeByWeek !== null) {
    const least = Math.min(...there.onTimeByWeek.low, ...group.onTimeByWeek.low);
    panels.push(
      panel(
        answer,
        there.onTimeByWeek,
        group.onTimeByWeek,
        [],
        {
          title: size === 'wide' ? 'on time, by week of arrival' : 'on time',
          format: '.0%',
          domain: [Math.max(0, least - 0.03), 1],
        },
        size,
        true,
      ),
    );
  }
  const top = Math.max(...there.jobsInLab.high, ...group.jobsInLab.high, ...there.most);
  panels.push(
    panel(
      answer,
      there.jobsInLab,
      group.jobsInLab,
      [normalLine(there.most)],
      { title: 'jobs in the lab', format: '.0f', domain: [0, 1.05 * top] },
      size,
      panels.length === 0,
    ),
  );
  const { weeks } = group.recovery;
  const back =
    weeks === null
      ? 'the lab has not recovered in the weeks that were played'
      : weeks === 0
        ? 'the lab is as usual by the return'
        : `recovery takes ${weeks} ${weeks === 1 ? 'week' : 'weeks'}`;
  const onTime = group.onTimeByWeek;
  return {
    id: `away-${position + 1}`,
    title: `One of “${shorten(group.group, 50)}” away: ${back}`,
    description:
      `Jobs in the lab week by week, one away: ${group.jobsInLab.value.map(formatPlain).join(', ')}; everybody there: ${there.jobsInLab.value.map(formatPlain).join(', ')}.` +
      (onTime === null
        ? ''
        : ` On time, of the jobs that come in each week, one away: ${onTime.value.map(formatShare).join(', ')}; everybody there: ${(there.onTimeByWeek?.value ?? []).map(formatShare).join(', ')}.`),
    spec: {
      config: { ...themeFor(size), rule: { color: INK } },
      vconcat: panels,
      // One legend, on top of the first panel.
      resolve: { scale: { color: 'independent' } },
    },
    footnote: `Grey ground: the weeks of the absence. Shaded: ${formatLevel(answer.run.level)} confidence intervals of the averages, from ${answer.run.replications} replications on the same random numbers. Dotted: up to here counts as back to normal (${answer.normalBand}).`,
  };
}

/** The charts of an absence: one for each group of people. */
export function awayChartsOf(answer: AwayAnswer, size: ChartSize = 'wide'): Chart[] {
  return answer.groups.map((group, position) => groupChart(answer, group, position, size));
}
