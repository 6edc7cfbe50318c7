import type { PartHours, Results, WaitCause } from '@buildweek/results';
import type { Chart, ChartSize } from './chart.ts';
import { formatEstimate, formatNumber, formatPlain, type Unit } from './format.ts';
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

function inUnit(hours: number, unit: Unit): string {
  return formatNumber(hours / unit.size, 1);
}

function titleOf(results: Results, parts: readonly PartHours[], unit: Unit): string {
  const mean = overall(results, parts);
  if (mean === null) return 'Where the hours of a job go';
  const whole = `Of the ${inUnit(mean.total, unit)} ${unit.many} of an average job`;
  const print = mean.print === 0 ? '' : `, printing is ${inUnit(mean.print, unit)}`;
  if (mean.longest === null) return `${whole}${print}, and none is waiting`;
  const cause = WAIT_CAUSE_PARTS[mean.longest.cause].label;
  const wait = `the longest wait, ${inUnit(mean.longest.hours, unit)}, is the ${cause}`;
  return print === '' ? `${whole}, ${wait}` : `${whole}${print}, and ${wait}`;
}

function interval(results: Results, part: PartHours): { low: number; high: number } {
  const known = results.jobs.find((one) => one.part === part.part && one.priority === 'all')?.meanLeadTime;
  return known?.kind === 'estimate' ? { low: known.low, high: known.high } : outerInterval(part.steps);
}

/** Where the hours of an average job go, by part type: printing, every other work, every cause of waiting. */
export function hoursByPart(results: Results, size: ChartSize): Chart {
  const unit = leadTimeUnit(results);
  const parts = partsWithHours(results.hours);
  const bars = parts.map((part) => {
    const hours = gatherHours(part.steps);
    return {
      name: part.part,
      suffix: '',
      segments: segmentsOf(hours, (value) => `${formatNumber(value, 1)} h`),
      whisker: interval(results, part),
      process: part.process,
      endWords: `${inUnit(hours.total, unit)} ${unit.many}`,
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
      'Blue (A to D): something happens to the parts. Warm colours (E on): they wait. On the right the mean lead ' +
      `time. Whisker at its end: ${intervalWords(results.run)}.`,
  };
}
