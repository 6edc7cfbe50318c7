import { z } from './zod.ts';

/** A value that is worded; the words themselves are read elsewhere. */
export function words(description: string, ...examples: readonly string[]) {
  return z.string().meta({ description, examples: [...examples] });
}

/** A whole number. */
export function whole(description: string, least: number, ...examples: readonly number[]) {
  return z
    .int()
    .min(least)
    .meta({ description, examples: [...examples] });
}

export function yesOrNo(description: string) {
  return z.union([z.boolean(), z.enum(['yes', 'no'])]).meta({ description });
}

/** One worded value or a list of them. */
export function wordsOrList(description: string, ...examples: readonly string[]) {
  return z.union([z.string(), z.array(z.string())]).meta({ description, examples: [...examples] });
}

/** Attended work: a time alone, or who does it and how. */
export function attendedWork(description: string, example: string) {
  return z
    .union([
      z.string().meta({ description: 'How long it takes, or none', examples: [example, 'none'] }),
      z.strictObject({
        by: words('Skill of the people who do it', 'run machines').optional(),
        takes: words('How long it takes', example).optional(),
        people: whole('How many people it needs at once; default 1', 1, 2).optional(),
        'may pause': yesOrNo(
          'Whether it may stop at the end of a shift and go on later; default no',
        ).optional(),
      }),
    ])
    .meta({ description, examples: [example] });
}

/** Distribution of whole numbers. */
export function counts(description: string) {
  return z
    .union([z.int().min(1), z.string(), z.array(z.int().min(1))])
    .meta({ description, examples: [1, '1 to 12', 'geometric mean 3'] });
}

/** An amount of money, with or without its currency. */
export function money(description: string, ...examples: readonly (string | number)[]) {
  return z.union([z.number(), z.string()]).meta({ description, examples: [...examples] });
}

/** A name that may be written as a number. */
export function nameOrNumber(description: string, example: string) {
  return z.union([z.string(), z.number()]).meta({ description, examples: [example] });
}
