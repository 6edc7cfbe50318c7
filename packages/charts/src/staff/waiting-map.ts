import { joinWords, type StaffAnswer, type StaffPlan } from '@buildweek/results';
import { CHART_WIDTH, type Chart, type ChartSize, type LayeredSpec } from '../chart.ts';
import { formatHourOfWeek, formatPlain, HOURS_PER_DAY, HOURS_PER_WEEK, shorten } from '../format.ts';
import { HEAT, INK, MUTED_INK } from '../palette.ts';
import { fitName } from '../text-width.ts';
import { FONT_SIZE, themeFor } from '../theme.ts';

const DAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const LABELS: Readonly<Record<ChartSize, number>> = { wide: 46, narrow: 44 };
const ROW_HEIGHT: Readonly<Record<ChartSize, number>> = { wide: 26, narrow: 24 };
/** Of the height of a row: the cells, and the bar below them. */
const CELL_END = 0.72;
const BAR = { from: 0.78, to: 0.9 } as const;
/** Fewer persons than this are rounding, not a shift. */
const SOMEBODY = 0.05;

/** A week of jobs that wait, with the persons who are there. */
interface WeekMap {
  readonly title: string;
  readonly waiting: readonly number[];
  readonly persons: readonly number[];
}

/** Stretches of a day in which somebody is on duty; hours of the day. */
function attended(persons: readonly number[]): { day: number; from: number; to: number }[] {
  const stretches: { day: number; from: number; to: number }[] = [];
  persons.forEach((count, hour) => {
    if (count < SOMEBODY) return;
    const day = Math.floor(hour / HOURS_PER_DAY);
    const at = hour % HOURS_PER_DAY;
    const last = stretches.at(-1);
    if (last !== undefined && last.day === day && last.to === at) last.to = at + 1;
    else stretches.push({ day, from: at, to: at + 1 });
  });
  return stretches;
}

function panel(
  { title, waiting, persons }: WeekMap,
  size: ChartSize,
  most: number,
  columns: number,
): LayeredSpec {
  const width = Math.floor(CHART_WIDTH[size] / columns) - LABELS[size] - (columns > 1 ? 18 : 8);
  const cells = waiting.map((jobs, hour) => ({
    from: hour % HOURS_PER_DAY,
    to: (hour % HOURS_PER_DAY) + 1,
    top: Math.floor(hour / HOURS_PER_DAY),
    bottom: Math.floor(hour / HOURS_PER_DAY) + CELL_END,
    jobs,
  }));
  const bars = attended(persons).map(({ day, from, to }) => ({
    from,
    to,
    top: day + BAR.from,
    bottom: day + BAR.to,
  }));
  const across = {
    x: { field: 'from', type: 'quantitative' },
    x2: { field: 'to' },
    y: { field: 'top', type: 'quantitative' },
    y2: { field: 'bottom' },
  } as const;
  return {
    title: fitName(title, width, FONT_SIZE[size], true),
    width,
    height: ROW_HEIGHT[size] * DAYS.length,
    layer: [
      {
        data: { values: cells },
        mark: { type: 'rect', stroke: MUTED_INK, strokeWidth: 0.3 },
        encoding: {
          ...across,
          color: {
            field: 'jobs',
            type: 'quantitative',
            scale: { domain: [0, most], range: [...HEAT], nice: false },
            legend: {
              title: 'jobs that wait',
              orient: 'bottom',
              direction: 'horizontal',
              titleOrient: 'left',
              gradientLength: size === 'wide' ? 260 : 150,
              tickCount: 4,
            },
          },
        },
      },
      {
        data: { values: bars },
        mark: { type: 'rect', color: INK },
        encoding: across,
      },
    ],
    encoding: {
      x: {
        type: 'quantitative',
        scale: { domain: [0, HOURS_PER_DAY], nice: false },
        axis: { title: 'hour of the day', values: [0, 6, 12, 18, 24], grid: false },
      },
      y: {
        type: 'quantitative',
        scale: { domain: [0, DAYS.length], reverse: true, nice: false },
        axis: {
          title: null,
          values: DAYS.map((_, day) => day + CELL_END / 2),
          labelExpr: `[${DAYS.map((day) => `'${day}'`).join(',')}][floor(datum.value)]`,
          ticks: false,
          domain: false,
          grid: false,
        },
      },
    },
  };
}

