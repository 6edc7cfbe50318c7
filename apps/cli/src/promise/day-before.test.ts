import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promiseFixture } from '@buildweek/charts/promise-fixture';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readDayBefore } from './day-before.ts';

let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'day-before-'));
});

afterAll(() => {
  rmSync(folder, { recursive: true });
});

function read(text: string, now = '2027-03-02 07:00') {
  const path = join(folder, 'before.json');
  writeFileSync(path, text);
  return readDayBefore(path, 'lab.yaml', now);
}

describe('The answer of the day before', () => {
  it('is read with its jobs; a scenario that cannot be read any more leaves the lab out', () => {
    const answer = promiseFixture();
    expect(read(JSON.stringify(answer))).toEqual({ now: answer.now, openJobs: answer.openJobs, lab: null });
  });

  it.each([
    ['{', 'is no JSON document'],
    ['{"format":"buildweek results"}', 'holds no promised dates'],
    ['null', 'holds no promised dates'],
    [JSON.stringify({ ...promiseFixture(), version: 7 }), 'is of version 7; this program reads version 1'],
    [JSON.stringify({ ...promiseFixture(), now: 5 }), 'is damaged at now'],
    [JSON.stringify({ ...promiseFixture(), openJobs: null }), 'it was made without --all'],
    [JSON.stringify({ ...promiseFixture(), now: '2027-03-02 07:00' }), 'an answer from before is needed'],
  ])('is refused when it is %.40s', (text, message) => {
    expect(() => read(text)).toThrow(message);
    expect(() => read(text)).toThrow(
      'Such a document is written by: buildweek promise FILE --all --json DOCUMENT',
    );
  });
});
