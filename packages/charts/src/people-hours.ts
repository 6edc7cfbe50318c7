import {
  type Estimate,
  formatNumber,
  type PeopleUse,
  type PersonState,
  type Results,
} from '@buildweek/results';
import type { Chart, ChartSize } from './chart.ts';
import {
  formatEstimate,
  formatPlain,
  formatValue,
  HOURS,
  HOURS_PER_WEEK,
  PERCENT,
  shorten,
} from './format.ts';
import { intervalWords } from './interval-words.ts';
import { PERSON_STATE_PARTS } from './palette.ts';
import { type StackedBar, stackedBars } from './stacked-bars.ts';
import { themeFor } from './theme.ts';

/** Off duty is left out: the bar is the working week of one person, with overtime behind it. */
const ORDER: readonly PersonState[] = ['work', 'other duties', 'idle', 'overtime'];

function weekHours(group: PeopleUse, state: PersonState): number {
  return (group.states.find((candidate) => candidate.state === state)?.share.value ?? 0) * HOURS_PER_WEEK;
}

function dutyHours(group: PeopleUse): number {
  return weekHours(group, 'work') + weekHours(group, 'other duties') + weekHours(group, 'idle');
}

function barOf(group: PeopleUse): StackedBar {
  const duty = dutyHours(group);
  const busy = group.busyShareOfDuty;
  return {
    name: group.group,
    suffix: group.count === 1 ? '' : ` (${group.count})`,
    segments: ORDER.map((state) => {
      const hours = weekHours(group, state);
      return { part: PERSON_STATE_PARTS[state], value: hours, words: `${formatNumber(hours, 1)} h` };
    }),
    whisker: busy.kind === 'estimate' ? { low: busy.low * duty, high: busy.high * duty } : null,
    process: null,
    endWords: busy.kind === 'estimate' ? formatValue(busy, PERCENT) : '',
  };
}

function busiest(results: Results): { name: string; busy: Estimate } | null {
  const known = results.people.flatMap((group) =>
    group.busyShareOfDuty.kind === 'estimate' ? [{ name: group.group, busy: group.busyShareOfDuty }] : [],
  );
  return known.sort((one, other) => other.busy.value - one.busy.value)[0] ?? null;
}

/** How the hours on duty of each group of people are spent. */
export function peopleHours(results: Results, size: ChartSize): Chart {
  const bars = results.people.map(barOf);
  const longest = Math.max(
    1,
    ...bars.map((bar) => bar.segments.reduce((sum, segment) => sum + segment.value, 0)),
  );
  const first = busiest(results);
  return {
    id: 'people-hours',
    title:
      first === null
        ? 'Nobody works in this lab'
        : `Busiest group: ${shorten(first.name)}, for ${formatEstimate(first.busy, PERCENT)} of the hours on duty`,
    description: `Hours of one person in an average week, by group. ${results.people
      .map((group) => {
        const states = ORDER.map(
          (state) => `${PERSON_STATE_PARTS[state].label} ${formatPlain(weekHours(group, state))} h`,
        );
        const busy = group.busyShareOfDuty;
        const share =
          busy.kind === 'estimate' ? `; busy for ${formatEstimate(busy, PERCENT)} of the hours on duty` : '';
        return `${group.group}: ${states.join(', ')}, of ${formatPlain(dutyHours(group))} ${HOURS.many} on duty${share}.`;
      })
      .join(' ')}`,
    spec: {
      config: themeFor(size),
      ...stackedBars({
        bars,
        size,
        axisTitle: 'hours of one person in an average week',
        shares: false,
        top: longest * 1.02,
        endTitle: 'of duty, busy',
      }),
    },
    footnote:
      'The bar without overtime is the time on duty, breaks excluded. ' +
      `Whisker where free time begins: ${intervalWords(results.run)}.`,
  };
}
