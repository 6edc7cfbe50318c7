import { type Chart, chartsOf, doubtsChartsOf } from '@buildweek/charts';
import type { ReportDocument, Results } from '@buildweek/results';
import { resetSVGDefIds } from 'vega';
import { keyNumbersGrid } from '../content/lead-time-part.ts';
import { caseGrid } from '../content/money-part.ts';
import { differenceWords, optionsGrid } from '../content/options-part.ts';
import { isStated, originFacts } from '../content/origin-part.ts';
import { shortTargetsGrid } from '../content/targets-part.ts';
import { equipmentTroubleGrid } from '../content/trouble-part.ts';
import { isDecision, nameOf, shownResults, titleOf } from '../document.ts';
import { firstLookOf } from '../first-look.ts';
import { CONTENT_HEIGHT, CONTENT_WIDTH, Deck, SLIDE } from './deck.ts';
import { finishDeck } from './finish-deck.ts';
import { addFootnote, decisionSlide, reasonSlide } from './first-slides.ts';
import { addCosts, addHours, addLeadTimes, addMachines } from './native-charts.ts';
import { addChartPicture } from './slide-chart.ts';
import { addTable } from './slide-table.ts';
import { cautionSlide, originSlide } from './word-slides.ts';

const WHOLE = { x: SLIDE.left, y: SLIDE.top, w: CONTENT_WIDTH, h: CONTENT_HEIGHT - 0.45 } as const;

/**
 * Slides for a meeting, at most ten, of the shape 16:9: the decision with its numbers, why, the options, where the hours
 * go, how long jobs take, machines and people, money, what could go wrong, cautions and assumptions, how it was
 * computed; what the document does not have is left out. Bars that show their intervals are charts that the reader's
 * program can edit, all others pictures with their words. The notes hold what each slide rests on.
 *
 * The same document gives the same bytes: the file names no times and no person.
 */
export async function slidesOf(document: ReportDocument): Promise<Uint8Array> {
  resetSVGDefIds();
  const results = shownResults(document);
  const look = firstLookOf(document);
  const deck = new Deck(titleOf(document), nameOf(document));
  const notes = restsOn(results);
  decisionSlide(deck, look, notes);
  // The chart of a run that shows why is the one of the hours, which follows as a chart that can be edited.
  if (isDecision(document)) reasonSlide(deck, look, notes);
  optionsSlide(deck, document, notes);
  chartSlides(deck, results, notes);
  moneySlide(deck, results, notes);
  doubtsSlide(deck, document, notes);
  cautionSlide(deck, document, defaultsOf(results));
  originSlide(deck, results, originFacts(results));
  return finishDeck(deck);
}

/** What every number rests on, for the notes. */
function restsOn({ run, warnings }: Results): string[] {
  return [
    `Played ${run.replications} times over ${run.weeks} weeks, seed “${run.seed}”; intervals hold with ${run.level * 100} % confidence.`,
    ...warnings,
  ];
}

function defaultsOf({ assumptions }: Results): string[] {
  return assumptions
    .filter((one) => !isStated(one))
    .map(({ what, value, source }) => `${what}: ${value} (${source})`);
}

function optionsSlide(deck: Deck, document: ReportDocument, notes: readonly string[]): void {
  if (!isDecision(document)) {
    foundSlide(deck, document, notes);
    return;
  }
  const [grid] = optionsGrid(document, true);
  if (grid === undefined) return;
  const differences = differenceWords(document);
  const slide = deck.slide('The options side by side', [
    grid.caption,
    ...grid.reasons,
    ...differences,
    ...notes,
  ]);
  const left = addTable(slide, grid, { fontSize: 13, place: WHOLE, firstColumn: 0.26 });
  addFootnote(slide, sentences([grid.caption, ...numbered(grid.reasons), moreRows(left)]));
}

/** What was asked of a lab, and the few numbers that a meeting asks for. */
function foundSlide(deck: Deck, results: Results, notes: readonly string[]): void {
  const grids = [...shortTargetsGrid(results), ...keyNumbersGrid(results)];
  const meanings = results.targets.map(({ wording, meaning }) => `${wording}: ${meaning}`);
  const title =
    results.targets.length === 0 ? 'Key numbers' : 'What was asked of the lab, and what was found';
  const slide = deck.slide(title, [...grids.map(({ caption }) => caption), ...meanings, ...notes]);
  const lines = grids.reduce((sum, { rows }) => sum + rows.length + 2, 0);
  let y: number = WHOLE.y;
  let left = 0;
  for (const grid of grids) {
    const h = (WHOLE.h * (grid.rows.length + 2)) / lines;
    left += addTable(slide, grid, { fontSize: 12, place: { ...WHOLE, y, h }, firstColumn: 0.44 });
    y += h;
  }
  const reasons = numbered(grids.flatMap(({ reasons: some }) => some));
  addFootnote(slide, sentences([...reasons, moreRows(left)]));
}

