import { z } from 'zod';
import { planRunSchema } from './answer-parts.ts';
import { planDifferenceSchema } from './comparison-answer.ts';
import { handLoadSchema } from './measures.ts';
import { planMeasureSchema } from './plan-measure.ts';
import { cautionSchema } from './results.ts';

/** Version of the document that says whom to have when. */
export const STAFF_VERSION = 1;

const HOURS_PER_WEEK = 168;
const byHourOfWeek = z.array(z.number()).length(HOURS_PER_WEEK);

/** What the hours of each person were held against. */
export const staffRulesSchema = z
  .strictObject({
    restHours: z.number().describe('Shortest rest without a break within the 24 h from the start of a duty'),
    hoursPerWeek: z.number().describe('Most hours on duty from Monday to Sunday'),
    daysInARow: z.int().describe('Most days in a row on which a duty begins'),
    night: z
      .strictObject({ fromHour: z.number(), toHour: z.number() })
      .describe('Hours of the day; the end lies beyond 24 where it crosses midnight'),
  })
  .describe('Inputs; none of them says what the law allows');

export const ruleBreachSchema = z.strictObject({
  person: z.string(),
  rule: z.enum(['rest', 'hours a week', 'days in a row']),
  when: z.string().describe('Days and hours, as "Monday 06:00 to 14:00"'),
  found: z.number().describe('Hours of rest, hours on duty, or days'),
  limit: z.number(),
  times: z.int().describe('How often in the measured weeks'),
  firstDate: z.string().describe('Day of the first, YYYY-MM-DD'),
});
export type RuleBreach = z.infer<typeof ruleBreachSchema>;

/** Hours of people by the calendar of the measured weeks, leave left out; absence by chance is not known beforehand. */
export const dutyHoursSchema = z.strictObject({
  persons: z.int(),
  roster: z.number().describe('Hours of the weekly roster, all persons together'),
  night: z.number().describe('Person hours at night, a week'),
  alone: z.number().describe('Hours a week in which exactly one person is on duty'),
  nobody: z.number().describe('Hours a week in which nobody is'),
  personsByHourOfWeek: byHourOfWeek.describe(
    'Mean number of persons on duty, Monday 00:00 first, local time',
  ),
});
export type DutyHours = z.infer<typeof dutyHoursSchema>;

export const waitingBySkillSchema = z.strictObject({
  skill: z.string().describe('With "(2 persons)" behind it for work that needs two'),
  byHourOfWeek: byHourOfWeek.describe('Mean number of jobs that wait'),
  personsByHourOfWeek: byHourOfWeek.describe('Mean number of persons on duty who can do it'),
});

export const staffPlanSchema = z.strictObject({
  name: z.string().describe('"today" is the scenario as it is'),
  origin: z.enum(['today', 'stated in the scenario', 'made by the program']),
  meaning: z.string().describe('In plain words; empty where only the changes say it'),
  changes: z.array(z.string()).describe('What is changed in the scenario, in its words'),
  scenario: z.strictObject({ text: z.string(), hash: z.string() }),
  hoursAgainstToday: z.enum(['the same', 'more', 'fewer']).describe('Hours of the weekly roster'),
  duty: dutyHoursSchema,
  costPerYear: z
    .number()
    .nullable()
    .describe('Committed cost a year; null: the scenario says nothing of money'),
  measures: z.array(planMeasureSchema),
  differences: z
    .array(planDifferenceSchema)
    .describe('Against today, in the order of the measures; empty for today'),
  againstBest: planDifferenceSchema
    .nullable()
    .describe(
      'Against the best with the same hours, in the measure that decides, with an interval that allows for any pair of options; null for it, and without one',
    ),
  handHours: z
    .number()
    .nullable()
    .describe('Mean lead time by the formulas of a hand calculation, hours; null: they give none'),
  handCalculation: z.array(handLoadSchema),
  handSentence: z.string().describe('Simulation and hand calculation side by side, and why they differ'),
  breaches: z.array(ruleBreachSchema).describe('Rules of the scenario that these hours break'),
  waiting: byHourOfWeek.describe('Mean number of jobs that wait for people'),
  waitingBySkill: z.array(waitingBySkillSchema),
});
export type StaffPlan = z.infer<typeof staffPlanSchema>;

/** Whom to have when. */
export const staffAnswerSchema = z
  .strictObject({
    format: z.literal('buildweek staff'),
    version: z.literal(STAFF_VERSION),
    program: z.strictObject({ name: z.literal('buildweek'), version: z.string() }),
    scenarioName: z.string(),
    currency: z.string().nullable(),
    run: planRunSchema,
    differencesLevel: z
      .number()
      .describe(
        'Confidence level of each difference, so that those of all options hold at once in each measure',
      ),
    rules: staffRulesSchema,
    decidedBy: z.string().nullable().describe('Measure that puts the options in order; null: none could'),
    verdict: z.array(z.string()).describe('The answer in a few sentences'),
    best: z
      .strictObject({ name: z.string(), notToldApart: z.array(z.string()) })
      .nullable()
      .describe('With the same hours; null: none is surely better than today'),
    plans: z.array(staffPlanSchema).describe('Today first'),
    leftOut: z
      .array(z.strictObject({ name: z.string(), changes: z.array(z.string()), reason: z.string() }))
      .describe('Options made by the program that cannot be played'),
    notes: z.array(z.string()).describe('What to know of random numbers and hours'),
    cautions: z.array(cautionSchema),
    warnings: z.array(z.string()),
  })
  .describe('Ways of staffing a lab, compared on the same random numbers');
export type StaffAnswer = z.infer<typeof staffAnswerSchema>;
