import type { HeldAgainst, HeldPart, HeldWeeks, ReplayAnswer } from '@buildweek/results';
import { type CurveFamily, type FamilyBand, globalEnvelope } from '@buildweek/statistics';
import {
  type Families,
  FINISHED,
  familiesOf,
  IN_LAB,
  LEAD_BY_WEEK,
  LEAD_TIMES,
  PARTS,
  PARTS_FINISHED,
  PARTS_IN_LAB,
  type PartPlace,
  WITHIN,
} from './families.ts';
import type { JudgedWeeks } from './judged-weeks.ts';
import { LEAD_TIME_SHARES, type Observation } from './observation.ts';

/** What the test says of what happened and the replications. */
export type ReplayFindings = Pick<
  ReplayAnswer,
  'test' | 'weeksWithin' | 'series' | 'leadTimes' | 'onTime'
> & { readonly parts: Omit<HeldPart, 'cause'>[] };

/** Curves of a family with its band. */
interface Banded {
  readonly curves: CurveFamily;
  readonly band: FamilyBand;
}

/**
 * Holds what happened against the replications.
 *
 * @param parts names of the part types, in the order of the observations
 */
export function replayFindings(
  observed: Observation,
  simulated: readonly Observation[],
  parts: readonly string[],
  { weeks }: JudgedWeeks,
  falseAlarmRate: number,
): ReplayFindings {
  const put = familiesOf([observed, ...simulated]);
  const { pValue, bands } = globalEnvelope(
    put.families.map(({ curves }) => curves),
    falseAlarmRate,
  );
  const banded = (position: number): Banded => {
    const [family, band] = [put.families[position], bands[position]];
    if (family === undefined || band === undefined) throw new RangeError(`There is no family ${position}.`);
    return { curves: family.curves, band };
  };
  const leadTimes = banded(LEAD_TIMES);
  const within = held(banded(WITHIN), 0);
  return {
    test: {
      falseAlarmRate,
      pValue,
      isContradicted: pValue <= falseAlarmRate,
      families: put.families.map(({ what, curves }, position) => ({
        what,
        places: curves[0]?.length ?? 0,
        isLeft: bands[position]?.isLeft ?? false,
      })),
    },
    weeksWithin: {
      weeks: within.observed,
      of: weeks,
      low: within.low,
      high: within.high,
      usual: put.within.usual,
    },
    series: seriesOf(put, banded, parts, weeks, observed),
    leadTimes: LEAD_TIME_SHARES.map((share, place) => ({ share, ...held(leadTimes, place) })),
    onTime: observed.all.onTime === null ? null : held(leadTimes, LEAD_TIME_SHARES.length),
    parts: partsOf(banded(PARTS), put.partPlaces, parts, observed),
  };
}

/** One number of what happened beside the average of the replications, with the band. */
function held({ curves: [first, ...others], band }: Banded, place: number): HeldAgainst {
  const sum = others.reduce((total, curve) => total + (curve[place] ?? Number.NaN), 0);
  return {
    observed: first?.[place] ?? Number.NaN,
    expected: sum / others.length,
    low: band.low[place] ?? Number.NaN,
    high: band.high[place] ?? Number.NaN,
  };
}

function seriesOf(
  { within, weeksWithJobs }: Families,
  banded: (position: number) => Banded,
  parts: readonly string[],
  weeks: number,
  observed: Observation,
): HeldWeeks[] {
  const everyWeek = Array.from({ length: weeks }, (_, week) => week);
  const whole = (measure: HeldWeeks['measure'], position: number, at: readonly number[]): HeldWeeks => ({
    measure,
    part: null,
    weeks: at.map((week, place) => ({
      week: week + 1,
      ...held(banded(position), place),
      usualLow: within.bands[position]?.low[place] ?? null,
      usualHigh: within.bands[position]?.high[place] ?? null,
    })),
  });
  const ofParts = (measure: HeldWeeks['measure'], position: number): HeldWeeks[] =>
    parts.flatMap((part, index) => {
      if ((observed.parts[index]?.jobs ?? 0) === 0) return [];
      return [
        {
          measure,
          part,
          weeks: everyWeek.map((week) => ({
            week: week + 1,
            ...held(banded(position), index * weeks + week),
            usualLow: null,
            usualHigh: null,
          })),
        },
      ];
    });
  return [
    whole('finished jobs', FINISHED, everyWeek),
    whole('jobs in the lab', IN_LAB, everyWeek),
    whole('lead time', LEAD_BY_WEEK, weeksWithJobs),
    ...ofParts('finished jobs', PARTS_FINISHED),
    ...ofParts('jobs in the lab', PARTS_IN_LAB),
  ];
}

function partsOf(
  banded: Banded,
  places: readonly PartPlace[],
  parts: readonly string[],
  observed: Observation,
): Omit<HeldPart, 'cause'>[] {
  return parts.flatMap((part, index) => {
    const number = (measure: PartPlace['measure']): HeldAgainst | null => {
      const place = places.findIndex((one) => one.part === index && one.measure === measure);
      return place < 0 ? null : held(banded, place);
    };
    const leadTime = number('leadTime');
    if (leadTime === null) return [];
    const others = [number('p90'), number('onTime')];
    return [
      {
        part,
        jobs: observed.parts[index]?.jobs ?? 0,
        leadTime,
        p90: others[0] ?? null,
        onTime: others[1] ?? null,
        outcome: outcomeOf(leadTime, others),
      },
    ];
  });
}

function outcomeOf(leadTime: HeldAgainst, others: readonly (HeldAgainst | null)[]): HeldPart['outcome'] {
  if (leadTime.observed > leadTime.high) return 'slower';
  if (leadTime.observed < leadTime.low) return 'faster';
  const isOutside = (one: HeldAgainst | null): boolean =>
    one !== null && (one.observed < one.low || one.observed > one.high);
  return others.some(isOutside) ? 'otherwise' : 'as modelled';
}
