import { formatNumber, type PartHours, type Results } from '@buildweek/results';
import type { Chart, ChartSize } from './chart.ts';
import { formatPlain, formatShare, shorten } from './format.ts';
import { gatherHours, outerInterval, partsWithHours } from './hour-families.ts';
import { intervalWords } from './interval-words.ts';
import { PRINT_SHARE_PARTS } from './palette.ts';
import { stackedBars } from './stacked-bars.ts';
import { themeFor } from './theme.ts';

/** Hours of an average job: printing, all other work, and waiting. */
interface SplitHours {
  readonly part: PartHours;
  readonly print: number;
  readonly work: number;
  readonly wait: number;
  readonly total: number;
}

function splitOf(part: PartHours): SplitHours {
  const { work, waits, total } = gatherHours(part.steps);
  const print = work.get('print') ?? 0;
  const wait = [...waits.values()].reduce((sum, hours) => sum + hours, 0);
  return { part, print, work: total - print - wait, wait, total };
}

/**
 * An interval for the share of printing that is at least as wide as it must be: the least printing over the most of
 * everything else, and the other way round.
 */
function shareInterval({ part }: SplitHours): { low: number; high: number } {
  const isPrint = (step: PartHours['steps'][number]): boolean => step.phase === 'print';
  const print = outerInterval(part.steps.filter(isPrint).map((step) => ({ ...step, waits: [] })));
  const rest = outerInterval([
    ...part.steps.filter((step) => !isPrint(step)),
    ...part.steps
      .filter(isPrint)
      .map((step) => ({ ...step, work: { ...step.work, value: 0, low: 0, high: 0 } })),
  ]);
  const share = (inner: number, outer: number): number => (inner + outer === 0 ? 0 : inner / (inner + outer));
  return { low: share(print.low, rest.high), high: share(print.high, rest.low) };
}

function titleOf(splits: readonly SplitHours[]): string {
  const ordered = [...splits].sort((one, other) => one.print / one.total - other.print / other.total);
  const [least] = ordered;
  const most = ordered.at(-1);
  if (least === undefined || most === undefined) return 'Printing against everything else';
  const name = ({ part }: SplitHours): string => `“${shorten(part.part, 32)}”`;
  const share = ({ print, total }: SplitHours): string => formatShare(print / total);
  if (least === most) return `Printing is ${share(most)} of the lead time of ${name(most)}`;
  return `Printing is from ${share(least)} (${name(least)}) to ${share(most)} (${name(most)}) of the lead time`;
}

/** Printing against all other work and waiting, as shares of the lead time of each part type. */
export function printShare(results: Results, size: ChartSize): Chart {
  const splits = partsWithHours(results.hours).map(splitOf);
  return {
    id: 'print-share',
    title: titleOf(splits),
    description: `Shares of the hours by the clock of an average finished job. ${splits
      .map(
        ({ part, print, work, wait, total }) =>
          `${part.part}, ${formatPlain(total)} h: printing ${formatShare(print / total)}, all other work ` +
          `${formatShare(work / total)}, waiting ${formatShare(wait / total)}.`,
      )
      .join(' ')}`,
    spec: {
      config: themeFor(size),
      ...stackedBars({
        bars: splits.map((split) => ({
          name: split.part.part,
          suffix: '',
          segments: (['print', 'work', 'wait'] as const).map((kind) => ({
            part: PRINT_SHARE_PARTS[kind],
            value: split[kind] / split.total,
            words: formatShare(split[kind] / split.total),
          })),
          whisker: shareInterval(split),
          process: split.part.process,
          endWords: `${formatShare(split.print / split.total)}, ${formatNumber(split.print, 1)} h`,
        })),
        size,
        axisTitle: 'share of the lead time, average finished job',
        shares: true,
        top: 1,
        endTitle: 'print',
      }),
    },
    footnote:
      'On the right the share and the hours of printing. Whisker below the end of printing: ' +
      `${intervalWords(results.run)}; at least as wide as it must be, since those of the pieces are added.`,
  };
}
