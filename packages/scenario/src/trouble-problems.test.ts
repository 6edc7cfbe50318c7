import { describe, expect, it } from 'vitest';
import { edited, problemsOf } from './fixture/plain-lab.ts';
import { readScenario } from './read-scenario.ts';

/** What is changed in the plain lab, and what is then said: word that is pointed at, message, what to write. */
type Case = readonly [from: string, to: string, at: string, message: string, write: string];

const PEOPLE = 'count: 2, hours';
const MACHINE = 'class: small mask VPP';
const STATION = 'by: run machines';
const SAND = ', may pause: yes';
const DEMAND = 'pieces: 1 to 6';

const CASES: readonly Case[] = [
  [
    PEOPLE,
    'count: 2, leave: { anna: 2027-04-05 }, hours',
    'anna: 2027',
    '"technicians" has no person anna.',
    '1: 2027-04-05 to 2027-04-16',
  ],
  [
    PEOPLE,
    'count: 2, leave: { 1: 2027-04-31 }, hours',
    '2027-04-31',
    'The date 2027-04-31 does not exist.',
    'for example: 2027-04-30',
  ],
  [
    PEOPLE,
    'count: 2, absent: 100 % of days, hours',
    '100 %',
    'Who is never there is not one of them.',
    'for example: 50 % of days',
  ],
  [
    MACHINE,
    `${MACHINE}, breaks down: 300 h`,
    '300 h',
    '"300 h" does not say whether only running counts or every hour of the day.',
    '300 h of running',
  ],
  [
    MACHINE,
    'set-up: 10 min, breaks down: about 300 h of running',
    'about 300 h',
    'Nothing says who repairs and how long it takes.',
    '{ every: about 250 h of running, repair: { by: run machines, takes: 30 min to 6 h, usually 1.5 h } }',
  ],
  [
    MACHINE,
    `${MACHINE}, breaks down: [{ every: about 300 h of running }]`,
    'every',
    '"repair" is missing in item 1 of "breaks down".',
    'repair: { by: run machines, takes: 30 min to 6 h, usually 1.5 h }',
  ],
  [
    MACHINE,
    `${MACHINE}, breaks down: [{ repair: 1 h }]`,
    'repair',
    '"every" is missing in item 1 of "breaks down".',
    'every: about 250 h of running',
  ],
  [
    MACHINE,
    `${MACHINE}, breaks down: { service: { response: 8 h } }`,
    'service',
    '"takes" is missing in "service".',
    'takes: 1 to 4 h, usually 2',
  ],
  [
    MACHINE,
    `${MACHINE}, breaks down: { repair: 1 h, service: { response: 8 h, takes: 1 h } }`,
    'service',
    '"service" has no meaning here: "repair" says who repairs.',
    'one of the two',
  ],
  [
    MACHINE,
    `${MACHINE}, breaks down: { repair: { by: repairr, takes: 1 h } }`,
    'repairr',
    'Nobody can do the repair of "resin": no group of people has the skill "repairr".',
    '"repairr" into the skills of a group, or "by:" with a skill that is there',
  ],
  [
    MACHINE,
    `${MACHINE}, breaks down: { service: { response: 8 h, takes: 1 h, hours: dya } }`,
    'dya',
    'There are no hours called "dya".',
    'day',
  ],
  [
    MACHINE,
    `${MACHINE}, breaks down: [{ every: about 9 weeks by the clock, service: { response: 8 h, takes: 1 h, hours: dya } }]`,
    'dya',
    'There are no hours called "dya".',
    'day',
  ],
  [
    MACHINE,
    `${MACHINE}, maintenance: [{ every: 100 h of running, takes: 1 h }, { every: 200 h of running, takes: 1 h, by: glazing }]`,
    'glazing',
    'Nobody can do the maintenance "maintenance 2" of "resin": no group of people has the skill "glazing".',
    '"glazing" into the skills of a group, or "by:" with a skill that is there',
  ],
  [
    MACHINE,
    `${MACHINE}, maintenance: { takes: 1 h, every: 200 h of running, attended: no, by: hand work }`,
    'by: hand work',
    '"by" has no meaning here: nobody stays while it runs.',
    'attended: yes, and by whom',
  ],
  [
    MACHINE,
    `${MACHINE}, maintenance: { takes: 6 h, every: 200 h of running, may pause: no }`,
    'maintenance',
    'The maintenance of "resin" never fits into a shift: it typically takes 6 h, and the longest stretch with somebody there is 4 h.',
    'may pause: yes',
  ],
  [MACHINE, `${MACHINE}, test prints: daily`, 'daily', '"daily" is not possible here.', 'for example: none'],
  [
    MACHINE,
    `${MACHINE}, maintenance: { called: film, every: 200 h of running, takes: 1 h }, test prints: { called: film, every: 2 weeks by the clock, takes: 1 h }`,
    'film, every: 2 weeks',
    '"film" is there twice.',
    'film again',
  ],
  [
    MACHINE,
    `${MACHINE}, fails: 100 % of builds`,
    '100 %',
    'No build would ever come out.',
    'for example: 50 % of builds',
  ],
  [
    MACHINE,
    `${MACHINE}, fails: { chance: 5 % of builds, loses: one job, cleaning: 10 min }`,
    'cleaning',
    '"cleaning" has no meaning here: the others are unloaded as usual.',
    'loses: the build',
  ],
  [
    MACHINE,
    `${MACHINE}, fails: { chance: 5 % of builds, cleaning: { by: scrubbing, takes: 10 min } }`,
    'scrubbing',
    'Nobody can do the cleaning of "resin" behind a failed build: no group of people has the skill "scrubbing".',
    '"scrubbing" into the skills of a group, or "by:" with a skill that is there',
  ],
  [
    MACHINE,
    `${MACHINE}, first layers: 5 h`,
    'first layers',
    'The first layers of "resin" never fits into a shift: it typically takes 5 h, and the longest stretch with somebody there is 4 h.',
    'may pause: yes',
  ],
  [
    MACHINE,
    `${MACHINE}, noticed: rounds`,
    'rounds',
    '"rounds" is not understood here.',
    'for example: on rounds every 2 h',
  ],
  [MACHINE, `${MACHINE}, available: dya`, 'dya', 'There are no hours called "dya".', 'day'],
  [
    MACHINE,
    `${MACHINE}, runs alone: nights`,
    'nights',
    '"nights" is not a span of the week.',
    'for example: mon-thu 16:00-07:00',
  ],
  [
    MACHINE,
    `${MACHINE}, runs alone: [always, mon-thu 16:00-07:00]`,
    'always',
    'Always and never stand alone.',
    '[mon-thu 16:00-07:00]',
  ],
  [
    STATION,
    `${STATION}, breaks down: { every: about 300 h of running, repair: { by: welding, takes: 1 h } }`,
    'welding',
    'Nobody can do the repair of "washer": no group of people has the skill "welding".',
    '"welding" into the skills of a group, or "by:" with a skill that is there',
  ],
  [
    '- build: { on: resin }',
    '- build: { on: resin, rejects: 4 % }',
    'rejects',
    "Parts are found bad where somebody looks at them; builds that do not come out are the machine's.",
    'fails: 5 % of builds under machines / resin',
  ],
  [
    SAND,
    `${SAND}, rejects: 100 % back to build`,
    '100 %',
    'No part would ever pass.',
    'for example: 50 % back to build',
  ],
  [
    SAND,
    `${SAND}, rejects: 4 % back to biuld`,
    '4 %',
    'The route "resin part" has no stage called "biuld".',
    '4 % back to build',
  ],
  [
    SAND,
    `${SAND}, rejects: 4 % back to wash`,
    '4 %',
    'Whole builds go through "wash", and single parts cannot go back into one there.',
    '4 % back to build',
  ],
  [
    '- sand: { by: hand work, takes: 5 min per part, may pause: yes }',
    '- sand: { by: hand work, takes: 5 min per part, may pause: yes, rejects: 4 % back to look }\n    - look: { by: hand work, takes: 1 min }',
    '4 %',
    '"look" does not come before this stage.',
    '4 % back to build',
  ],
  [
    '- dry: { wait: 30 min }',
    '- dry: { wait: 30 min, rejects: 4 % }',
    'rejects',
    'At "dry" nobody looks at the parts of single jobs.',
    'rejects at a later stage',
  ],
  [
    SAND,
    `${SAND}, at most: 2 h after wash`,
    '2 h',
    'The wait for "sand" begins behind the stage just before it, which is "dry".',
    '2 h after dry',
  ],
  [
    '- build: { on: resin }',
    '- build: { on: resin, at most: 2 h }',
    'at most',
    '"build" is the first stage: there is none before it to wait after.',
    'the stage without it',
  ],
  [
    '- dry: { wait: 30 min }',
    '- dry: { wait: 30 min, at most: 2 h }',
    'at most',
    'Nothing ever waits for "dry": a wait starts at once.',
    'the key at the stage behind it',
  ],
  [
    '- dry: { wait: 30 min }',
    '- ask: { ask requester: 20 %, takes: 3 h, by: hand work }',
    'by',
    '"by" has no meaning here: a question to the requester needs nothing and nobody.',
    'the question alone, and the rest as a stage of its own',
  ],
  [
    '- dry: { wait: 30 min }',
    '- ask: { ask requester: 20 % }',
    'ask: {',
    '"takes" is missing in "ask".',
    'takes: 1 to 48 h, usually 6',
  ],
  [
    DEMAND,
    `${DEMAND}, cancels: 3 %`,
    '3 %',
    '"3 %" does not say how long after the arrival.',
    '3 % after 2 to 72 h, usually 24',
  ],
  [
    DEMAND,
    `${DEMAND}, revises: { chance: 3 % }`,
    'revises',
    '"after" is missing in "revises".',
    'after: 2 to 72 h, usually 24',
  ],
  ['jobs: 10 per week', 'kept in the lab: 4', '4,', '"4" does not say how many jobs.', '4 jobs'],
  [
    'jobs: 10 per week',
    'kept in the lab: 4 jobs, growth: 2 % per month',
    'growth',
    '"growth" has no meaning here: it belongs to "jobs", which says how many arrive at random moments.',
    'jobs: 14 per week',
  ],
  [
    'name: plain lab',
    'dispatch: { within: shortest }',
    'shortest',
    '"shortest" is not possible here.',
    'for example: promise',
  ],
  [
    'name: plain lab',
    'dispatch: { rush interrupts: maybe }',
    'maybe',
    '"maybe" is neither yes nor no.',
    'for example: no',
  ],
];

