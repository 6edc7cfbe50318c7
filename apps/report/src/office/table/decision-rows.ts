import type { DecisionAnswer, PlanMeasure } from '@buildweek/results';
import { optionName } from '../content/options-part.ts';
import { type FigureName, type FigureRow, figureRow, knownRow } from './figure-row.ts';

const unitIn = (unit: PlanMeasure['unit'], currency: string | null): string =>
  unit.startsWith('money') && currency !== null ? unit.replace('money', currency) : unit;

/** The three numbers, the options, their differences and the doubts. */
export function decisionRows(decision: DecisionAnswer): FigureRow[] {
  return [...keyRows(decision), ...optionRows(decision), ...pairRows(decision), ...doubtRows(decision)];
}

function keyRows({ keyNumbers, currency }: DecisionAnswer): FigureRow[] {
  return keyNumbers.flatMap(({ label, unit, value, today, asked, note }) => {
    const of = (subject: string): FigureName => ({
      section: 'The decision',
      subject,
      measure: label,
      unit: unit === 'years' ? unit : unitIn(unit, currency),
    });
    return [
      figureRow({ ...of('recommended'), note }, value),
      ...(today === null ? [] : [figureRow(of('today'), today)]),
      ...(asked === null ? [] : [knownRow(of('asked for'), asked)]),
    ];
  });
}

function optionRows({ options, currency }: DecisionAnswer): FigureRow[] {
  return options.flatMap((option) => {
    const of = (measure: string, unit: string, note = ''): FigureName => ({
      section: 'Options',
      subject: optionName(option),
      measure,
      unit,
      note,
    });
    const amount = (measure: string, value: number | null, per: string): FigureRow[] =>
      value === null
        ? []
        : [knownRow(of(measure, `${currency ?? 'money'}${per}`, option.changes.join('; ')), value)];
    return [
      ...amount('committed cost', option.committedCost, ' per year'),
      ...amount('to be bought', option.purchase, ''),
      ...option.targets.flatMap(({ target, asked, value, verdict }) => [
        knownRow(of(`${target}: asked for`, 'share'), asked),
        figureRow(of(target, 'share', verdict), value),
      ]),
      ...option.measures.map(({ name, unit, value }) => figureRow(of(name, unitIn(unit, currency)), value)),
    ];
  });
}

function pairRows({ pairs, options, currency }: DecisionAnswer): FigureRow[] {
  const units = new Map(
    options.flatMap(({ measures }) =>
      measures.map(({ name, unit }) => [name, unitIn(unit, currency)] as const),
    ),
  );
  return pairs.flatMap(({ plan, against, differences }) =>
    differences.map(({ measure, difference, outcome }) =>
      figureRow(
        {
          section: 'Differences',
          subject: `${plan} less ${against}`,
          measure,
          unit: units.get(measure) ?? '',
          note: outcome,
        },
        difference,
      ),
    ),
  );
}

function doubtRows({ doubts, currency }: DecisionAnswer): FigureRow[] {
  if (doubts === null) return [];
  const unit = unitIn(doubts.measure.unit, currency);
  const of = (subject: string, measure: string, inUnit: string, note = ''): FigureName => ({
    section: 'What could go wrong',
    subject,
    measure,
    unit: inUnit,
    note,
  });
  return [
    figureRow(of('as stated', doubts.measure.name, unit), doubts.measure.asStated),
    ...doubts.doubts.flatMap(({ name, low, high, typical, explains }) => [
      ...[low, high].flatMap(({ factor, value, difference, outcome }) => [
        figureRow(of(name, `${doubts.measure.name} at ${factor} times`, unit), value),
        figureRow(of(name, `difference at ${factor} times`, unit, outcome), difference),
      ]),
      knownRow(of(name, 'most probable factor', 'times what is stated'), typical),
      figureRow(of(name, 'share of the variance that it explains', 'share'), explains),
    ]),
    figureRow(of('all doubts', 'share of the variance that they explain', 'share'), doubts.explainedTogether),
    ...[...doubts.held, ...(doubts.allHeld === null ? [] : [doubts.allHeld])].flatMap(
      ({ target, asStated, inWorlds }) => [
        figureRow(of(target, 'holds as stated', 'share of periods'), asStated),
        figureRow(of(target, 'holds in the drawn worlds', 'share of worlds'), inWorlds),
      ],
    ),
  ];
}
