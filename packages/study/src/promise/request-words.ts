import {
  dayText,
  type EstimateOrRefused,
  type Moment,
  momentText,
  type PromisedDate,
  type PromisedRequest,
  type PromiseEffect,
  type PromiseMove,
  type PromiseWay,
  timeOfDayText,
  writtenText,
} from '@buildweek/results';
import { clockWords } from '../part/clock-words.ts';

/** The probability that sentences are about; tables have them all. */
const TOLD = 0.8;
const HOURS = { size: 1, leastDecimals: 1, isMoney: false, one: '', many: '' };
const PERCENT = { size: 0.01, leastDecimals: 0, isMoney: false, one: '', many: '' };

/** The answer for a request in a few sentences. */
export function requestVerdict(found: PromisedRequest): string[] {
  const { request, ways, chosen } = found;
  const pieces = request.quantity === 1 ? `one ${request.part}` : `${request.quantity} × ${request.part}`;
  const own = ways.find(({ route }) => route === chosen);
  const others = ways.filter(({ route }) => route !== chosen && route !== null);
  return [
    ...(own === undefined ? [] : [promiseSentence(`${pieces}, by ${chosen}`, own)]),
    ...others.flatMap((way) => otherWay(way, own)),
    ...ways.flatMap((way) => (way.route === null ? [outsideSentence(way)] : [])),
    ...movesSentence(found),
    ...effectSentences(found),
  ];
}

function promiseSentence(what: string, { dates, due, onTime }: PromiseWay): string {
  const told = dates.find(({ probability }) => probability === TOLD);
  const safest = dates.filter(({ promise }) => promise !== null).at(-1);
  const usual =
    due === null || onTime?.kind !== 'estimate'
      ? ''
      : ` The usual promise of the lab, ${momentText(due.at)}, is kept in ${shareWords(onTime)} of the plays.`;
  if (told?.promise == null) return `${what}: ${told?.refused ?? 'no date can be given.'}${usual}`;
  const later =
    safest === undefined || safest.probability <= TOLD
      ? ''
      : safest.promise?.at === told.promise.at
        ? `, and with ${percent(safest.probability)} too`
        : `; with ${percent(safest.probability)}, promise ${closingWords(safest.promise)}`;
  return `${what}: promise ${closingWords(told.promise)}; ${percent(TOLD)} of such promises are kept${later}.${usual}`;
}

/** Another route, where it is told apart by its day. */
function otherWay(way: PromiseWay, own: PromiseWay | undefined): string[] {
  const told = dateOf(way.dates);
  const before = dateOf(own?.dates ?? []);
  if (told === null) return [];
  if (before !== null && before.at === told.at) return [`By ${way.route}: the same day.`];
  return [`By ${way.route}: ${closingWords(told)}.`];
}

function outsideSentence({ dates }: PromiseWay): string {
  const told = dateOf(dates);
  return told === null ? 'Sent out: no date can be given.' : `Sent out: ${closingWords(told)}.`;
}

function movesSentence({ moves }: PromisedRequest): string[] {
  const told = moves.flatMap((move) => moveWords(move));
  return told.length === 0 ? [] : [`What moves it: ${told.join('; ')}.`];
}

function moveWords({ what, hours, dates }: PromiseMove): string[] {
  if (hours.kind !== 'estimate') return [];
  const date = dateOf(dates);
  const then = date === null ? '' : `, so promise ${momentText(date.at)}`;
  if (hours.low <= 0 && hours.high >= 0) return [`${what}, no difference that can be told${then}`];
  const size = { ...hours, value: Math.abs(hours.value), ...ends(hours) };
  return [
    `${what}, ${writtenText(size, HOURS)} h ${hours.value < 0 ? 'earlier' : 'later'} in the mean${then}`,
  ];
}

function ends({ low, high }: { readonly low: number; readonly high: number }) {
  return high < 0 ? { low: -high, high: -low } : { low, high };
}

function effectSentences({ effects, jobsLate }: PromisedRequest): string[] {
  if (effects.length === 0) return [];
  const [worst] = effects;
  const hurt =
    worst !== undefined && lost(worst) >= 0.005
      ? ` Most hurt: ${worst.job} (${worst.quantity} × ${worst.part}), on time ${shareWords(worst.onTimeBefore)} before and ${shareWords(worst.onTimeAfter)} after${laterWords(worst)}.`
      : '';
  const late =
    jobsLate?.kind !== 'estimate'
      ? ''
      : jobsLate.low <= 0
        ? 'Taking it on makes no more of the jobs in the lab late, as far as can be told.'
        : `Taking it on makes ${writtenText(jobsLate, { size: 1, leastDecimals: 2, isMoney: false, one: '', many: '' })} more of the ${effects.length} jobs in the lab late, in the mean.`;
  return late === '' && hurt === '' ? [] : [`${late}${hurt}`.trim()];
}

function laterWords({ hoursLater }: PromiseEffect): string {
  return hoursLater.kind === 'estimate'
    ? `, ${clockWords(Math.max(0, hoursLater.value))} later in the mean`
    : '';
}

function lost({ onTimeBefore, onTimeAfter }: PromiseEffect): number {
  return onTimeBefore?.kind === 'estimate' && onTimeAfter?.kind === 'estimate'
    ? onTimeBefore.value - onTimeAfter.value
    : 0;
}

function dateOf(dates: readonly PromisedDate[]): Moment | null {
  return dates.find(({ probability }) => probability === TOLD)?.promise ?? null;
}

/** Promises are due at closing time. */
function closingWords(promise: Moment | null): string {
  return promise === null ? 'no date' : `${dayText(promise.at)}, closing time ${timeOfDayText(promise.at)}`;
}

function shareWords(share: EstimateOrRefused | null): string {
  return share?.kind === 'estimate'
    ? `${writtenText({ value: share.value, low: share.value, high: share.value }, PERCENT)} %`
    : '?';
}

function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}
