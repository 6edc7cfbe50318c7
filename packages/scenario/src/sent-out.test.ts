import type { SendOutRule } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { labOf } from './fixture/lab-of.ts';
import { expectOneProblem, type Mistake } from './fixture/mistake.ts';
import { edited, problemsOf } from './fixture/plain-lab.ts';
import { readScenario } from './read-scenario.ts';

const DAYS = { kind: 'pert', low: 4, mode: 6, high: 9 } as const;

/** The plain lab with this said of all jobs, and with this added to its demand. */
function saying(ofAll: string, ofRing: string): string {
  const all = ofAll === '' ? '' : `sent out: { ${ofAll} }\n`;
  return edited('promise: 3 working days }', `promise: 3 working days${ofRing} }`) + all;
}

function ruleOf(text: string): SendOutRule | null | undefined {
  return labOf(text).demand[0]?.sentOut;
}

function assumptionsOf(text: string): Map<string, string> {
  const reading = readScenario(text, 'lab.yaml');
  if (reading.kind === 'problems') throw new Error(reading.problems.map(({ message }) => message).join());
  return new Map(reading.assumptions.map(({ what, value }) => [what, value]));
}

describe('work that is sent out', () => {
  it('is none when nothing is said, which stands among the assumptions', () => {
    expect(ruleOf(saying('', ''))).toBeNull();
    expect(assumptionsOf(saying('', '')).get('demand / ring / sent out')).toBe('never');
  });

  it('is told for all jobs, or for those of one demand, which takes the time of all when it says none', () => {
    const rule = {
      always: false,
      waitingJobsAbove: 12,
      promiseAtRisk: true,
      leadTime: { kind: 'working days', days: DAYS, cutOffHour: null },
    };
    const takes = 'takes: "4 to 9 working days, usually 6"';
    const when = 'more than 12 jobs wait or a promise is at risk';
    expect(ruleOf(saying(`${takes}, when: ${when}`, ''))).toEqual(rule);
    expect(ruleOf(saying(takes, `, sent out: ${when}`))).toEqual(rule);
    expect(ruleOf(saying('', `, sent out: { ${takes}, when: ${when} }`))).toEqual(rule);
    expect(ruleOf(saying(`${takes}, when: always`, `, sent out: ${when}`))).toEqual(rule);
    expect(ruleOf(saying(`${takes}, when: ${when}`, ', sent out: never'))).toBeNull();
    expect(assumptionsOf(saying(`${takes}, when: ${when}`, '')).get('demand / ring / sent out')).toBe(
      'as for all jobs',
    );
  });

  it('is away by the clock, or by working days that count from the cut-off of its demand', () => {
    expect(ruleOf(saying('takes: 3 days, when: always', ''))?.leadTime).toEqual({
      kind: 'clock',
      duration: { distribution: { kind: 'constant', value: 72 }, typicalHours: 72 },
    });
    expect(ruleOf(saying('takes: 5 working days, when: always', ', cut-off: 12:00'))?.leadTime).toEqual({
      kind: 'working days',
      days: { kind: 'constant', value: 5 },
      cutOffHour: 12,
    });
  });

  it('needs no promise for its cut-off to mean something, when it is away for working days', () => {
    const text = edited(
      'promise: 3 working days }',
      'cut-off: 12:00, sent out: { when: always, takes: 5 working days } }',
    );
    expect(problemsOf(text)).toEqual([]);
  });

  it('leaves out a condition for all jobs that can never hold for a demand', () => {
    const bench = edited(
      'resin part:\n    - build: { on: resin }\n    - wash: { on: washer, empties carrier: yes }\n',
      'resin part:\n',
    ).replace(', fits: 8 per build, print: 3 h per build', '');
    const all = 'sent out: { takes: 5 working days, when: more than 3 jobs wait or a promise is at risk }\n';
    expect(ruleOf(bench + all)).toMatchObject({ waitingJobsAbove: null, promiseAtRisk: true });
    const withoutPromise = bench.replace(', promise: 3 working days', '');
    expect(ruleOf(withoutPromise + all)).toBeNull();
  });

  it('may be all of it, so that the lab needs no machine, no station and nobody for it', () => {
    const text = saying('takes: 5 working days, when: always', '')
      .replace('count: 2, start', 'count: 0, start')
      .replace('washer: {', 'washer: { count: 0,')
      .replace('count: 2, hours', 'count: 0, hours');
    expect(problemsOf(text)).toEqual([]);
    expect(labOf(text)).toMatchObject({
      people: [{ count: 0 }],
      machines: [{ count: 0 }],
      stations: [{ count: 0 }],
    });
  });

  it('needs the machines for jobs that are there at the start', () => {
    const text = `${saying('takes: 5 working days, when: always', '')}at the start: { jobs: [{ demand: ring, stage: build }] }\n`;
    const [problem] = problemsOf(text.replace('count: 2, start', 'count: 0, start'));
    expect(problem).toMatchObject({ line: 9, found: '0' });
    expect(problem?.message).toBe('The lab has none of "resin", and jobs of "ring" come to it.');
  });

  it('is warned of when nothing ever is', () => {
    const text = saying('takes: 5 working days', '');
    expect(problemsOf(text)).toMatchObject([
      { severity: 'warning', line: 23, found: 'sent out', message: expect.stringContaining('ever sent out') },
    ]);
    expect(ruleOf(text)).toBeNull();
  });

  it('lets a group be of nobody when others have its skills', () => {
    const text = edited(
      'people:\n',
      'people:\n  helpers: { count: 0, hours: day, skills: [run machines, hand work] }\n',
    );
    expect(problemsOf(text)).toEqual([]);
  });
});

