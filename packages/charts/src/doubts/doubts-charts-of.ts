import { type DoubtsAnswer, periodName } from '@buildweek/results';
import type { Chart, ChartSize } from '../chart.ts';
import { formatEstimate, formatLevel, formatOrReason, PERCENT, shorten } from '../format.ts';
import { LINE, PAPER } from '../palette.ts';
import { type ShareMark, shareRows } from './share-rows.ts';
import { tornado } from './tornado.ts';

/** In which share of the periods targets hold, as stated and in the drawn worlds. */
function heldChart(answer: DoubtsAnswer, size: ChartSize): Chart {
  const held = answer.allHeld === null ? answer.held : [...answer.held, answer.allHeld];
  const marks = held.flatMap(({ asStated, inWorlds }, row): ShareMark[] => [
    { row, lane: 0, share: asStated },
    { row, lane: 1, share: inWorlds },
  ]);
  const worlds = held.map(({ inWorlds }) => formatEstimate(inWorlds, PERCENT));
  const whole = answer.allHeld ?? answer.held[0];
  const period = periodName(answer.run.weeks).replace(/^(quarter|period)/, '$1s');
  return {
    id: 'held',
    title: `The plan holds in ${whole === undefined ? '' : formatEstimate(whole.inWorlds, PERCENT)} of the worlds that were described`,
    description: held
      .map(
        ({ target, asStated, inWorlds }) =>
          `${target}: as stated ${formatEstimate(asStated, PERCENT)}, in the drawn worlds ${formatEstimate(inWorlds, PERCENT)}.`,
      )
      .join(' '),
    spec: shareRows(
      held.map(({ target }) => target),
      { title: 'in drawn worlds', words: worlds },
      [
        { name: 'as the scenario states it', colour: PAPER, shape: 'square' },
        { name: 'in the drawn worlds', colour: LINE, shape: 'circle' },
      ],
      marks,
      `share of ${period} in which the target is met`,
      size,
    ),
    footnote: `Lines: exact ${formatLevel(answer.run.level)} confidence intervals, from ${answer.run.replications} ${period} as stated and from ${answer.worlds} drawn worlds with one each.`,
  };
}

/** Which doubt explains how much of the differences between worlds. */
function explainedChart(answer: DoubtsAnswer, size: ChartSize): Chart {
  const told = answer.doubts
    .flatMap(({ name, explains }) => (explains.kind === 'estimate' ? [{ name, explains }] : []))
    .sort((one, other) => other.explains.value - one.explains.value);
  const words = told.map(({ explains }) => formatEstimate(explains, PERCENT));
  const [first] = told;
  return {
    id: 'explained',
    title: `Worth measuring first: “${shorten(first?.name ?? '', 60)}”`,
    description: `${told.map(({ name }, row) => `${name}: ${words[row]}.`).join(' ')} All together: ${formatOrReason(answer.explainedTogether, PERCENT)}.`,
    spec: shareRows(
      told.map(({ name }) => name),
      { title: 'explains', words },
      [{ name: 'explains', colour: LINE, shape: 'circle' }],
      told.map(({ explains }, row) => ({ row, lane: 0, share: explains })),
      `share of what “${shorten(answer.measure.name, size === 'wide' ? 50 : 18)}” differs by`,
      size,
    ),
    footnote: `Squared standardized regression coefficients over ${answer.worlds} drawn worlds${answer.measure.isRanked ? ', of ranks, since some worlds lie beyond the end of what was played' : ''}. Lines: ${formatLevel(answer.run.level)} intervals of the jackknife over twenty sections. All doubts together: ${formatOrReason(answer.explainedTogether, PERCENT)}; the rest is the luck of a period, and what doubts do together or out of proportion.`,
  };
}

/** The charts of an answer to doubts: effects one at a time, whether targets hold, what explains the differences. */
export function doubtsChartsOf(answer: DoubtsAnswer, size: ChartSize = 'wide'): Chart[] {
  const hasDifferences = answer.doubts.some(({ effect }) => effect !== null);
  const hasShares = answer.doubts.some(({ explains }) => explains.kind === 'estimate');
  return [
    ...(answer.held.length > 0 ? [heldChart(answer, size)] : []),
    ...(hasDifferences ? [tornado(answer, size)] : []),
    ...(hasShares ? [explainedChart(answer, size)] : []),
  ];
}
