import type { Lab } from '@buildweek/model';
import { promisedRequestSchema } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import { attended, bench, part } from '../fixture/lab.ts';
import { asWay, promisePlay, sandingLab } from '../fixture/requested-lab.ts';
import { LabMoments } from './lab-moments.ts';
import { endingsOf, playJobs } from './play-jobs.ts';
import { playsOfRequest, requestStudy } from './request-study.ts';
import { requestVerdict } from './request-words.ts';
import { withRequest } from './requested-lab.ts';

const REQUEST = { part: 'lever', isNew: false, quantity: 4, finish: 'cleaned', rush: false, notes: [] };

function question(lab: Lab, more: Partial<Parameters<typeof requestStudy>[0]> = {}) {
  return { request: REQUEST, ways: [asWay(lab)], impossible: [], ...more };
}

/** Due on Wednesday by the clock, and by when the request is: its promise is two working days. */
const WEDNESDAY = 2 * 24 + 16;

describe('A request', () => {
  it('is promised for the closing time after it is ready, behind what goes before it', async () => {
    // Six hours of a job that is due earlier, then four of the request: two on Monday, two on Tuesday until 10:00.
    const found = await requestStudy(
      question(sandingLab([{ quantity: 6, dueAtHour: 24 + 16 }])),
      promisePlay(),
    );
    const [way] = found?.ways ?? [];
    expect(way?.dates.map(({ ready, promise, refused }) => [ready?.at, promise?.at, refused])).toEqual([
      ['2025-01-07 10:00', '2025-01-07 16:00', null],
      ['2025-01-07 10:00', '2025-01-07 16:00', null],
      ['2025-01-07 10:00', '2025-01-07 16:00', null],
      ['2025-01-07 10:00', '2025-01-07 16:00', null],
    ]);
    expect(way?.meanHours).toMatchObject({ value: 34 });
    expect(way?.due?.at).toBe('2025-01-08 16:00');
    expect(way?.onTime).toMatchObject({ value: 1 });
    expect(promisedRequestSchema.parse(found)).toEqual(found);
  });

  it('that comes in the middle of a week is promised from then on', async () => {
    const lab = sandingLab([{ quantity: 2, dueAtHour: 100 }]);
    const state = { ...lab.initialState, atHour: 4 * 24 + 15 };
    const found = await requestStudy(question({ ...lab, initialState: state }), promisePlay());
    // Friday 15:00: the usual promise counts two working days from then, Tuesday; by it the request goes behind the job.
    expect(found?.ways[0]?.due).toMatchObject({ at: '2025-01-14 16:00' });
    expect(found?.ways[0]?.dates[0]).toMatchObject({
      ready: { at: '2025-01-13 13:00', hours: 70 },
      promise: { at: '2025-01-13 16:00' },
    });
  });

  it('that ends exactly at closing time is promised for it', async () => {
    const found = await requestStudy(question(sandingLab([{ quantity: 4, dueAtHour: 16 }])), promisePlay());
    expect(found?.ways[0]?.dates[0]).toMatchObject({
      ready: { at: '2025-01-06 16:00' },
      promise: { at: '2025-01-06 16:00', hours: 16 },
    });
  });

  it('moves with rush, with fewer pieces and with another finish, on the same random numbers', async () => {
    const smooth = sandingLab([{ quantity: 6, dueAtHour: 24 + 16 }], {
      parts: [
        part('lever', []),
        part('new request', [bench('sand', { ...attended('hands', 2), pausable: true }, 'part')]),
      ],
    });
    const lab = sandingLab([{ quantity: 6, dueAtHour: 24 + 16 }]);
    const slow = { ...smooth, parts: [...lab.parts.slice(0, 1), ...smooth.parts.slice(1)] };
    const found = await requestStudy(
      question(lab, { ways: [asWay(lab), asWay(slow, { finish: 'smooth' })] }),
      promisePlay(),
    );
    // Tuesday 10:00; as a rush job Monday 12:00; two pieces Monday 16:00; twice the work Tuesday 14:00.
    expect(found?.moves.map(({ what, hours }) => [what, 'value' in hours ? hours.value : null])).toEqual([
      ['as a rush job', -22],
      ['2 pieces only', -18],
      ['finish: smooth', 4],
    ]);
    expect(requestVerdict(found as NonNullable<typeof found>).join(' ')).toContain(
      'What moves it: as a rush job, 22.0 h earlier in the mean, so promise Mon 6 Jan 16:00;',
    );
  });

  it('tells what it does to the jobs that are there, the one that loses most first', async () => {
    // The first goes before the request, the others behind it, and one of them then misses its promise.
    const lab = sandingLab([
      { quantity: 2, dueAtHour: 16 },
      { quantity: 1, dueAtHour: null },
      { quantity: 3, dueAtHour: WEDNESDAY + 0.5 },
    ]);
    const late = {
      ...lab,
      initialState: {
        ...lab.initialState,
        jobs: lab.initialState.jobs.map((job, index) => (index === 2 ? { ...job, quantity: 14 } : job)),
      },
    };
    const found = await requestStudy(question(late, { request: { ...REQUEST, quantity: 9 } }), promisePlay());
    // By hand: 2 + 14 h end on Tuesday 16:00, the hour of the second job on Wednesday 09:00; with nine hours in between
    // on Thursday 09:00 and 10:00.
    expect(
      found?.effects.map(({ job, due, onTimeBefore, onTimeAfter, hoursLater }) => [
        job,
        due?.at ?? null,
        onTimeBefore === null || !('value' in onTimeBefore) ? null : onTimeBefore.value,
        onTimeAfter === null || !('value' in onTimeAfter) ? null : onTimeAfter.value,
        'value' in hoursLater ? hoursLater.value : null,
      ]),
    ).toEqual([
      ['job 3', '2025-01-08 16:30', 1, 0, 41],
      ['job 2', null, null, null, 24 + 1],
      ['job 1', '2025-01-06 16:00', 1, 1, 0],
    ]);
    expect(found?.jobsLate).toMatchObject({ value: 1 });
    expect(requestVerdict(found as NonNullable<typeof found>).at(-1)).toMatch(
      /makes 1\.00 more of the 3 jobs in the lab late, in the mean\. Most hurt: job 3 \(14 × lever\), on time 100 % before and 0 % after/,
    );
  });

  it('takes no random number from any other job', async () => {
    const random = { distribution: { kind: 'exponential' as const, mean: 2 }, typicalHours: 2 };
    const base = sandingLab([{ quantity: 1 }, { quantity: 2 }, { quantity: 1 }]);
    const sand = bench('sand', { ...attended('hands', 2), duration: random, pausable: true });
    const lab: Lab = {
      ...base,
      // The request only waits for two days, so that it stands in nobody's way.
      parts: [
        part('lever', [sand]),
        part('new request', [
          {
            ...bench('dry', attended('hands', 1)),
            kind: 'wait',
            duration: { ...random, typicalHours: 48 },
            requesterChance: null,
          } as never,
        ]),
      ],
      demand: base.demand.map((stream) =>
        stream.name === 'lever'
          ? {
              ...stream,
              arrivals: {
                kind: 'poisson',
                perWeek: 30,
                profile: null,
                growthPerMonth: 0,
                jobsPerArrival: { kind: 'fixed', value: 1 },
              },
            }
          : stream,
      ),
    };
    const requested = withRequest(asWay(lab), 3, true);
    expect(requested.job).toBe(3);
    const before = await playJobs(lab, 3, null, promisePlay());
    const after = await playJobs(requested.lab, 4, null, promisePlay());
    for (const job of [0, 1, 2]) {
      const endings = before === null ? [] : endingsOf(before, job);
      expect(new Set(endings).size).toBeGreaterThan(10);
      expect(after === null ? null : endingsOf(after, job)).toEqual(endings);
    }
  });

  it('that is not finished in the weeks looked ahead has no date, and says so', async () => {
    const found = await requestStudy(question(sandingLab([], { people: [] })), promisePlay({ lastWeeks: 2 }));
    expect(found?.ways[0]?.dates[1]).toMatchObject({
      ready: null,
      promise: null,
      refused: 'It is later than the 2 weeks that are looked ahead; give more of them.',
    });
    expect(found?.ways[0]?.meanHours.kind).toBe('never');
  });

  it('is given only the chances that the number of plays can hold', async () => {
    const found = await requestStudy(question(sandingLab([])), promisePlay({ replications: 10 }));
    expect(found?.ways[0]?.dates.map(({ refused }) => refused)).toEqual([
      null,
      null,
      null,
      '95 % needs at least 19 plays; there are 10.',
    ]);
    expect(found?.ways[0]?.onTime?.kind).toBe('refused');
  });

  it('of a new part is told about the way that is ready first', async () => {
    const quick = sandingLab([]);
    const slow = sandingLab([{ quantity: 8, dueAtHour: 16 }]);
    const ways = [
      asWay(slow, { isOwn: false, route: 'slow' }),
      asWay(quick, { isOwn: false, route: 'quick' }),
    ];
    expect((await requestStudy(question(quick, { ways }), promisePlay()))?.chosen).toBe('quick');
  });

  it('made outside is ready after the lead time there, whatever stands in the lab', async () => {
    const lab = sandingLab([{ quantity: 6 }]);
    const outside: Lab = {
      ...lab,
      demand: lab.demand.map((stream) => ({
        ...stream,
        sentOut: {
          always: true,
          waitingJobsAbove: null,
          promiseAtRisk: false,
          leadTime: { kind: 'working days', days: { kind: 'constant', value: 3 }, cutOffHour: null },
        },
      })),
    };
    const found = await requestStudy(question(outside), promisePlay());
    expect(found?.ways.map(({ route }) => route)).toEqual(['sanded', null]);
    expect(found?.ways[1]?.dates[0]?.ready?.at).toBe('2025-01-09 16:00');
    const without = await requestStudy(question(lab), promisePlay());
    expect(without?.impossible).toEqual([
      { way: 'sent out', reason: 'The scenario does not say how long work takes outside.' },
    ]);
  });

  it('is played as often as it is said to be', async () => {
    let plays = 0;
    const asked = question(sandingLab([{}]));
    await requestStudy(asked, promisePlay({ onReplication: () => plays++ }));
    // Without sending out, which cannot be known before: one less.
    expect(plays).toBe(20 * (playsOfRequest(asked) - 1));
  });
});

describe('Moments of a lab', () => {
  it('are told by the clock on the wall, rounded up to the minute', () => {
    const lab = sandingLab([], { clockChanges: [{ atHours: 30, localMinusElapsedHours: 1 }] });
    const moments = new LabMoments(lab);
    expect(moments.moment(29.999 * 3_600_000)).toMatchObject({ at: '2025-01-07 06:00' });
    expect(moments.moment(30 * 3_600_000)).toEqual({ at: '2025-01-07 07:00', hours: 30 });
    expect(moments.moment(moments.closingFrom(31 * 3_600_000)).at).toBe('2025-01-07 16:00');
  });
});