function mapChart(
  id: string,
  title: string,
  maps: readonly WeekMap[],
  size: ChartSize,
  replications: number,
): Chart {
  const most = Math.max(0.01, ...maps.flatMap(({ waiting }) => waiting));
  const columns = size === 'wide' ? Math.min(2, maps.length) : 1;
  return {
    id,
    title,
    description: maps.map((map) => weekWords(map)).join(' '),
    spec: {
      config: themeFor(size),
      columns,
      concat: maps.map((map) => panel(map, size, most, columns)),
    },
    footnote: `Mean number of jobs that wait for a person in each hour of the week, local time, over ${replications} replications; all maps have the same scale. Black bars: somebody who can do it is on duty. Dark above a bar: those who are there are too few. Dark without a bar: somebody is missing at this hour.`,
  };
}

/** The hours in which most jobs wait, in words. */
function weekWords({ title, waiting, persons }: WeekMap): string {
  const mean = waiting.reduce((sum, jobs) => sum + jobs, 0) / HOURS_PER_WEEK;
  const most = (isMeant: (hour: number) => boolean): string | null => {
    const hours = waiting.map((_, hour) => hour).filter(isMeant);
    const [peak] = hours.sort((one, other) => (waiting[other] ?? 0) - (waiting[one] ?? 0));
    return peak === undefined ? null : `${formatPlain(waiting[peak] ?? 0)} on ${formatHourOfWeek(peak)}`;
  };
  const isIn = (hour: number): boolean => (persons[hour] ?? 0) >= SOMEBODY;
  const [attendedPeak, closedPeak] = [most(isIn), most((hour) => !isIn(hour))];
  const peaks = [
    ...(attendedPeak === null ? [] : [`most while somebody is in: ${attendedPeak}`]),
    ...(closedPeak === null ? [] : [`most while nobody is: ${closedPeak}`]),
  ];
  return `${title}: ${formatPlain(mean)} jobs wait for a person on average; ${joinWords(peaks)}.`;
}

/** Today beside the best option, or beside the one that is looked at instead of it. */
export function waitingChart(answer: StaffAnswer, other: StaffPlan | null, size: ChartSize): Chart | null {
  const [today] = answer.plans;
  if (today === undefined) return null;
  const maps = [today, ...(other === null ? [] : [other])].map(
    ({ name, waiting, duty }): WeekMap => ({ title: name, waiting, persons: duty.personsByHourOfWeek }),
  );
  const title =
    other === null
      ? 'When jobs wait for a person'
      : `When jobs wait for a person: today, and with “${shorten(other.name, 50)}”`;
  return mapChart('waiting-map', title, maps, size, answer.run.replications);
}

/** Today by the skill that is waited for; null where there is only one. */
export function skillChart(answer: StaffAnswer, size: ChartSize): Chart | null {
  const [today] = answer.plans;
  const skills =
    today?.waitingBySkill.filter(({ byHourOfWeek }) => byHourOfWeek.some((jobs) => jobs > 0)) ?? [];
  if (today === undefined || skills.length < 2) return null;
  const maps = skills.map(
    ({ skill, byHourOfWeek, personsByHourOfWeek }): WeekMap => ({
      title: skill,
      waiting: byHourOfWeek,
      persons: personsByHourOfWeek,
    }),
  );
  return mapChart(
    'waiting-by-skill',
    'Which skill is missing when, today',
    maps,
    size,
    answer.run.replications,
  );
}