describe('what is said wrongly of troubles is pointed at, with what to write instead:', () => {
  const lines = (text: string): string[] => text.split('\n');

  it.each(CASES)('%s -> %s', (from, to, at, message, write) => {
    const text = edited(from, to);
    const problems = problemsOf(text);
    expect(problems.map((candidate) => candidate.message)).toEqual([message]);
    const [problem] = problems;
    expect(problem).toMatchObject({ severity: 'error', write });
    const line = lines(text)[(problem?.line ?? 0) - 1] ?? '';
    expect(line.slice((problem?.column ?? 0) - 1).startsWith(at), line).toBe(true);
  });
});

describe('keys that are written by habit', () => {
  it.each([
    [PEOPLE, 'holiday', 'leave'],
    [PEOPLE, 'sick', 'absent'],
    [MACHINE, 'mtbf', 'breaks down'],
    [MACHINE, 'breakdowns', 'breaks down'],
    [MACHINE, 'failures', 'fails'],
    [MACHINE, 'unattended', 'runs alone'],
    [SAND, 'scrap', 'rejects'],
    [DEMAND, 'cancel', 'cancels'],
  ])('beside "%s" a key "%s" is answered with "%s"', (from, key, write) => {
    const [problem] = problemsOf(
      edited(from, from.startsWith(',') ? `${from}, ${key}: x` : `${key}: x, ${from}`),
    );
    expect(problem).toMatchObject({ found: key, write });
  });
});

