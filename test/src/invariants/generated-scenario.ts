import fc from 'fast-check';

/**
 * Texts of small scenarios of every kind, for properties that go through the scenario file. They need not make sense,
 * only be allowed: everybody can do everything, and no attended work is longer than a shift.
 */

/** One line of a text, or nothing. */
const optional = (line: string): fc.Arbitrary<string> => fc.constantFrom('', line);

/** `key: value` with one of some values, or nothing. */
const perhaps = (key: string, ...values: readonly string[]): fc.Arbitrary<string> =>
  fc.constantFrom('', ...values.map((value) => `${key}: ${value}`));

/** What stands between the braces of a YAML map. */
const map = (...entries: readonly fc.Arbitrary<string>[]): fc.Arbitrary<string> =>
  fc.tuple(...entries).map((found) => `{ ${found.filter((entry) => entry !== '').join(', ')} }`);

const always = (text: string): fc.Arbitrary<string> => fc.constant(text);

const SKILLS = 'skills: [run machines, hand work]';
const HAND_TIMES = ['5 min per part', '10 to 30 min per job, usually 20', 'exponential mean 20 min per job'];

const people = fc
  .tuple(
    map(
      fc.constantFrom('count: 1', 'count: 2'),
      always('hours: day'),
      always(SKILLS),
      perhaps('other duties', '10 %', '25 %'),
      perhaps('grace', '15 min'),
      perhaps('leave', '2027-03-25'),
      perhaps('absent', '10 % of days'),
    ),
    optional('  helper: { hours: evening, skills: [hand work, run machines], other duties: 5 % }\n'),
  )
  .map(([technicians, helper]) => `people:\n  technicians: ${technicians}\n${helper}`);

const launch = perhaps(
  'start',
  'at once',
  'when full',
  'when 60 % full or after 4 h',
  'after 3 h or before closing',
  'before closing preferring an attended end or when full',
  'mon-fri at 13:00 or when full',
  'when a promise is at risk or after 1 days',
);

const machines = fc
  .tuple(
    map(
      perhaps('class', 'small MEX', 'small mask VPP', 'heated MEX'),
      fc.constantFrom('count: 1', 'count: 3'),
      launch,
      perhaps('carrier', 'tanks'),
      perhaps('loaded', 'grey'),
      perhaps('prepare', '10 min'),
      fc.constantFrom('set-up: 15 min', 'set-up: { takes: 15 min, may pause: yes }'),
      fc.constantFrom('unload: 5 min', 'unload: none'),
      perhaps('cool-down', '30 min', '{ takes: 2 h, where: outside }'),
      perhaps('material change', '12 min', '{ takes: 40 min, attended: no }'),
      perhaps(
        'breaks down',
        'never',
        '{ every: about 20 h of running, build: goes on, repair: { by: hand work, takes: 30 min } }',
        '{ every: 40 h by the clock, build: is lost, service: { response: 6 h, takes: 2 h, hours: day } }',
      ),
      perhaps(
        'fails',
        '20 % of builds',
        '{ chance: 1 % per print hour, loses: one job }',
        '{ chance: 5 % of builds, cleaning: 10 min }',
      ),
      perhaps('maintenance', '{ every: 30 h of running, takes: 1 h }'),
      perhaps('noticed', 'on arrival', 'on rounds every 2 h', 'monitored'),
      perhaps('runs alone', 'mon-thu 16:00-07:00'),
    ),
    fc.constantFrom('carriers: { tanks: 1 }', 'carriers: { tanks: 3 }'),
  )
  .map(([printer, carriers]) =>
    printer.includes('carrier: tanks')
      ? `machines:\n  printer: ${printer}\n${carriers}\n`
      : `machines:\n  printer: ${printer}\n`,
  );

const stations = map(
  fc.constantFrom('holds: 2 builds', 'holds: 6 parts', 'holds: 1 job', 'holds: 3 jobs'),
  fc.constantFrom('count: 1', 'count: 2'),
  perhaps('start', 'at once', 'when full', 'when 50 % full or after 30 min'),
  fc.constantFrom('takes: 20 min per batch', 'takes: 5 to 25 min per job, usually 10'),
  perhaps('load', '3 min'),
  perhaps('unload', '4 min'),
  always('by: run machines'),
).map((washer) => `stations:\n  washer: ${washer}\n`);

