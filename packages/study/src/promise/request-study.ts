import { MILLISECONDS_PER_HOUR } from '@buildweek/core';
import type { PromisedRequest, PromiseMove, PromiseWay } from '@buildweek/results';
import { effectsBetween, hoursLater } from './effects.ts';
import { LabMoments } from './lab-moments.ts';
import { endingsOf, type PlayedJobs, playJobs } from './play-jobs.ts';
import type { AskedRequestWay, PromisePlay, PromiseQuestion } from './promise-question.ts';
import { chanceBy, meanOver, promisedDates } from './promised-dates.ts';
import { sentOutLab, withRequest } from './requested-lab.ts';

/** How often the lab is played in all, as far as it is known beforehand. */
export function playsOfRequest({ request, ways }: PromiseQuestion): number {
  const asked = ways.filter(({ finish }) => finish === request.finish).length;
  const others = Math.max(
    0,
    ...ways.map(({ route }) => ways.filter((way) => way.route === route).length - 1),
  );
  const again = ways.some(({ isOwn, finish }) => isOwn && finish === request.finish) ? 0 : 1;
  return 2 + again + asked + 1 + (request.quantity > 1 ? 1 : 0) + others;
}

/**
 * When a new request is ready, by every way of making it and made outside; what moves the date; and what taking it on
 * does to the jobs that are there. All of it on the same random numbers.
 *
 * @returns null when it was stopped
 * @throws RangeError when no way has the finish that is asked for
 */
export async function requestStudy(
  question: PromiseQuestion,
  play: PromisePlay,
): Promise<PromisedRequest | null> {
  const { request } = question;
  const { quantity, rush, finish } = request;
  const asked = question.ways.filter((way) => way.finish === finish);
  const [first] = asked;
  if (first === undefined) throw new RangeError('Nothing can make the request.');
  const moments = new LabMoments(first.lab);
  const dates = (endings: readonly number[]) => promisedDates(endings, moments, play.lastWeeks);
  const impossible = [...question.impossible];

  const played: PlayedWay[] = [];
  for (const way of asked) {
    const one = await playWay(way, quantity, rush, way.isOwn, play);
    if (one === null) return null;
    played.push(one);
  }
  const ways = played.map(
    ({ way, endings, due }): PromiseWay => ({
      route: way.route,
      process: way.process,
      material: way.material,
      isOwn: way.isOwn,
      dates: dates(endings),
      meanHours: meanOver(endings.map((ended) => hoursFrom(moments, ended))),
      due: due === null ? null : moments.moment(due),
      onTime: due === null ? null : chanceBy(endings, due),
    }),
  );
  const outside = sentOutLab(first, quantity, rush);
  if (outside === null) {
    impossible.push({ way: 'sent out', reason: 'The scenario does not say how long work takes outside.' });
  } else {
    const sent = await playJobs(outside, 1, null, play);
    if (sent === null) return null;
    const endings = endingsOf(sent, 0);
    ways.push({
      route: null,
      process: null,
      material: null,
      isOwn: false,
      dates: dates(endings),
      meanHours: meanOver(endings.map((ended) => hoursFrom(moments, ended))),
      due: null,
      onTime: null,
    });
  }

  const chosen = chosenOf(played);
  const moves: PromiseMove[] = [];
  for (const move of movesOf(question, chosen.way)) {
    const one = await playWay(move.way, move.quantity, move.rush, false, play);
    if (one === null) return null;
    const later = one.endings.map((ended, index) => hoursLater(ended, chosen.endings[index] ?? 0));
    moves.push({
      what: move.what,
      quantity: move.quantity,
      rush: move.rush,
      finish: move.way.finish,
      dates: dates(one.endings),
      hours: meanOver(later),
    });
  }

  const jobs = chosen.way.lab.initialState.jobs.length;
  if (jobs === 0)
    return { request, ways, impossible, chosen: chosen.way.route, moves, effects: [], jobsLate: null };
  const taken = chosen.way.isOwn ? chosen : await playWay(chosen.way, quantity, rush, true, play);
  const without = await playJobs(chosen.way.lab, jobs, null, play);
  if (taken === null || without === null) return null;
  return {
    request,
    ways,
    impossible,
    chosen: chosen.way.route,
    moves,
    ...effectsBetween(chosen.way.lab, without, taken.played, moments),
  };
}

/** One way with the request played on it. */
interface PlayedWay {
  readonly way: AskedRequestWay;
  readonly due: number | null;
  readonly played: PlayedJobs;
  readonly endings: readonly number[];
}

/** @param isWhole whether all jobs in the lab are played to their end, or the request alone */
async function playWay(
  way: AskedRequestWay,
  quantity: number,
  rush: boolean,
  isWhole: boolean,
  play: PromisePlay,
): Promise<PlayedWay | null> {
  const { lab, job, due } = withRequest(way, quantity, rush);
  const played = await playJobs(lab, job + 1, isWhole ? null : job, play);
  return played === null ? null : { way, due, played, endings: endingsOf(played, job) };
}

/** The route that the scenario makes the part on; of a new part the one that is ready first in eight of ten plays. */
function chosenOf(played: readonly PlayedWay[]): PlayedWay {
  const at = ({ endings }: PlayedWay): number =>
    [...endings].sort((a, b) => a - b)[Math.floor(0.8 * endings.length)] ?? 0;
  const own = played.find(({ way }) => way.isOwn);
  const [first, ...others] = played as readonly [PlayedWay, ...PlayedWay[]];
  return own ?? others.reduce((best, one) => (at(one) < at(best) ? one : best), first);
}

interface AskedMove {
  readonly what: string;
  readonly way: AskedRequestWay;
  readonly quantity: number;
  readonly rush: boolean;
}

function movesOf({ request, ways }: PromiseQuestion, way: AskedRequestWay): AskedMove[] {
  const { quantity, rush, finish } = request;
  const half = Math.ceil(quantity / 2);
  return [
    { what: rush ? 'as a normal job' : 'as a rush job', way, quantity, rush: !rush },
    ...(quantity > 1
      ? [{ what: half === 1 ? 'one piece only' : `${half} pieces only`, way, quantity: half, rush }]
      : []),
    ...ways
      .filter((other) => other.route === way.route && other.finish !== finish)
      .map((other) => ({ what: `finish: ${other.finish}`, way: other, quantity, rush })),
  ];
}

function hoursFrom({ now }: LabMoments, ended: number): number {
  return (ended - now) / MILLISECONDS_PER_HOUR;
}