describe('a lab where nobody ever comes', () => {
  const lab = (keys: string) => `
buildweek: 1
stations: { server: { ${keys} } }
routes: { visit: [serve: { on: server, takes: 1 h }] }
parts: { customer: { route: visit } }
demand: { customer: { jobs: 5 per week } }
`;
  const broken = 'breaks down: { every: about 10 h of running, service: { response: 0 h, takes: 2 h } }';

  it('never learns that a machine has stopped, unless it is monitored', () => {
    expect(problemsOf(lab(broken))).toMatchObject([
      {
        line: 3,
        message: 'Nobody ever learns that "server" has stopped: no people ever come to this lab.',
        write: 'noticed: monitored',
      },
    ]);
    expect(readScenario(lab(`${broken}, noticed: monitored`), 'lab.yaml').kind).toBe('scenario');
  });
});

describe('hours without windows', () => {
  const withHours = (from: string, to: string) =>
    problemsOf(edited(from, to).replace('hours:\n', 'hours:\n  nobody: { closed: 2027-04-05 }\n'));

  it('are no hours of a service', () => {
    const service = 'service: { response: 8 h, takes: 1 h, hours: nobody }';
    expect(withHours(MACHINE, `${MACHINE}, breaks down: { called: lamp, ${service} }`)).toMatchObject([
      { line: 10, message: 'Nobody ever comes for "lamp": the hours "nobody" have no windows.' },
    ]);
  });

  it('are no hours of borrowed equipment', () => {
    expect(withHours(STATION, `${STATION}, available: nobody`)).toMatchObject([
      { line: 13, message: '"washer" is never there: the hours "nobody" have no windows.' },
    ]);
  });
});