const PROMISE = 'promise: 3 working days }';
const MISTAKES: readonly Mistake[] = [
  [
    PROMISE,
    'promise: 3 working days, sent out: always }',
    22,
    'always',
    'How long it takes outside is not said.',
    '{ when: always, takes: 4 to 9 working days, usually 6 }',
  ],
  [
    PROMISE,
    'promise: 3 working days, sent out: { when: always } }',
    22,
    'sent out',
    '"takes" is missing in "sent out".',
    'takes: 4 to 9 working days, usually 6',
  ],
  [
    PROMISE,
    'promise: 3 working days, sent out: { takes: 5 working days } }',
    22,
    'sent out',
    '"when" is missing in "sent out".',
    'when: always',
  ],
  [
    PROMISE,
    'promise: 3 working days, sent out: { takes: 5, when: always } }',
    22,
    '5',
    '"5" does not say of what.',
    '5 working days',
  ],
  [
    PROMISE,
    'promise: 3 working days, sent out: { takes: 5 working days, when: often } }',
    22,
    'often',
    '"often" is not understood here.',
    'for example: more than 12 jobs wait or a promise is at risk',
  ],
  [
    PROMISE,
    'promise: 3 working days, sent out: { takes: 5 working days, wen: always } }',
    22,
    'wen',
    '"wen" is not known in "sent out".',
    'when',
  ],
  [
    PROMISE,
    'sent out: { takes: 3 days, when: a promise is at risk } }',
    22,
    'a promise is at risk',
    'Jobs of "ring" have no promise that could be at risk.',
    'more than 12 jobs wait',
  ],
  [
    'demand:\n',
    'sent out: { when: always }\ndemand:\n',
    21,
    'sent out',
    '"takes" is missing in "sent out".',
    'takes: 4 to 9 working days, usually 6',
  ],
];

describe('a mistake in what is sent out is pointed at, with what to write instead:', () => {
  it.each(MISTAKES)('%s -> %s', (...mistake) => {
    expectOneProblem(mistake);
  });

  it('waiting for a machine without a build', () => {
    const [problem] = problemsOf(
      edited(
        'resin part:\n    - build: { on: resin }\n    - wash: { on: washer, empties carrier: yes }\n',
        'resin part:\n',
      )
        .replace(', fits: 8 per build, print: 3 h per build', '')
        .replace(PROMISE, 'sent out: { takes: 3 days, when: more than 3 jobs wait } }'),
    );
    expect(problem).toMatchObject({
      message: 'Jobs of "ring" wait for no machine: their route has no build.',
      found: 'more than 3 jobs wait',
      write: 'always',
    });
  });

  it('working days where the lab has no hours', () => {
    const text = edited('hours:\n  day: { mon-fri: 08:00-12:00 12:30-16:30 }\n', '')
      .replace('hours: day, ', 'hours: always, ')
      .replace(PROMISE, 'sent out: { takes: 5 working days, when: always } }');
    expect(problemsOf(text)).toMatchObject([
      { message: 'Working days are counted by hours, and the lab has none.', found: 'working days' },
    ]);
  });
});