function numbered(reasons: readonly string[]): string[] {
  return reasons.map((reason, at) => `${at + 1} ${reason}`);
}

/** Sentences in one line, each with its full stop. */
function sentences(parts: readonly string[]): string {
  return parts
    .filter((part) => part !== '')
    .map((part) => (part.endsWith('.') ? part : `${part}.`))
    .join(' ');
}

function moreRows(left: number): string {
  return left === 0 ? '' : `${left} more rows are in the report`;
}

function chartSlides(deck: Deck, results: Results, notes: readonly string[]): void {
  const wide = new Map(chartsOf(results).map((chart) => [chart.id, chart]));
  const narrow = new Map(chartsOf(results, 'narrow').map((chart) => [chart.id, chart]));
  const words = (chart: Chart): string[] => [chart.footnote, chart.description, ...notes];
  const hours = wide.get('hours-by-part');
  if (hours !== undefined) {
    const slide = deck.slide(hours.title, words(hours));
    addHours(deck, slide, results, WHOLE);
    addFootnote(
      slide,
      'Blue: something happens to the parts. Other colours: they wait. Beside each name the mean lead time with its interval.',
    );
  }
  const times = wide.get('lead-times');
  if (times !== undefined) {
    const slide = deck.slide(times.title, words(times));
    addLeadTimes(deck, slide, results, WHOLE);
    addFootnote(
      slide,
      'Lines at the ends of bars: confidence intervals. Nights, weekends and breaks count. No bar: not enough jobs for a number.',
    );
  }
  const people = narrow.get('people-by-hour');
  const machines = wide.get('machine-states');
  const title = [wide.get('people-by-hour')?.title, machines?.title].flatMap((one) => one ?? []).join('. ');
  if (people === undefined && machines === undefined) return;
  const slide = deck.slide(
    title,
    [people, machines].flatMap((one) => (one === undefined ? [] : words(one))),
  );
  const half = { ...WHOLE, w: people === undefined ? CONTENT_WIDTH : CONTENT_WIDTH * 0.55 };
  if (machines !== undefined) addMachines(deck, slide, results.machines, half);
  if (people !== undefined) {
    const x = machines === undefined ? SLIDE.left : SLIDE.left + half.w + 0.2;
    addChartPicture(slide, people, { ...WHOLE, x, w: SLIDE.width - SLIDE.right - x }, 'narrow');
  }
  addFootnote(
    slide,
    'Left: what the machines of each group do with the hours of the week, on average; their number in brackets. Right: people at work and on duty by hour of the week, with intervals.',
  );
}

function moneySlide(deck: Deck, results: Results, notes: readonly string[]): void {
  const { money } = results;
  if (money === null) return;
  const chart = chartsOf(results).find(({ id }) => id === 'cost-split');
  const slide = deck.slide(chart?.title ?? 'Money', [chart?.footnote ?? '', ...money.notContained, ...notes]);
  const [grid] = caseGrid(money);
  const left = grid === undefined ? WHOLE : { ...WHOLE, w: CONTENT_WIDTH * 0.52 };
  addCosts(deck, slide, money, left);
  if (grid !== undefined) {
    const x = SLIDE.left + left.w + 0.25;
    addTable(slide, grid, {
      fontSize: 12,
      place: { ...WHOLE, x, y: SLIDE.top + 0.3, w: SLIDE.width - SLIDE.right - x },
      firstColumn: 0.5,
    });
  }
  addFootnote(
    slide,
    `All amounts in ${money.currency}, with intervals. Lines at the ends of bars: confidence intervals. What the amounts leave out stands in the notes.`,
  );
}

function doubtsSlide(deck: Deck, document: ReportDocument, notes: readonly string[]): void {
  const doubts = isDecision(document) ? document.doubts : null;
  const chart = doubts === null ? undefined : doubtsChartsOf(doubts)[0];
  if (doubts !== null && chart !== undefined) {
    const slide = deck.slide(chart.title, [chart.footnote, chart.description, ...doubts.verdict, ...notes]);
    addChartPicture(slide, chart, WHOLE);
    addFootnote(slide, chart.footnote);
    return;
  }
  const [grid] = equipmentTroubleGrid(shownResults(document));
  if (grid === undefined) return;
  const slide = deck.slide('What goes wrong in an average week', [grid.caption, ...notes]);
  const left = addTable(slide, grid, { fontSize: 16, place: WHOLE, firstColumn: 0.28 });
  addFootnote(slide, [`${grid.caption}.`, moreRows(left)].join(' '));
}
