import type { WatchedJob } from '@buildweek/results';
import type { Layer } from '../chart.ts';
import { INK, LINE, MUTED_INK, PAPER, WAIT_CAUSE_PARTS } from '../palette.ts';
import { textWidth } from '../text-width.ts';

const BAR_HEIGHT = 16;
const WAIT_HEIGHT = 9;
const LETTER_SIZE = 10;
const AT = (field: string) => ({ field, type: 'quantitative' }) as const;

interface Piece {
  readonly from: number;
  readonly to: number;
  readonly y: number;
  readonly colour: string;
  readonly letter: string;
  readonly isWait: boolean;
}

/** What of a job's way lies in the week: work, and waits in the colour and with the letter of their longest cause. */
function piecesOf(job: WatchedJob, hours: number, y: number): Piece[] {
  return job.stretches.flatMap(({ kind, from, to, causes }) => {
    const start = Math.max(0, from);
    const end = Math.min(hours, to);
    if (kind === 'event' || end <= start) return [];
    const [cause] = causes;
    const part = kind === 'work' || cause === undefined ? null : WAIT_CAUSE_PARTS[cause.cause];
    return [
      {
        from: start,
        to: end,
        y,
        colour: part?.colour ?? LINE,
        letter: part?.code ?? '',
        isWait: part !== null,
      },
    ];
  });
}

/**
 * The way of one job through the week as one bar: tall where something is done, lower where it waits, with the
 * moments at which it was asked for and promised.
 *
 * @param y middle of the bar, CSS pixels from the top
 * @param pixelsPerHour of the time axis
 */
export function jobWayLayers(job: WatchedJob, hours: number, y: number, pixelsPerHour: number): Layer[] {
  const pieces = piecesOf(job, hours, y);
  const bars = (isWait: boolean): Layer => ({
    data: { values: pieces.filter((piece) => piece.isWait === isWait) },
    mark: { type: 'bar', height: isWait ? WAIT_HEIGHT : BAR_HEIGHT, stroke: PAPER, strokeWidth: 0.5 },
    encoding: {
      x: AT('from'),
      x2: { field: 'to' },
      y: AT('y'),
      color: { field: 'colour', type: 'nominal', scale: null },
    },
  });
  const letters = pieces
    .filter(
      ({ letter, from, to }) =>
        letter !== '' && (to - from) * pixelsPerHour >= textWidth(letter, LETTER_SIZE) + 3,
    )
    .map(({ from, to, letter }) => ({ x: (from + to) / 2, y: y - BAR_HEIGHT / 2 - 3, letter }));
  const moments = [
    { x: job.asked, words: 'asked for' },
    ...(job.due === null ? [] : [{ x: job.due, words: 'promised' }]),
  ].filter(({ x }) => x >= 0 && x <= hours);
  return [
    bars(true),
    bars(false),
    {
      data: { values: letters },
      mark: { type: 'text', align: 'center', baseline: 'bottom', fontSize: LETTER_SIZE, color: INK },
      encoding: { x: AT('x'), y: AT('y'), text: { field: 'letter' } },
    },
    {
      data: { values: moments.map(({ x }) => ({ x, top: y - BAR_HEIGHT, bottom: y + BAR_HEIGHT })) },
      mark: { type: 'rule', color: INK, strokeWidth: 1.5, strokeDash: [3, 2] },
      encoding: { x: AT('x'), y: AT('top'), y2: { field: 'bottom' } },
    },
    {
      data: { values: moments.map(({ x, words }) => ({ x, y: y + BAR_HEIGHT, words })) },
      mark: {
        type: 'text',
        align: 'left',
        baseline: 'top',
        dx: -2,
        fontSize: LETTER_SIZE + 1,
        color: MUTED_INK,
      },
      encoding: { x: AT('x'), y: AT('y'), text: { field: 'words' } },
    },
  ];
}

/** "E wait for a person, F wait for the shift": the letters that stand over the waits of a job. */
export function letterWords(job: WatchedJob): string {
  const causes = new Set(
    job.stretches.flatMap(({ causes: [cause] }) => (cause === undefined ? [] : [cause.cause])),
  );
  return Object.entries(WAIT_CAUSE_PARTS)
    .filter(([cause]) => causes.has(cause as keyof typeof WAIT_CAUSE_PARTS))
    .map(([, part]) => `${part.code} ${part.label}`)
    .join(', ');
}
