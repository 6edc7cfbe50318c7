import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { linesOf } from '../record.ts';
import { recordText } from '../replay.ts';
import { SUITES } from './index.ts';

const page = readFileSync(new URL('../../../../DEVELOPERS.md', import.meta.url), 'utf8');

test.each(SUITES.map((suite) => [suite.name, suite] as const))(
  'The page for contributors tells what was counted in the record %s.',
  (name, suite) => {
    const row = page.split('\n').find((line) => line.startsWith(`| \`${name}\` |`));
    const told = row?.split('|')[3]?.match(/\d+/g);
    const counted = suite
      .verdicts(linesOf(suite, recordText(suite)))
      .map(({ words }) => /in (\d+) of/.exec(words)?.[1]);
    expect(told).toEqual(counted);
  },
);