const stages = fc
  .tuple(
    optional('prepare file: { by: hand work, takes: 5 to 20 min per job, usually 10 }'),
    fc.constantFrom('build: { on: printer }', 'build: { on: printer, move: per build }'),
    fc.constantFrom(
      '',
      'wash: { on: washer, level: job }',
      'wash: { on: washer, level: build, empties carrier: yes }',
    ),
    optional('dry: { wait: 45 min }'),
    fc
      .constantFrom(...HAND_TIMES)
      .chain((time) =>
        fc.constantFrom(
          '',
          `sand: { by: hand work, takes: "${time}", may pause: yes }`,
          `sand: { by: hand work, takes: "${time}", may pause: yes, rejects: 20 % back to build }`,
          `lift: { by: hand work, takes: 10 min, people: 1 }`,
        ),
      ),
  )
  .map((found) => found.filter((stage) => stage !== '').map((stage) => `    - ${stage}\n`));

const part = (name: string): fc.Arbitrary<string> =>
  map(
    always(`route: ${name} route`),
    perhaps('material', 'grey', 'white'),
    fc.constantFrom('fits: 1 per build', 'fits: 4 per build', 'space: 15 % of a build'),
    fc.constantFrom(
      'print: 3 h per build',
      'print: 1 h per build plus 20 min per part',
      'print: 4 to 20 h per build, usually 9',
    ),
  ).map((words) => `  ${name}: ${words}\n`);

const demand = (name: string): fc.Arbitrary<string> =>
  map(
    fc.constantFrom(
      'jobs: 6 per week',
      'jobs: 15 per week, when: any time',
      'jobs: 8 per week, growth: 5 % per month, jobs at once: 1 to 3',
      'every: exponential mean 20 h',
      'dates: [2027-03-22 09:15, 2027-03-26 15:50, 2027-03-30 07:00]',
    ),
    perhaps('pieces', '2', '1 to 9', 'geometric mean 3'),
    perhaps('promise', '2 working days', '48 h'),
    perhaps('rush', '20 %'),
    perhaps('cancels', '30 % after 2 to 72 h, usually 10', '30 % after 20 h, only before start'),
    perhaps('revises', '30 % after 1 to 40 h, usually 8'),
    perhaps(
      'sent out',
      'always',
      '{ when: more than 2 jobs wait, takes: 20 to 90 h usually 40 }',
      'more than 0 jobs wait',
    ),
  ).map((words) => `  ${name}: ${words}\n`);

const NAMES = ['lever', 'ring'] as const;

/** Plans of two weeks over the last Sunday of March, when clocks change where there is a zone that does so. */
export const generatedScenarios: fc.Arbitrary<string> = fc
  .record({
    names: fc.constantFrom<readonly string[]>(NAMES, NAMES.slice(0, 1)),
    zone: optional('zone: Europe/Lisbon\n'),
    closed: optional('  closed: [2027-03-26]\n'),
    cutOff: optional('cut-off: 14:00\n'),
    sentOut: fc
      .constantFrom('', ', when: more than 3 jobs wait or a promise is at risk')
      .map((when) => `sent out: { takes: 1 to 4 working days usually 2${when} }\n`),
    dispatch: map(
      perhaps('fit on', 'drawn'),
      perhaps('within', 'shortest work'),
      perhaps('rush interrupts', 'yes'),
    ).map((rules) => (rules === '{  }' ? '' : `dispatch: ${rules}\n`)),
    people,
    machines,
    stations,
    routes: fc.tuple(stages, stages),
    parts: fc.tuple(part(NAMES[0]), part(NAMES[1])),
    demand: fc.tuple(demand(NAMES[0]), demand(NAMES[1])),
  })
  .map((found) => {
    const routes = found.names.map(
      (name, index) => `  ${name} route:\n${(found.routes[index] ?? []).join('')}`,
    );
    const usesStations = routes.some((route) => route.includes('washer'));
    const hasCarriers = found.machines.includes('carrier: tanks');
    return [
      'buildweek: 1\nname: generated\nstarts: 2027-03-22\n',
      'simulate: { weeks: 2, ignored weeks: 0, replications: 20, seed: generated }\n',
      found.zone,
      `hours:\n  day: { mon-fri: 08:00-12:00 12:30-16:30 }\n  evening: { mon-thu: 17:00-21:00 }\n${found.closed}`,
      found.cutOff,
      found.people,
      found.machines,
      usesStations ? found.stations : '',
      `routes:\n${hasCarriers ? routes.join('') : routes.join('').replaceAll(', empties carrier: yes', '')}`,
      `parts:\n${found.parts.slice(0, found.names.length).join('')}`,
      `demand:\n${found.demand.slice(0, found.names.length).join('')}`,
      found.sentOut,
      found.dispatch,
    ].join('');
  });
