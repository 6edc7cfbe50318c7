import type { Stage } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import type { OracleHistory } from './oracle.ts';
import { playMinuteByMinute } from './oracle.ts';
import {
  AT_ONCE,
  bench,
  build,
  byHand,
  hour,
  labOf,
  lineOf,
  machines,
  onDays,
  people,
  STAGE,
  takes,
} from './small-lab.ts';

const MON = 0;
const TUE = 1;
const WED = 2;
const THU = 3;
const FRI = 4;
const SAT = 5;
const WORKDAYS = [MON, TUE, WED, THU, FRI];
const EIGHT_TO_FOUR = onDays(WORKDAYS, ['08:00', '16:00']);

/** `fri 14:30 -> fri 15:30` for one phase of the first job, pauses left out. */
function span(history: OracleHistory, stage: string, phase: string, job = 0): string {
  const of = (what: string): string => {
    const event = history.events.find(
      (entry) => entry.job === job && entry.stage === stage && entry.phase === phase && entry.what === what,
    );
    if (event === undefined) throw new Error(`${stage} ${phase} never: ${what}.`);
    return lineOf(event).slice(0, lineOf(event).indexOf(' step'));
  };
  return `${of('step starts')} -> ${of('step ends')}`;
}

function leadHours(history: OracleHistory, arrivedAtHour: number, job = 0): number {
  const finish = history.finishes[job];
  if (finish === null || finish === undefined) throw new Error('The job did not end.');
  return finish / 3_600_000 - arrivedAtHour;
}

/** The lab of the published cases C01 and C02; `pausable` says which of the two rules holds. */
function weekendLab(arrival: number, pausable: boolean) {
  const stages: Stage[] = [
    bench('prepare file', byHand('all', 60, { pausable })),
    build('printers'),
    bench('remove supports', byHand('all', 90, { pausable })),
    bench('inspect', byHand('all', 15, { pausable })),
  ];
  const printers = machines('printers', {
    setUp: byHand('all', 30, { pausable }),
    warmUp: takes(15),
    coolDown: { duration: takes(60), where: 'machine' },
    unload: byHand('all', 15, { pausable }),
  });
  const print = { kind: 'typed', perBuild: takes(20 * 60), perPart: takes(0) } as const;
  return labOf(stages, [arrival], EIGHT_TO_FOUR, { machines: [printers] }, { print });
}

