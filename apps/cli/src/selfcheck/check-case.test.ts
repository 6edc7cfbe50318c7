import { createInProcessExecutor } from '@buildweek/study';
import { describe, expect, it } from 'vitest';
import { exitCodeOf } from '../commands/selfcheck.ts';
import { selfcheckText } from '../tables/selfcheck-table.ts';
import { styleFor } from '../terminal/style.ts';
import { THEORY_CASES } from './cases/index.ts';
import { checkAll } from './check-all.ts';
import { type CheckedLine, checkCase } from './check-case.ts';
import type { TheoryCase } from './theory-case.ts';

/** As many as the whole check has: the limit is that of the command. */
const LINES = THEORY_CASES.reduce((sum, { values }) => sum + values.length, 0);

function caseNamed(part: string): TheoryCase {
  const found = THEORY_CASES.find(({ name }) => name.includes(part));
  if (found === undefined) throw new Error(`There is no case "${part}".`);
  return found;
}

/** Cases that are quick to play: a mean, a percentile, a mean number, what breaks down, and people. */
const QUICK = ['four equal stations', 'Monday to Friday', 'M/G/∞', 'M/M/2//5', 'one technician sets up'];

async function check(theoryCase: TheoryCase, seed = 'selfcheck'): Promise<CheckedLine[]> {
  const options = {
    seed,
    lines: LINES,
    executor: createInProcessExecutor(),
    stop: null,
    onReplication: () => {},
  };
  const lines = await checkCase(theoryCase, options);
  if (lines === null) throw new Error('Nobody stopped it.');
  return lines;
}

describe('checkCase', () => {
  it.each(QUICK)('finds that the program agrees with theory: %s', async (name) => {
    const lines = await check(caseNamed(name), 'another');
    expect(lines.filter(({ holds }) => !holds)).toEqual([]);
  });

  it.each(QUICK)('finds a planted fault, a theory that is off by a twentieth: %s', async (name) => {
    const { values, ...rest } = caseNamed(name);
    const twin = { ...rest, values: values.map((value) => ({ ...value, theory: value.theory * 1.05 })) };
    const lines = await check(twin);
    expect(lines.filter(({ holds }) => holds)).toEqual([]);
    expect(exitCodeOf(lines)).toBe(1);
    const text = selfcheckText(lines, 'selfcheck', styleFor({ write: () => true }));
    expect(text.match(/FAILS/g)).toHaveLength(lines.length);
    expect(text).toContain('Lines that fail');
    expect(text).not.toContain('Every line holds');
  });

  it('finds a planted fault, a scenario in which people are slower by a twentieth', async () => {
    const { scenario, ...rest } = caseNamed('one technician sets up');
    const slower = scenario.replace('set-up: exponential mean 1 h', 'set-up: exponential mean 63 min');
    expect(slower).not.toBe(scenario);
    const [busy] = await check({ ...rest, scenario: slower });
    expect(busy).toMatchObject({ what: 'technician busy', holds: false });
  });

  it('throws for a measure that the results do not have, and for a scenario that is none', async () => {
    const { values, ...rest } = caseNamed('M/G/∞');
    const absent = values.map((value) => ({ ...value, read: () => undefined }));
    await expect(check({ ...rest, values: absent })).rejects.toThrow('the results do not have it');
    await expect(check({ ...rest, values, scenario: 'buildweek: 1' })).rejects.toThrow('error');
  });
});

describe('checkAll', () => {
  const cases = [caseNamed('M/G/∞'), caseNamed('Monday to Friday'), caseNamed('M/M/2//5')];
  const run = (executors: number, stop = new AbortController().signal) =>
    checkAll(cases, {
      seed: 'selfcheck',
      executors: Array.from({ length: executors }, () => createInProcessExecutor()),
      stop,
      onProgress: () => {},
    });

  it('gives the same lines in the same order on any number of executors', async () => {
    const one = await run(1);
    expect(one?.map(({ name }) => name)).toEqual(cases.flatMap(({ name, values }) => values.map(() => name)));
    expect(await run(2)).toEqual(one);
    expect(await run(5)).toEqual(one);
  });

  it('counts the replications of all cases', async () => {
    const seen: string[] = [];
    await checkAll(cases, {
      seed: 'selfcheck',
      executors: [createInProcessExecutor(), createInProcessExecutor()],
      stop: new AbortController().signal,
      onProgress: (done, total) => seen.push(`${done} of ${total}`),
    });
    expect(seen).toHaveLength(300);
    expect(seen.at(-1)).toBe('300 of 300');
  });

  it('finds nothing out when it is stopped', async () => {
    expect(await run(2, AbortSignal.abort())).toBeNull();
  });
});
