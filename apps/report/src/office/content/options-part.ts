import { changeLine, formatLevel, OPTION_NAMES, PERCENT } from '@buildweek/charts';
import {
  bareMoneyText,
  type DecisionAnswer,
  type DecisionOption,
  type EstimateOrRefused,
  PIECE_COST_MEASURE,
  SPEED_MEASURE,
  WHOLE,
  writtenFigure,
  writtenUnit,
} from '@buildweek/results';
import type { Cell, Grid } from './block.ts';
import { Cells, numbers } from './cells.ts';

const MEETS: Readonly<Record<DecisionOption['meets'], string>> = {
  met: '✓ met',
  missed: '✗ missed',
  undecided: '? not decided',
  'not tested': 'not tested',
};

/** "As it is", "Recommended". */
export function optionName({ role }: DecisionOption): string {
  return OPTION_NAMES[role];
}

function valuesOf(found: readonly EstimateOrRefused[]): number[] {
  return found.flatMap((one) => (one.kind === 'estimate' ? [one.value] : []));
}

/** Measures that a slide has room for. */
const FIRST_MEASURES: readonly string[] = [SPEED_MEASURE, PIECE_COST_MEASURE];

/**
 * Today, the recommendation and its rivals side by side: one row for each respect in which they differ.
 *
 * @param isShort whether only what decides is shown, as on a slide
 */
export function optionsGrid({ options, currency }: DecisionAnswer, isShort = false): Grid[] {
  const cells = new Cells();
  const all = [...new Set(options.flatMap(({ measures }) => measures.map(({ name }) => name)))];
  const names = isShort ? all.filter((name) => FIRST_MEASURES.includes(name)) : all;
  const targets = [...new Set(options.flatMap((option) => option.targets.map(({ target }) => target)))];
  const amounts = (title: string, amountOf: (option: DecisionOption) => number | null): Cell[][] =>
    options.every((option) => amountOf(option) === null)
      ? []
      : [
          [
            `${title}, ${currency ?? 'money'}`,
            ...options.map((option) => {
              const amount = amountOf(option);
              return amount === null ? '' : bareMoneyText(amount, WHOLE);
            }),
          ],
        ];
  const rows: Cell[][] = [
    ['Changes', ...options.map(changeLine)],
    ['All targets', ...options.map(({ meets }) => MEETS[meets])],
    ...targets.map((target): Cell[] => [
      `${target}, %`,
      ...options.map((option) =>
        cells.estimate(option.targets.find((one) => one.target === target)?.value, PERCENT),
      ),
    ]),
    ...amounts('To be bought', ({ purchase }) => purchase),
    ...amounts('Committed cost a year', ({ committedCost }) => committedCost),
    ...names.map((name): Cell[] => {
      const found = options.map(({ measures }) => measures.find((one) => one.name === name));
      const measure = found.find((one) => one !== undefined);
      if (measure === undefined) return [];
      const unit = writtenUnit(
        measure.unit,
        valuesOf(found.flatMap((one) => (one === undefined ? [] : [one.value]))),
        currency,
      );
      return [
        `${measure.name}, ${unit.many}`,
        ...found.map((one): Cell => {
          if (one === undefined) return '';
          if (one.value.kind !== 'estimate') return cells.estimate(one.value, PERCENT);
          const { value, range } = writtenFigure(one.value, unit);
          return range === null ? value : { value, range: `${range.low} to ${range.high}` };
        }),
      ];
    }),
    ['Why not this one', ...options.map(({ why }) => why)],
  ];
  return cells.grid(
    'The options side by side, with intervals; all played on the same random numbers',
    [{ title: 'What' }, ...options.map((option) => numbers(optionName(option)))],
    rows.filter((row) => row.slice(1).some((cell) => cell !== '')),
  );
}

/** The differences between the options in words, each option by what it is here. */
export function differenceWords({ pairs, options, differencesLevel }: DecisionAnswer): string[] {
  if (pairs.length === 0) return [];
  const told = (sentence: string): string =>
    options.reduce(
      (words, option) => words.replaceAll(`“${option.name}”`, `“${optionName(option)}”`),
      sentence,
    );
  return [
    ...pairs.map(({ sentence }) => told(sentence)),
    `Each interval of a difference holds with ${formatLevel(differencesLevel)} confidence, so that all of them hold at once with the confidence of the answer.`,
  ];
}
