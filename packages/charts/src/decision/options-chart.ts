import {
  bareMoneyText,
  type DecisionAnswer,
  type DecisionOption,
  joinWords,
  type TargetOfPlan,
  WHOLE,
} from '@buildweek/results';
import type { TopLevelSpec } from 'vega-lite';
import { CHART_WIDTH, type Chart, type ChartSize, type Layer, type LayeredSpec } from '../chart.ts';
import { formatEstimate, formatLevel, formatValue, keptTogether, PERCENT } from '../format.ts';
import { CLOSED_HOURS, INK, LINE, MUTED_INK, PAPER, SECOND_LINE } from '../palette.ts';
import { wrapLines } from '../part/wrap-lines.ts';
import { ROW, rowAxis } from '../row-axis.ts';
import { fitName, textWidth } from '../text-width.ts';
import { FONT_SIZE, themeFor } from '../theme.ts';
import {
  changeLine,
  changesBeside,
  OPTION_NAMES,
  reaches,
  shareRange,
  tellingTargets,
} from './option-words.ts';

const MOST_TARGETS = 3;
const STEP: Readonly<Record<ChartSize, number>> = { wide: 44, narrow: 62 };
const NAME_ROOM = 225;
const COST_ROOM = 132;
const GAP = 26;
/** As the measures of plans call what a lab costs in a year. */
const COST_MEASURE = 'cost of the lab';
const VERDICTS = ['reached', 'missed', 'not decided'] as const;

/**
 * The options as rows, the targets that tell them apart as panels: what each reaches, with its interval, against what
 * is asked for, and what it costs. The one chart that shows why a plan is recommended.
 */
export function optionsChart(answer: DecisionAnswer, size: ChartSize = 'wide'): Chart[] {
  const positions = tellingTargets(answer, MOST_TARGETS);
  if (positions.length === 0) return [];
  const { options, currency } = answer;
  const hasCost = currency !== null && options.some((option) => costOf(option) !== null);
  const room = hasCost ? COST_ROOM + GAP : 20;
  const plots = CHART_WIDTH.wide - NAME_ROOM - room - GAP * (positions.length - 1);
  const width = size === 'wide' ? Math.floor(plots / positions.length) : CHART_WIDTH.narrow - 24;
  const panels = [
    ...positions.map((position, index) => panel(answer, position, index, width, size)),
    ...(hasCost && size === 'wide' ? [costPanel(options, currency)] : []),
  ];
  const spec = {
    config: themeFor(size),
    ...(size === 'wide' ? { hconcat: panels, spacing: GAP } : { vconcat: panels, spacing: 22 }),
  } as TopLevelSpec;
  return [
    {
      id: 'options',
      title: titleOf(answer),
      description: descriptionOf(answer),
      spec,
      footnote: `Each row is a plan, each panel a target: the dashed line is what is asked for, the grey side falls short of it. A circle reaches the target, a diamond misses it, an open square is not decided. Numbers are shares; lines through the points are ${formatLevel(answer.run.level)} confidence intervals from ${answer.run.replications} replications of each plan on the same random numbers.`,
    },
  ];
}

function titleOf({ options, currency }: DecisionAnswer): string {
  const recommended = options.find(({ role }) => role === 'recommended') ?? options[0];
  if (recommended?.meets !== 'met') return 'No plan reaches every target; the recommended one comes closest';
  const name = recommended.role === 'today' ? 'the lab as it is' : 'the recommended plan';
  return `Of the plans, ${name} is the ${currency === null ? 'smallest' : 'cheapest'} that reaches every target`;
}

function panel(
  { options }: DecisionAnswer,
  position: number,
  index: number,
  width: number,
  size: ChartSize,
): LayeredSpec {
  const wide = size === 'wide';
  const targets = options.map(({ targets: own }) => own[position]);
  const [first] = targets;
  const asked = first?.asked ?? 0;
  const better = first?.better ?? 'higher';
  const domain = domainOf(targets, asked);
  const fontSize = FONT_SIZE[size];
  const title = wrapLines(keptTogether(first?.target ?? '').split(' '), ' ', width, fontSize);
  return {
    title: { text: title.slice(0, 3), frame: 'group', fontSize, offset: 10 },
    width,
    height: STEP[size] * options.length,
    layer: [
      ...groundLayers(domain, asked, better),
      ...pointLayers(targets, wide),
      ...(index === 0 || !wide ? nameLayers(options, size) : []),
    ],
    encoding: {
      x: {
        type: 'quantitative',
        scale: { domain, nice: false },
        axis: { title: null, format: '.0%', tickCount: 4, grid: false },
      },
      y: rowAxis(options.length),
    },
  };
}

