import { INK, MUTED_INK } from '@buildweek/charts';
import type { ReportDocument, Results } from '@buildweek/results';
import { plainText } from '../plain-text.ts';
import { CONTENT_HEIGHT, CONTENT_WIDTH, colour, type Deck, SLIDE, shortened, TYPEFACE } from './deck.ts';
import type { Slide, SlideText } from './slide-writer.ts';

/** Assumptions that the notes have room for. */
const MOST_ASSUMPTIONS = 60;
const GAP = 0.3;

function words(text: string, fontSize: number, bold: boolean, color: string): SlideText {
  return {
    text: plainText(text),
    options: { fontFace: TYPEFACE, fontSize, bold, color: colour(color), breakLine: true, paraSpaceAfter: 4 },
  };
}

/** Puts terms with what is said of them into columns. */
function addPairs(
  slide: Slide,
  pairs: readonly (readonly [string, string])[],
  columns: number,
  fontSize: number,
): void {
  const width = (CONTENT_WIDTH - GAP * (columns - 1)) / columns;
  const size = Math.ceil(pairs.length / columns);
  for (let column = 0; column < columns; column++) {
    const some = pairs.slice(column * size, (column + 1) * size);
    if (some.length === 0) continue;
    slide.addText(
      some.flatMap(([term, text]) => [
        words(term, fontSize, true, INK),
        words(shortened(text, 320), fontSize, false, MUTED_INK),
      ]),
      {
        x: SLIDE.left + column * (width + GAP),
        y: SLIDE.top,
        w: width,
        h: CONTENT_HEIGHT - 0.05,
        margin: 0,
        valign: 'top',
        fit: 'shrink',
      },
    );
  }
}

/** Size of text so that everything fits its columns, points. */
function fittingSize(pairs: readonly (readonly [string, string])[], columns: number): number {
  const width = (CONTENT_WIDTH - GAP * (columns - 1)) / columns;
  const size = Math.ceil(pairs.length / columns);
  for (const points of [16, 14, 12, 11, 10]) {
    const letters = width / (points * 0.0072);
    const heights = Array.from({ length: columns }, (_, column) =>
      pairs
        .slice(column * size, (column + 1) * size)
        .reduce((sum, [, text]) => sum + 1.3 + Math.ceil(Math.min(320, text.length) / letters) * 1.2, 0),
    );
    if (Math.max(...heights) * (points / 72) < CONTENT_HEIGHT - 0.4) return points;
  }
  return 9;
}

/** What the plan leaves to the people who are licensed to judge it; the notes hold what nobody stated. */
export function cautionSlide(
  deck: Deck,
  { cautions, warnings }: ReportDocument,
  defaults: readonly string[],
): void {
  const shown = defaults.slice(0, MOST_ASSUMPTIONS);
  const slide = deck.slide('Before this plan is followed: cautions and assumptions', [
    'Taken from machine classes and defaults of the program, because nobody stated it:',
    ...shown,
    shown.length < defaults.length ? `… and ${defaults.length - shown.length} more: see the report.` : '',
  ]);
  const pairs: (readonly [string, string])[] = [
    ...cautions.map(({ topic, text }) => [topic, text] as const),
    ...(warnings.length === 0 ? [] : [['Read the numbers with this in mind', warnings.join(' ')] as const]),
    [
      'Assumptions',
      `${defaults.length} values were taken from machine classes and defaults, because nobody stated them: common practice at best. They stand in the notes of this slide and in the report; replace them by records of your own lab first.`,
    ],
  ];
  const columns = pairs.length > 4 ? 3 : 2;
  addPairs(slide, pairs, columns, fittingSize(pairs, columns));
}

/** How the numbers came about. */
export function originSlide(
  deck: Deck,
  results: Results,
  facts: readonly (readonly [string, string])[],
): void {
  const slide = deck.slide('How this was computed', [
    'The lab was played event by event, again and again with fresh luck. Intervals rest on the replications, which are independent of each other, never on single jobs.',
    ...results.checks.map(({ law, holds }) => `${law}: ${holds ? 'holds' : 'BROKEN'} in every replication.`),
  ]);
  const pairs: (readonly [string, string])[] = [
    [
      'Method',
      'Played event by event, again and again with fresh luck; every number is an average or a percentile over replications, with its confidence interval. The same scenario, seed and version give the same numbers.',
    ],
    ...facts,
    [
      'Checks',
      results.checks.every(({ holds }) => holds)
        ? `In every replication held: ${results.checks.map(({ law }) => law).join(', ')}.`
        : 'Not all laws held: do not use these numbers, and report it.',
    ],
  ];
  addPairs(slide, pairs, 2, fittingSize(pairs, 2));
}
