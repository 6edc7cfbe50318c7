import { z } from 'zod';

/** Rows of a table with the same trouble. */
const countedRowsSchema = z.strictObject({
  trouble: z.string().describe('What is the matter with them, as "finished before it was asked for"'),
  done: z.string().describe('What was done with them'),
  count: z.int(),
  rows: z.array(z.int()).describe('Lines of the file, the first of them'),
});

/** One table as it was understood. */
const readTableSchema = z.strictObject({
  file: z.string().describe('Name of the file, without its folder'),
  rows: z.int().describe('Rows below the headings'),
  kept: z.int().describe('Rows that became a job, or a run'),
  writing: z.string().describe('Encoding, separator, order of day and month'),
  columns: z.array(
    z.strictObject({
      what: z.string().describe('What the column was taken for'),
      headings: z.array(z.string()),
      how: z.string().describe('How that is known'),
    }),
  ),
  unused: z.array(z.string()).describe('Headings of columns that were not used'),
  troubles: z.array(countedRowsSchema),
  notes: z.array(z.string()).describe('Spellings, groups, words of the priority, names that were left out'),
});
export type ReadTable = z.infer<typeof readTableSchema>;

/** What was read of a lab's own log. Names of people are not in it. */
export const logReadingSchema = z.strictObject({
  from: z.string().describe('First day, as 2026-02-16'),
  until: z.string().describe('Last time that the log tells, as 2027-02-18T14:30'),
  weeks: z.number(),
  zone: z.string().nullable().describe('Of the wall clock; null: as it is written'),
  requests: readTableSchema,
  machines: readTableSchema.nullable(),
});
export type LogReading = z.infer<typeof logReadingSchema>;
