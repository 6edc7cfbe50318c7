import {
  BAND,
  COST_LABELS,
  formatEstimate,
  gatherHours,
  LINE,
  leadTimeUnit,
  MACHINE_STATE_PARTS,
  PLAIN,
  partsWithHours,
  type StackPart,
  segmentsOf,
  shareInWords,
  type Unit,
} from '@buildweek/charts';
import type { EstimateOrRefused, JobClass, MachineUse, Money, Results } from '@buildweek/results';
import { CENTS, moneyEstimateText } from '@buildweek/results';
import { className } from '../content/lead-time-part.ts';
import { keptInPlace } from '../plain-text.ts';
import { addBars, type Series, topOf } from './bar-chart.ts';
import { type Deck, shortened } from './deck.ts';
import type { ErrorBars } from './error-bars.ts';
import type { Place } from './slide-chart.ts';
import type { Slide } from './slide-writer.ts';

/** Bars that can be read on one slide. */
const MOST_BARS = 12;
const NAME_LETTERS = 34;

function stackSeries<Key extends string>(
  parts: Readonly<Record<Key, StackPart>>,
  amountOf: (key: Key, bar: number) => number,
  bars: number,
): Series[] {
  return (Object.entries(parts) as [Key, StackPart][])
    .sort(([, one], [, other]) => (one.code < other.code ? -1 : 1))
    .map(([key, part]) => ({
      name: part.label,
      colour: part.colour,
      values: Array.from({ length: bars }, (_, bar) => amountOf(key, bar)),
    }))
    .filter(({ values }) => values.some((value) => value > 0));
}

/** Where the hours of an average job go, by part type; the interval of the whole stands beside its name. */
export function addHours(deck: Deck, slide: Slide, results: Results, place: Place): void {
  const unit = leadTimeUnit(results);
  const parts = partsWithHours(results.hours).slice(0, MOST_BARS);
  const stacks = parts.map(({ steps }) => segmentsOf(gatherHours(steps), () => ''));
  const codes = [...new Set(stacks.flatMap((stack) => stack.map(({ part }) => part)))];
  const labels = parts.map(({ part }) => {
    const mean = results.jobs.find((one) => one.part === part && one.priority === 'all')?.meanLeadTime;
    return `${keptInPlace(shortened(part, NAME_LETTERS))}: ${mean?.kind === 'estimate' ? formatEstimate(mean, unit) : 'not given'}`;
  });
  addBars(
    deck,
    slide,
    {
      labels,
      series: codes
        .sort((one, other) => (one.code < other.code ? -1 : 1))
        .map((part) => ({
          name: part.label,
          colour: part.colour,
          values: stacks.map((stack) => stack.find((one) => one.part === part)?.value ?? 0),
        }))
        .filter(({ values }) => values.some((value) => value > 0)),
      axisTitle: 'hours by the clock, average finished job',
      grouping: 'stacked',
      percent: false,
      alternative: `Where the hours of an average job go, by part type. Lead times: ${labels.join('; ')}.`,
    },
    place,
  );
}

function bars(
  found: readonly (EstimateOrRefused | undefined)[],
  unit: Unit,
): Pick<Series, 'values'> & { intervals: ErrorBars } {
  const of = (one: EstimateOrRefused | undefined) =>
    one?.kind === 'estimate' ? one : { value: 0, low: 0, high: 0 };
  const rounded = (hours: number): number => Number((hours / unit.size).toFixed(4));
  return {
    values: found.map((one) => rounded(of(one).value)),
    intervals: {
      plus: found.map((one) => rounded(of(one).high - of(one).value)),
      minus: found.map((one) => rounded(of(one).value - of(one).low)),
    },
  };
}

/** Every class of jobs; where these are more than fit, all jobs by priority and each part type as a whole. */
function shownClasses(jobs: readonly JobClass[]): JobClass[] {
  const played = jobs.filter((one) => one.jobs > 0);
  if (played.length <= MOST_BARS) return played;
  return played.filter(({ part, priority }) => part === null || priority === 'all').slice(0, MOST_BARS);
}

/** How long jobs take, with intervals as error bars. */
export function addLeadTimes(deck: Deck, slide: Slide, results: Results, place: Place): void {
  const unit = leadTimeUnit(results);
  const jobs = shownClasses(results.jobs);
  const at = (share: number) =>
    jobs.map(({ percentiles }) => percentiles.find((one) => one.share === share)?.longRun);
  const ninth = at(0.9);
  const series: Series[] = [
    { name: 'half are finished', colour: BAND, ...bars(at(0.5), unit) },
    { name: `${shareInWords(0.9).toLowerCase()} are finished`, colour: LINE, ...bars(ninth, unit) },
  ];
  addBars(
    deck,
    slide,
    {
      labels: jobs.map((one) => shortened(className(one), NAME_LETTERS)),
      series,
      top: topOf(series),
      axisTitle: `${unit.many} from complete file to last good part`,
      grouping: 'clustered',
      percent: false,
      alternative: jobs
        .map((one, row) => {
          const found = ninth[row];
          return `${className(one)}: nine of ten within ${found?.kind === 'estimate' ? formatEstimate(found, unit) : 'not given'}.`;
        })
        .join(' '),
    },
    place,
  );
}

/** Machines of each group on average, so that a large lab fits. */
export function addMachines(deck: Deck, slide: Slide, machines: readonly MachineUse[], place: Place): void {
  const groups = [...new Set(machines.map(({ group }) => group))].slice(0, MOST_BARS);
  const membersOf = groups.map((group) => machines.filter((one) => one.group === group));
  const labels = membersOf.map(
    (members, row) => `${keptInPlace(shortened(groups[row] ?? '', NAME_LETTERS))} (${members.length})`,
  );
  addBars(
    deck,
    slide,
    {
      labels,
      series: stackSeries(
        MACHINE_STATE_PARTS,
        (state, row) => {
          const members = membersOf[row] ?? [];
          const sum = members.reduce(
            (all, { states }) => all + (states.find((one) => one.state === state)?.share.value ?? 0),
            0,
          );
          return Number((sum / Math.max(1, members.length)).toFixed(5));
        },
        groups.length,
      ),
      axisTitle: 'share of all hours, day and night',
      grouping: 'stacked',
      percent: true,
      alternative: `What the machines of each group do with the hours of the week: ${labels.join(', ')}.`,
    },
    place,
  );
}

/** What a finished part costs, by what the money goes to, with intervals as error bars. */
export function addCosts(deck: Deck, slide: Slide, { costs, total, currency }: Money, place: Place): void {
  const lines = [
    ...costs.map((cost) => ({ label: COST_LABELS[cost.kind], cost })),
    { label: 'all costs', cost: total },
  ];
  const series: Series[] = [
    {
      name: `${currency} per finished part`,
      colour: LINE,
      ...bars(
        lines.map(({ cost }) => cost.perPart),
        PLAIN,
      ),
    },
  ];
  addBars(
    deck,
    slide,
    {
      labels: lines.map(({ label }) => label),
      series,
      top: topOf(series),
      axisTitle: `${currency} per finished part`,
      grouping: 'clustered',
      percent: false,
      alternative: lines
        .map(
          ({ label, cost: { perPart } }) =>
            `${label}: ${perPart.kind === 'estimate' ? moneyEstimateText(perPart, currency, CENTS) : 'not given'}.`,
        )
        .join(' '),
    },
    place,
  );
}
