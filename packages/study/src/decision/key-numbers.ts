import {
  type EstimateOrRefused,
  type KeyNumber,
  type Money,
  moneyText,
  type PlanMeasure,
  type Results,
  SPEED_MEASURE,
  type TargetResult,
  WHOLE,
} from '@buildweek/results';
import { percentOf, shareWords } from '../words/figures.ts';

/** What the key numbers are made of. */
export interface KeyFacts {
  /** Results of the recommendation. */
  readonly recommended: Pick<Results, 'targets' | 'money'>;
  /** Results of today; null when today is recommended. */
  readonly today: Pick<Results, 'targets' | 'money'> | null;
  /** The same plans in the measures of a comparison. */
  readonly measures: readonly PlanMeasure[];
  readonly measuresToday: readonly PlanMeasure[] | null;
}

const ON_TIME_MEASURE = 'jobs on time';

/**
 * The three numbers that matter: whether promises are kept, what it costs, and when it has paid for itself. Where
 * nothing is promised, or no money is stated, the time of nine of ten jobs stands in.
 */
export function keyNumbersOf(facts: KeyFacts): KeyNumber[] {
  const found = [promiseNumber(facts), costNumber(facts), paybackNumber(facts)].filter(
    (number) => number !== null,
  );
  return found.length === 3 ? found : [...found, ...speedNumber(facts)];
}

/** The target on promises, or on how many jobs are done within a time; else the share of jobs on time. */
function promiseNumber({ recommended, today, measures, measuresToday }: KeyFacts): KeyNumber | null {
  const target =
    recommended.targets.find(({ kind }) => kind === 'on time') ??
    recommended.targets.find(({ kind }) => kind === 'share within');
  if (target !== undefined && target.found.kind !== 'known') {
    const before = today?.targets.find(({ wording }) => wording === target.wording)?.found;
    return {
      subject: 'promise',
      label: target.kind === 'on time' ? 'jobs finished by the promised date' : target.wording,
      unit: 'share',
      value: target.found,
      today: before === undefined || before.kind === 'known' ? null : before,
      asked: target.asked,
      note: targetNote(target),
    };
  }
  const value = measured(measures, ON_TIME_MEASURE);
  if (value === null) return null;
  return {
    subject: 'promise',
    label: 'jobs finished by the promised date',
    unit: 'share',
    value,
    today: measuresToday === null ? null : measured(measuresToday, ON_TIME_MEASURE),
    asked: null,
    note: '',
  };
}

function targetNote({ bound, asked, verdict, periods }: TargetResult): string {
  const verdicts = { met: 'met', missed: 'missed', 'not decided': 'not decided' } as const;
  const inPeriods = periods === null ? '' : `; ${shareWords(periods.found)} of single periods reach it`;
  return `Target: ${bound} ${percentOf(asked)} %, ${verdicts[verdict]}${inPeriods}.`;
}

function costNumber({ recommended: { money }, today }: KeyFacts): KeyNumber | null {
  if (money === null) return null;
  return {
    subject: 'cost',
    label: 'cost of the lab in a year',
    unit: 'money per year',
    value: money.total.perYear,
    today: today?.money?.total.perYear ?? null,
    asked: null,
    note: purchaseNote(money, today?.money ?? null),
  };
}

/** What has to be bought, beyond what today's lab has to have bought anyway. */
function purchaseNote({ purchases, currency }: Money, today: Money | null): string {
  const sum = (of: Money['purchases']): number => of.reduce((total, { amount }) => total + amount, 0);
  const all = sum(purchases);
  if (all === 0) return 'Nothing to buy.';
  const more = today === null ? 0 : all - sum(today.purchases);
  const part =
    today === null
      ? ''
      : more > 0
        ? `, ${moneyText(more, currency, WHOLE)} of it more than today’s lab`
        : ', no more than today’s lab';
  return `Equipment to buy: ${moneyText(all, currency, WHOLE)}${part}.`;
}

function paybackNumber({ recommended: { money }, today }: KeyFacts): KeyNumber | null {
  if (money === null || money.case.kind !== 'compared') return null;
  const { paybackYears, paidBackInTime, paybackWithinYears, years } = money.case;
  const before = today?.money?.case;
  const chance: EstimateOrRefused = paidBackInTime;
  const within = `${paybackWithinYears === 1 ? '1 year' : `${paybackWithinYears} years`}`;
  return {
    subject: 'payback',
    label: 'against sending everything out',
    unit: 'years',
    value: paybackYears,
    today: before?.kind === 'compared' ? before.paybackYears : null,
    asked: null,
    note:
      chance.kind === 'estimate'
        ? `Paid back within ${within}: in ${shareWords(chance)} of the plays. Judged over ${years} years.`
        : `Judged over ${years} years.`,
  };
}

function speedNumber({ measures, measuresToday }: KeyFacts): KeyNumber[] {
  const value = measured(measures, SPEED_MEASURE);
  if (value === null) return [];
  return [
    {
      subject: 'speed',
      label: SPEED_MEASURE,
      unit: 'hours',
      value,
      today: measuresToday === null ? null : measured(measuresToday, SPEED_MEASURE),
      asked: null,
      note: 'From asking to the last good part, by the clock.',
    },
  ];
}

function measured(measures: readonly PlanMeasure[], name: string): EstimateOrRefused | null {
  return measures.find((measure) => measure.name === name)?.value ?? null;
}
