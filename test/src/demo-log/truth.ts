/**
 * What is different in the lab of the demo log from `scenarios/demo.yaml`, in the words of a scenario: the truth that
 * learning and holding the model against the log should find. Invented.
 */
export const TRUE_CHANGES: readonly string[] = [
  // People who ask on Mondays and in the mornings, in some weeks more than in others.
  ...['housing', 'drill jig', 'flow channel', 'bracket', 'gear', 'cable clip', 'hinge'].flatMap((part) => [
    `demand / ${part} / varies from week to week: 25 %`,
    `demand / ${part} / when: { mon 07:00-12:00: 2.2, mon 12:00-16:00: 1.4, tue-fri 07:00-12:00: 1.2, tue-fri 12:00-16:00: 0.8, mon-thu 16:00-20:00: 0.2 }`,
  ]),
  'demand / housing / jobs: 18 per week',
  'demand / hinge / jobs: 3 per week',
  'demand / gear / rush: 25 %',
  // 30 % slower than in the scenario.
  'routes / heated part / remove supports / takes: 5.2 min per part plus 0.52 to 2.6 min per cm2 of support contact, usually 1.04',
  'machines / resin / fails: 12 % of builds',
];

/** The year of the log: a Monday, and the working day on which it ends with jobs in the lab. */
export const LOG_START = '2026-02-16';
export const LOG_END = '2027-02-18T14:30';

/** The calendar of that year, which the scenario has for the year after it. */
export const CALENDAR_CHANGES: readonly string[] = [
  'hours / closed: [2026-04-03, 2026-05-01, 2026-06-10, 2026-10-05, 2026-12-01, 2026-12-08, 2026-12-25, 2027-01-01]',
  'people / technicians / leave: { 2: 2026-08-10 to 2026-08-21 }',
];

export const TRUTH_FILE = 'demo-log-truth.json';
