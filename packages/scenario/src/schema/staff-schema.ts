import { whole, words } from './keys.ts';
import { z } from './zod.ts';

const change = z
  .record(z.string(), z.any())
  .meta({ description: 'Places of the scenario with what is to stand there' });

const optionSchema = z.union([change, z.array(z.union([change, z.string()]))]).meta({
  description: 'Changes of the scenario in its own words',
  examples: [{ 'technicians / hours': 'late' }],
});

/** Whom one might have when; read by the command `staff` alone. */
export const staffSchema = z
  .strictObject({
    options: z
      .record(z.string(), optionSchema)
      .meta({
        description: 'Ways of staffing by name; without any, the command makes some from the lab as it is',
      })
      .optional(),
    rest: words(
      'Shortest rest within the 24 hours from the start of a duty; default 11 h',
      '11 h',
    ).optional(),
    'hours a week': words('Most hours of a person on duty in a week; default 48 h', '48 h').optional(),
    'days in a row': whole('Most days in a row on which a duty begins; default 6', 1, 6).optional(),
    night: words('What counts as night; default 23:00-06:00', '23:00-06:00').optional(),
  })
  .meta({
    description:
      'Ways of staffing to be compared, and rules that the hours of each person are held against; none of them says what the law allows',
  });
