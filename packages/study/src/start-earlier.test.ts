import { createSimulator } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import { NO_CHANGES } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { startEarlier } from './start-earlier.ts';

const lab: Lab = {
  name: 'closed on Tuesday of the first week',
  startDate: '2027-03-01',
  clockChanges: [{ atHours: 26, localMinusElapsedHours: 1 }],
  calendars: [
    {
      name: 'day',
      weekly: [0, 1, 2, 3, 4].map((day) => ({ fromHour: day * 24 + 8, toHour: day * 24 + 16 })),
      closedDays: [1],
      extra: [{ fromHour: 5 * 24 + 9, toHour: 5 * 24 + 12 }],
    },
  ],
  labCalendar: 'day',
  people: [
    {
      name: 'technicians',
      count: 1,
      calendar: 'day',
      skills: ['all'],
      otherDutiesShare: 0,
      graceHours: 0,
      leave: [{ person: 1, fromHour: 72, toHour: 96 }],
      absence: null,
    },
  ],
  machines: [],
  stations: [],
  carriers: [],
  parts: [],
  demand: [],
  dispatch: {
    order: ['machine', 'station', 'bench'],
    fitOn: 'typical',
    within: 'promise',
    rushInterrupts: false,
  },
  initialState: { jobs: [], machines: [] },
  deadlines: [],
};

describe('startEarlier', () => {
  it('puts the left-out weeks before the stated start, so that the measured week keeps its closing days and leave', () => {
    const settings = { seed: 's', replication: 0, weeks: 1, capWeeks: 1, trace: false, queueWaits: false };
    const direct = createSimulator(lab).simulate({ ...settings, ignoredWeeks: 0 });
    const shifted = createSimulator(startEarlier(lab, 3)).simulate({ ...settings, ignoredWeeks: 3 });
    expect(shifted.people[0]?.onDutyByHourOfWeek).toEqual(direct.people[0]?.onDutyByHourOfWeek);
    expect(shifted.windowStart).toBe(3 * 168 * 3_600_000);
  });

  it('brings growing demand to its stated level at the stated start', () => {
    const growing: Lab = {
      ...lab,
      demand: [
        {
          name: 'a',
          part: 'a',
          arrivals: {
            kind: 'poisson',
            perWeek: 100,
            profile: null,
            growthPerMonth: 0.04,
            jobsPerArrival: { kind: 'fixed', value: 1 },
          },
          quantity: { kind: 'fixed', value: 1 },
          rushShare: 0,
          due: { kind: 'none' },
          rushDue: { kind: 'none' },
          changes: NO_CHANGES,
          sentOut: null,
        },
      ],
    };
    const [stream] = startEarlier(growing, 13).demand;
    const perWeek = stream?.arrivals.kind === 'poisson' ? stream.arrivals.perWeek : 0;
    expect(perWeek * 1.04 ** ((13 * 7 * 12) / 365.25)).toBeCloseTo(100, 10);
  });

  it('gives the lab itself when nothing is left out', () => {
    expect(startEarlier(lab, 0)).toBe(lab);
  });
});