function domainOf(targets: readonly (TargetOfPlan | undefined)[], asked: number): [number, number] {
  const ends = targets.flatMap((target) => {
    if (target?.value.kind !== 'estimate') return [];
    const { low, high } = shareRange(target.value);
    return [low, high];
  });
  const low = Math.min(asked, ...ends);
  const high = Math.max(asked, ...ends);
  const margin = Math.max(0.02, (high - low) * 0.12);
  return [Math.max(0, low - margin), Math.min(1.02, high + margin)];
}

const AT = (field: string) => ({ field, type: 'quantitative' }) as const;

/** The side that falls short, and the line of what is asked for. */
function groundLayers(
  [low, high]: readonly [number, number],
  asked: number,
  better: 'higher' | 'lower',
): Layer[] {
  const short = better === 'higher' ? { from: low, to: asked } : { from: asked, to: high };
  return [
    {
      data: { values: [short] },
      mark: { type: 'rect', color: CLOSED_HOURS, opacity: 1 },
      encoding: { x: AT('from'), x2: { field: 'to' } },
    },
    {
      data: { values: [{ asked }] },
      mark: { type: 'rule', color: SECOND_LINE, strokeWidth: 2, strokeDash: [6, 3] },
      encoding: { x: AT('asked') },
    },
  ];
}

function pointLayers(targets: readonly (TargetOfPlan | undefined)[], wide: boolean): Layer[] {
  const values = targets.flatMap((target, row) => {
    if (target === undefined || target.value.kind !== 'estimate') return [];
    const { value } = target;
    return [
      {
        row,
        value: value.value,
        ...shareRange(value),
        state: reaches(target),
        words: labelOf(formatValue(value, PERCENT), reaches(target)),
      },
    ];
  });
  const missing = targets.flatMap((target, row) =>
    target === undefined || target.value.kind === 'estimate' ? [] : [{ row, words: 'not given' }],
  );
  const domain = [...VERDICTS];
  return [
    {
      data: { values },
      mark: { type: 'rule', color: INK, strokeWidth: 2 },
      encoding: { x: AT('low'), x2: { field: 'high' }, y: ROW },
    },
    {
      data: { values },
      mark: { type: 'point', filled: true, size: 120, opacity: 1, stroke: INK, strokeWidth: 1.4 },
      encoding: {
        x: AT('value'),
        y: ROW,
        fill: {
          field: 'state',
          type: 'nominal',
          scale: { domain, range: [LINE, SECOND_LINE, PAPER] },
          legend: null,
        },
        shape: {
          field: 'state',
          type: 'nominal',
          scale: { domain, range: ['circle', 'diamond', 'square'] },
          legend: null,
        },
      },
    },
    ...labelLayers(values, wide),
    {
      data: { values: missing },
      mark: { type: 'text', align: 'left', x: 4, color: MUTED_INK },
      encoding: { y: ROW, text: { field: 'words' } },
    },
  ];
}

/** Values above their points, or below them where names stand above; each on a ground of its own, so that the line of what is asked for does not cross it. */
function labelLayers(
  values: readonly { readonly state: (typeof VERDICTS)[number] }[],
  wide: boolean,
): Layer[] {
  const encoding = { x: AT('value'), y: ROW, text: { field: 'words' } };
  const mark = {
    type: 'text',
    align: 'center',
    baseline: wide ? 'bottom' : 'top',
    dy: wide ? -9 : 9,
    fontSize: wide ? 12 : 11,
  } as const;
  const ground = (isMissed: boolean): Layer => ({
    data: { values: values.filter(({ state }) => (state === 'missed') === isMissed) },
    mark: { ...mark, stroke: isMissed ? CLOSED_HOURS : PAPER, strokeWidth: 4 },
    encoding,
  });
  return [ground(true), ground(false), { data: { values: [...values] }, mark, encoding }];
}

