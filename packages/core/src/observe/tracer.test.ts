import { PERSON_STATES } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import {
  at,
  attended,
  clock,
  dated,
  HOUR,
  lab,
  part,
  people,
  play,
  stream,
  workStage,
} from '../fixture/lab.ts';
import { hashHistory } from './hash.ts';
import type { History, StateSpan, TraceEntry } from './history.ts';

const LEVER = part('lever', [workStage('sand', attended('all', 1, { pausable: true }))]);
const PROMISED = {
  due: { kind: 'clock', hours: 30 },
  rushDue: { kind: 'clock', hours: 10 },
} as const;
const LAB = lab({
  people: [people('technicians', 1, ['all'], { otherDutiesShare: 0.25 })],
  parts: [LEVER],
  demand: [
    { ...dated('lever', [at('mon', '07:00')]), ...PROMISED },
    { ...dated('lever', [at('mon', '07:00')], { rush: true }), ...PROMISED, name: 'urgent' },
    { ...dated('lever', [at('mon', '07:00')]), name: 'whenever' },
  ],
});

function entries(history: History, keep: (entry: TraceEntry) => boolean): TraceEntry[] {
  return (history.trace ?? []).filter(keep);
}

describe('Tracer', () => {
  it('writes down what a job is promised, and whether it is rush', () => {
    const arrivals = entries(play(LAB), ({ what }) => what === 'job arrives');
    expect(arrivals.map(({ rush, dueAt }) => [rush, dueAt === null ? null : clock(dueAt)])).toEqual([
      [false, 'tue 13:00'],
      [true, 'mon 17:00'],
      [false, null],
    ]);
  });

  it('says how long ago a job came that is there at the start', () => {
    const initial = {
      stream: 'lever',
      quantity: 1,
      arrivedAtHour: -5,
      dueAtHour: null,
      rush: false,
      stage: 'sand',
      remainingHours: null,
    };
    const history = play({
      ...LAB,
      demand: [stream('lever')],
      initialState: { jobs: [initial], machines: [] },
    });
    const [arrival] = entries(history, ({ what }) => what === 'job arrives');
    expect(arrival).toMatchObject({ time: 0, duration: 5 * HOUR });
  });

  it('writes down other duties from their beginning to their end, and to the end of the shift', () => {
    const isDuty = ({ what }: TraceEntry): boolean => what.startsWith('other duties');
    const found = entries(play({ ...LAB, demand: [] }), isDuty);
    expect(found.length).toBeGreaterThan(10);
    found.forEach((entry, index) => {
      expect(entry.what).toBe(index % 2 === 0 ? 'other duties start' : 'other duties end');
      expect(entry.persons).toEqual(['technicians 1']);
    });
    const owed = found.reduce((sum, { time, what }) => sum + (what === 'other duties end' ? time : -time), 0);
    // A quarter of ten days of eight hours falls due; blocks that begin too late in a day lapse into the next.
    expect(owed).toBeLessThanOrEqual(20 * HOUR);
    expect(owed).toBeGreaterThan(16 * HOUR);
  });

  it('writes down in which state everybody was from the beginning to the end, without a gap', () => {
    const history = play(LAB);
    const spans = (history.states ?? []).filter(({ person }) => person === 'technicians 1');
    expect(spans[0]?.from).toBe(0);
    expect(spans.at(-1)?.to).toBe(history.endedAt);
    expect(spans.slice(1).map(({ from }) => from)).toEqual(spans.slice(0, -1).map(({ to }) => to));
    const [group] = history.people;
    PERSON_STATES.forEach((state, position) => {
      const clipped = ({ from, to }: StateSpan): number =>
        Math.max(0, Math.min(to, history.windowEnd) - Math.max(from, history.windowStart));
      const total = spans
        .filter((span) => span.state === state)
        .reduce((sum, span) => sum + clipped(span), 0);
      expect(total).toBe(group?.timeInState[position]);
    });
  });

  it('changes nothing by writing down', () => {
    expect(hashHistory(play(LAB, { trace: true }))).toBe(hashHistory(play(LAB, { trace: false })));
  });
});