describe('the oracle against timelines computed by hand', () => {
  it('carries a job through a weekend when its set-up fits exactly before the end of the shift', () => {
    // Published check C01 (hand computed).
    const arrival = hour(FRI, '14:30');
    const history = playMinuteByMinute(weekendLab(arrival, false), 3);
    expect(span(history, 'prepare file', 'work')).toBe('fri 14:30 -> fri 15:30');
    expect(span(history, 'build', 'set-up')).toBe('fri 15:30 -> fri 16:00');
    expect(span(history, 'build', 'warm-up')).toBe('fri 16:00 -> fri 16:15');
    expect(span(history, 'build', 'print')).toBe('fri 16:15 -> sat 12:15');
    expect(span(history, 'build', 'cool-down')).toBe('sat 12:15 -> sat 13:15');
    expect(span(history, 'build', 'unload')).toBe('week 2 mon 08:00 -> week 2 mon 08:15');
    expect(span(history, 'remove supports', 'work')).toBe('week 2 mon 08:15 -> week 2 mon 09:45');
    expect(span(history, 'inspect', 'work')).toBe('week 2 mon 09:45 -> week 2 mon 10:00');
    expect(leadHours(history, arrival)).toBeCloseTo(67.5, 9);
  });

  it('keeps set-up for Monday when it must fit and comes one minute too late', () => {
    // Published check C02, "fit" (hand computed).
    const arrival = hour(FRI, '14:31');
    const history = playMinuteByMinute(weekendLab(arrival, false), 3);
    expect(span(history, 'build', 'set-up')).toBe('week 2 mon 08:00 -> week 2 mon 08:30');
    expect(span(history, 'build', 'print')).toBe('week 2 mon 08:45 -> week 2 tue 04:45');
    expect(leadHours(history, arrival)).toBeCloseTo(91.48333333, 7);
  });

  it('leaves one minute of set-up for Monday when it may pause', () => {
    // Published check C02, "pause" (hand computed).
    const arrival = hour(FRI, '14:31');
    const history = playMinuteByMinute(weekendLab(arrival, true), 3);
    expect(span(history, 'build', 'set-up')).toBe('fri 15:31 -> week 2 mon 08:01');
    expect(span(history, 'build', 'print')).toBe('week 2 mon 08:16 -> week 2 tue 04:16');
    expect(leadHours(history, arrival)).toBeCloseTo(91.48333333, 7);
  });

  it.each([
    [true, 'mon 11:30 -> mon 13:00'],
    [false, 'mon 12:30 -> mon 13:30'],
  ])('works around the lunch break (work may pause: %s)', (pausable, expected) => {
    // Published check C03 (hand computed).
    const windows = onDays(WORKDAYS, ['08:00', '12:00'], ['12:30', '16:30']);
    const stages = [bench('hand work', byHand('all', 60, { pausable }))];
    const history = playMinuteByMinute(labOf(stages, [hour(MON, '11:30')], windows), 1);
    expect(span(history, 'hand work', 'work')).toBe(expected);
  });

  it('divides ten hours of work over night shifts around a weekend', () => {
    // Published check C04 (hand computed).
    const windows = onDays(WORKDAYS, ['22:00', '06:00']);
    const stages = [bench('hand work', byHand('all', 600, { pausable: true }))];
    const history = playMinuteByMinute(labOf(stages, [hour(FRI, '23:00')], windows), 3);
    expect(span(history, 'hand work', 'work')).toBe('fri 23:00 -> week 2 tue 01:00');
  });

  it('rests on a closing day', () => {
    // Published check C05 (hand computed): the Monday of the second week is a holiday.
    const stages = [bench('hand work', byHand('all', 120, { pausable: true }))];
    const calendars = [{ name: 'day', weekly: EIGHT_TO_FOUR, closedDays: [7], extra: [] }];
    const history = playMinuteByMinute(labOf(stages, [hour(FRI, '15:00')], EIGHT_TO_FOUR, { calendars }), 3);
    expect(span(history, 'hand work', 'work')).toBe('fri 15:00 -> week 2 tue 09:00');
  });

  it('launches at fixed times, for parts ready strictly before', () => {
    // Published check C10 (hand computed).
    const launch = { ...AT_ONCE, fixedHours: WORKDAYS.map((day) => hour(day, '15:00')) };
    const powder = machines('powder', {
      capacity: 20,
      warmUp: takes(120),
      coolDown: { duration: takes(16 * 60), where: 'machine' },
      unload: byHand('all', 60),
      launch,
    });
    const print = { kind: 'typed', perBuild: takes(14 * 60), perPart: takes(0) } as const;
    const first = hour(WED, '15:00');
    const second = hour(THU, '14:59');
    const stages: Stage[] = [build('powder'), { ...bench('blast', byHand('all', 30)), level: 'build' }];
    const blasting = stages.map((stage) =>
      stage.kind === 'work' ? { ...stage, basis: 'build' as const } : stage,
    );
    const lab = labOf(blasting, [first, second], EIGHT_TO_FOUR, { machines: [powder] }, { print });
    const history = playMinuteByMinute(lab, 3);
    for (const job of [0, 1]) {
      expect(span(history, 'build', 'warm-up', job)).toBe('thu 15:00 -> thu 17:00');
      expect(span(history, 'build', 'cool-down', job)).toBe('fri 07:00 -> fri 23:00');
      expect(span(history, 'build', 'unload', job)).toBe('week 2 mon 08:00 -> week 2 mon 09:00');
    }
    expect(leadHours(history, first, 0)).toBeCloseTo(114.5, 9);
    expect(leadHours(history, second, 1)).toBeCloseTo(90.51666667, 7);
  });

  it('serves one queue in order of arrival, so that the area under the number in the lab is known', () => {
    // Published check Q37 (Little 1961, hand computed): services of 2, 1, 3, 1, 2 h.
    const always = [{ fromHour: 0, toHour: 168 }];
    const base = labOf([], [], always);
    const services = [2, 1, 3, 1, 2];
    const parts = services.map((hours, index) => ({
      ...labOf([bench('serve', byHand('all', hours * 60))], [], always, {}, { name: `part ${index}` })
        .parts[0],
    }));
    const demand = [0, 1, 2, 6, 7].map((atHour, index) => ({
      ...base.demand[0],
      name: `part ${index}`,
      part: `part ${index}`,
      arrivals: { kind: 'dated', jobs: [{ atHour, quantity: 1, rush: false }] },
    }));
    const history = playMinuteByMinute({ ...base, parts, demand } as typeof base, 1);
    expect(history.finishes.map((finish) => Number(finish) / 3_600_000)).toEqual([2, 3, 6, 7, 9]);
  });

  it('follows the law of the lead time when only the calendar makes parts wait', () => {
    // Published check Q40 (elementary): jobs every half hour of one day, ample machines and technicians.
    const everyDay = onDays([...WORKDAYS, SAT, 6], ['08:00', '16:00']);
    const arrivals = Array.from({ length: 48 }, (_, index) => index / 2);
    const printers = machines('printers', {
      count: 48,
      setUp: byHand('all', 0),
      unload: byHand('all', 0),
    });
    const print = { kind: 'typed', perBuild: takes(20 * 60), perPart: takes(0) } as const;
    const staff = [people('technicians', ['all'], { count: 2 })];
    const lab = labOf(
      [build('printers')],
      arrivals,
      everyDay,
      { machines: [printers], people: staff },
      { print },
    );
    const history = playMinuteByMinute(lab, 1);
    const leads = arrivals.map((arrival, job) => leadHours(history, arrival, job));
    for (const [job, lead] of leads.entries()) {
      const arrival = arrivals[job] ?? 0;
      const start = arrival < 8 ? 8 : arrival < 16 ? arrival : 32;
      const printed = start + 20;
      const intoDay = printed % 24;
      const end = intoDay < 8 ? printed - intoDay + 8 : intoDay < 16 ? printed : printed - intoDay + 32;
      expect(lead).toBeCloseTo(end - arrival, 9);
    }
    expect(Math.max(...leads)).toBe(40);
    expect(leads.filter((lead) => lead === 20).length / leads.length).toBeCloseTo(1 / 6, 1);
  });
});