/** What a point says of itself, so that no key is needed. */
function labelOf(value: string, state: (typeof VERDICTS)[number]): string {
  return state === 'reached' ? value : `${value}, ${state === 'missed' ? 'missed' : 'open'}`;
}

function nameLayers(options: readonly DecisionOption[], size: ChartSize): Layer[] {
  const wide = size === 'wide';
  const fontSize = FONT_SIZE[size];
  const room = wide ? NAME_ROOM - 20 : CHART_WIDTH.narrow - 30;
  const recommended = options.find(({ role }) => role === 'recommended');
  const rows = options.map((option, row) => ({
    row,
    name: OPTION_NAMES[option.role],
    changes: fitName(changesBeside(option, recommended), room, fontSize - 1),
    strong: option.role === 'recommended',
  }));
  const at = wide ? { x: -NAME_ROOM + 8 } : { x: 0 };
  const [above, below] = wide ? [-9, 9] : [-26, -24 + 13];
  return [
    ...[true, false].map(
      (strong): Layer => ({
        data: { values: rows.filter((row) => row.strong === strong) },
        mark: {
          type: 'text',
          align: 'left',
          baseline: 'middle',
          ...at,
          dy: above,
          fontSize: fontSize + 1,
          fontWeight: 'bold',
          color: strong ? LINE : INK,
        },
        encoding: { y: ROW, text: { field: 'name' } },
      }),
    ),
    {
      data: {
        values: wide
          ? rows
          : rows.map((row) => ({
              ...row,
              changes: fitName(
                row.changes,
                room - textWidth(row.name, fontSize + 1, true) - 14,
                fontSize - 1,
              ),
            })),
      },
      mark: {
        type: 'text',
        align: 'left',
        baseline: 'middle',
        ...at,
        dy: below,
        fontSize: fontSize - 1,
        color: MUTED_INK,
      },
      encoding: { y: ROW, text: { field: 'changes' } },
    },
  ];
}

/** What each option costs, as words beside the panels. */
function costPanel(options: readonly DecisionOption[], currency: string): LayeredSpec {
  const rows = options.map((option, row) => {
    const { purchase } = option;
    const cost = costOf(option);
    return {
      row,
      cost: cost === null ? '' : `${bareMoneyText(cost, WHOLE)} a year`,
      buy:
        purchase === null
          ? ''
          : purchase === 0
            ? 'nothing to buy'
            : `${bareMoneyText(purchase, WHOLE)} to buy`,
    };
  });
  const words = (field: 'cost' | 'buy', dy: number, strong: boolean): Layer => ({
    data: { values: rows },
    mark: {
      type: 'text',
      align: 'left',
      baseline: 'middle',
      x: 0,
      dy,
      fontWeight: strong ? 'bold' : 'normal',
      color: strong ? INK : MUTED_INK,
    },
    encoding: { y: ROW, text: { field } },
  });
  return {
    title: { text: `Cost, ${currency}`, frame: 'group', fontSize: FONT_SIZE.wide, offset: 10 },
    width: COST_ROOM,
    height: STEP.wide * options.length,
    layer: [words('cost', -9, true), words('buy', 9, false)],
    encoding: { y: rowAxis(options.length) },
  };
}

/** Cost of a year as it was played; what is committed where that is not known. */
function costOf({ measures, committedCost }: DecisionOption): number | null {
  const played = measures.find(({ name }) => name === COST_MEASURE)?.value;
  return played?.kind === 'estimate' ? played.value : committedCost;
}

function descriptionOf({ options, currency }: DecisionAnswer): string {
  return options
    .map((option) => {
      const targets = option.targets.map(
        (target) =>
          `“${target.target}” ${target.value.kind === 'estimate' ? formatEstimate(target.value, PERCENT) : 'not given'}, ${reaches(target)}`,
      );
      const cost =
        costOf(option) === null
          ? ''
          : `; ${bareMoneyText(costOf(option) ?? 0, WHOLE)} ${currency ?? ''} a year, ${bareMoneyText(option.purchase ?? 0, WHOLE)} ${currency ?? ''} to buy`;
      return `${OPTION_NAMES[option.role]} (${changeLine(option)}): ${joinWords(targets)}${cost}.`;
    })
    .join(' ');
}
