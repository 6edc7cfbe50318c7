import { figureOf, formatNumber, type PartHours, type Results, type WaitCause } from '@buildweek/results';
import type { Chart, ChartSize } from './chart.ts';
import { formatEstimate, formatPlain, formatShare, type Unit } from './format.ts';
import { gatherHours, outerInterval, partsWithHours, segmentsOf } from './hour-families.ts';
import { intervalWords } from './interval-words.ts';
import { leadTimeUnit } from './lead-time-unit.ts';
import { WAIT_CAUSE_PARTS } from './palette.ts';
import { stackedBars } from './stacked-bars.ts';
import { themeFor } from './theme.ts';

function jobsOf(results: Results, part: string): number {
  return results.jobs.find((one) => one.part === part && one.priority === 'all')?.jobs ?? 0;
}

/** Mean hours over all jobs of all parts: the total, printing, and the longest cause of waiting. */
function overall(results: Results, parts: readonly PartHours[]) {
  let jobs = 0;
  let total = 0;
  let print = 0;
  const waits = new Map<WaitCause, number>();
  for (const part of parts) {
    const weight = jobsOf(results, part.part);
    const hours = gatherHours(part.steps);
    jobs += weight;
    total += weight * hours.total;
    print += weight * (hours.work.get('print') ?? 0);
    for (const [cause, value] of hours.waits) waits.set(cause, (waits.get(cause) ?? 0) + weight * value);
  }
  if (jobs === 0) return null;
  const [longest] = [...waits].sort((one, other) => other[1] - one[1]);
  return {
    total: total / jobs,
    print: print / jobs,
    longest: longest === undefined ? null : { cause: longest[0], hours: longest[1] / jobs },
  };
}

function titleOf(results: Results, parts: readonly PartHours[], unit: Unit): string {
  const mean = overall(results, parts);
  if (mean === null) return 'Where the hours of a job go';
  const known = results.jobs.find((one) => one.part === null && one.priority === 'all')?.meanLeadTime;
  const whole = known?.kind === 'estimate' ? formatEstimate(known, unit) : 'hours';
  const share = (hours: number): string => formatShare(mean.total === 0 ? 0 : hours / mean.total);
  const wait =
    mean.longest === null
      ? 'none is waiting'
      : `the longest wait, ${share(mean.longest.hours)}, is the ${WAIT_CAUSE_PARTS[mean.longest.cause].label}`;
  const print = mean.print === 0 ? '' : `, printing is ${share(mean.print)}, and`;
  return `Of the ${whole} of an average job${print === '' ? ',' : print} ${wait}`;
}

/** Lead time of an average job of a part, with what is known of its uncertainty. */
function leadTime(results: Results, part: PartHours): { value: number; low: number; high: number } {
  const known = results.jobs.find((one) => one.part === part.part && one.priority === 'all')?.meanLeadTime;
  return known?.kind === 'estimate'
    ? known
    : { value: gatherHours(part.steps).total, ...outerInterval(part.steps) };
}

/** Where the hours of an average job go, by part type: printing, every other work, every cause of waiting. */
export function hoursByPart(results: Results, size: ChartSize): Chart {
  const unit = leadTimeUnit(results);
  const parts = partsWithHours(results.hours);
  const bars = parts.map((part) => {
    const hours = gatherHours(part.steps);
    const { value: mean, low, high } = leadTime(results, part);
    const { value: words } = figureOf({ value: mean, low, high }, unit.size, unit.leastDecimals);
    return {
      name: part.part,
      suffix: '',
      segments: segmentsOf(hours, (value) => `${formatNumber(value, 1)} h`),
      whisker: { low, high },
      process: part.process,
      endWords: `${words} ${unit.many}`,
    };
  });
  const top = Math.max(1, ...bars.map((bar) => bar.whisker.high)) * 1.02;
  return {
    id: 'hours-by-part',
    title: titleOf(results, parts, unit),
    description: `Hours by the clock of an average finished job, by part type. ${parts
      .map((part) => {
        const hours = gatherHours(part.steps);
        const pieces = segmentsOf(hours, formatPlain).filter((segment) => segment.value > 0);
        const mean = results.jobs.find(
          (one) => one.part === part.part && one.priority === 'all',
        )?.meanLeadTime;
        const lead = mean?.kind === 'estimate' ? `mean lead time ${formatEstimate(mean, unit)}; ` : '';
        return `${part.part}: ${lead}${pieces.map((piece) => `${piece.part.label} ${piece.words} h`).join(', ')}.`;
      })
      .join(' ')}`,
    spec: {
      config: themeFor(size),
      ...stackedBars({
        bars,
        size,
        axisTitle: 'hours by the clock, average finished job',
        shares: false,
        top,
        endTitle: 'lead time',
      }),
    },
    footnote:
      'Blue: something happens to the parts. Other colours: they wait. On the right the mean lead ' +
      `time. Whisker at its end: ${intervalWords(results.run)}.`,
  };
}