describe('the oracle where rules meet', () => {
  const WINDOWS = onDays(WORKDAYS, ['08:00', '16:00']);
  const oneHour = { kind: 'typed', perBuild: takes(60), perPart: takes(0) } as const;

  it('frees a carrier at the end of the build stage when no stage is said to empty it', () => {
    // Hand computed: two builds of one hour on one machine with one platform; drying holds no platform.
    const printers = machines('printers', { carrier: 'platforms' });
    const drying: Stage = {
      ...STAGE,
      kind: 'wait',
      name: 'dry',
      level: 'build',
      duration: takes(120),
      requesterChance: null,
    };
    const more = { machines: [printers], carriers: [{ name: 'platforms', count: 1 }] };
    const lab = labOf([build('printers'), drying], [8, 8], WINDOWS, more, { print: oneHour });
    const history = playMinuteByMinute(lab, 1);
    expect(span(history, 'build', 'print', 0)).toBe('mon 08:00 -> mon 09:00');
    expect(span(history, 'build', 'print', 1)).toBe('mon 09:00 -> mon 10:00');
    const emptied = [build('printers'), { ...drying, emptiesCarrier: true }];
    const later = playMinuteByMinute(labOf(emptied, [8, 8], WINDOWS, more, { print: oneHour }), 1);
    expect(span(later, 'build', 'print', 1)).toBe('mon 11:00 -> mon 12:00');
  });

  it.each([
    [true, 'mon 14:30 -> mon 15:40'],
    [false, 'mon 14:30 -> mon 15:00'],
  ])('makes the last call early enough for a change of material (attended: %s)', (attended, setUp) => {
    // Hand computed: 30 min of set-up, 40 min of change and 20 min of warm-up before closing at 16:00.
    const printers = machines('printers', {
      setUp: byHand('all', 30),
      warmUp: takes(20),
      initialMaterial: 'clear',
      materialChanges: [{ from: null, to: 'grey', duration: takes(40), attended }],
      launch: { ...AT_ONCE, beforeClosing: true },
    });
    const lab = labOf([build('printers')], [9], WINDOWS, { machines: [printers] }, { print: oneHour });
    const history = playMinuteByMinute(lab, 1);
    expect(span(history, 'build', 'set-up')).toBe(setUp);
    expect(span(history, 'build', 'warm-up')).toBe('mon 15:40 -> mon 16:00');
  });

  it('goes on as overtime for the grace that is allowed, and pauses then', () => {
    // Hand computed: 120 min that were thought to be 60, begun at 15:00, with 30 min of grace behind 16:00.
    const work = byHand('all', 0, { duration: takes(120, 60) });
    const staff = [people('technicians', ['all'], { graceHours: 0.5 })];
    const lab = labOf([bench('hand work', work)], [15], WINDOWS, { people: staff });
    const lines = playMinuteByMinute(lab, 1)
      .events.filter((event) => event.stage !== null)
      .map(lineOf);
    expect(lines).toEqual([
      'mon 15:00 step starts job 0, part hand work work, 1 pieces, by technicians 1',
      'mon 16:30 step pauses job 0, part hand work work, 1 pieces, by technicians 1',
      'tue 08:00 step resumes job 0, part hand work work, 1 pieces, by technicians 1',
      'tue 08:30 step ends job 0, part hand work work, 1 pieces, by technicians 1',
    ]);
  });

  it('splits a job that is larger than a build, and lets it go on when the last piece is printed', () => {
    // Hand computed: five pieces, four in a build of one hour, one machine.
    const printers = machines('printers', { capacity: 4 });
    const stages = [build('printers'), bench('hand work', byHand('all', 30))];
    const base = labOf(stages, [9], WINDOWS, { machines: [printers] }, { print: oneHour });
    const demand = base.demand.map((stream) => ({
      ...stream,
      arrivals: { kind: 'dated', jobs: [{ atHour: 9, quantity: 5, rush: false }] } as const,
    }));
    const lines = playMinuteByMinute({ ...base, demand }, 1)
      .events.filter((event) => event.job >= 0)
      .map(lineOf);
    expect(lines).toEqual([
      'mon 09:00 job arrives job 0, part, 5 pieces',
      'mon 09:00 step starts job 0, part build print, 4 pieces, on printers 1',
      'mon 10:00 step ends job 0, part build print, 4 pieces, on printers 1',
      'mon 10:00 step starts job 0, part build print, 1 pieces, on printers 1',
      'mon 11:00 step ends job 0, part build print, 1 pieces, on printers 1',
      'mon 11:00 step starts job 0, part hand work work, 5 pieces, by technicians 1',
      'mon 11:30 step ends job 0, part hand work work, 5 pieces, by technicians 1',
      'mon 11:30 job ends job 0, part, 5 pieces',
    ]);
  });
});
