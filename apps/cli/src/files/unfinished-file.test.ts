import {
  appendFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { Failure } from '../failure.ts';
import { UnfinishedFile } from './unfinished-file.ts';

const folder = mkdtempSync(join(tmpdir(), 'buildweek-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** What a user is told when something cannot be done. */
function failureOf(work: () => unknown): Failure {
  try {
    work();
  } catch (error) {
    if (error instanceof Failure) return error;
    throw error;
  }
  throw new Error('Nothing went wrong.');
}

describe('Unfinished work', () => {
  it('is found again replication by replication, what lies beyond the end and a cut last line included', () => {
    const path = join(folder, 'whole.unfinished');
    const file = UnfinishedFile.start(path, 'compare', 'same');
    expect(file.isWorthKeeping).toBe(false);
    file.write('today', 0, Float64Array.of(1.5, Number.POSITIVE_INFINITY));
    expect(file.isWorthKeeping).toBe(true);
    appendFileSync(path, '{"plan":"today","replication":1,"val');
    const again = UnfinishedFile.goOn(path, 'compare', 'same');
    again.write('today', 1, Float64Array.of(2, 3));
    const once = UnfinishedFile.goOn(path, 'compare', 'same');
    expect(once.read('today', 0)).toEqual(Float64Array.of(1.5, Number.POSITIVE_INFINITY));
    expect(once.read('today', 1)).toEqual(Float64Array.of(2, 3));
    expect(once.read('today', 2)).toBeNull();
    once.remove();
    expect(existsSync(path)).toBe(false);
  });

  it('is not gone on with by another command, or on anything else', () => {
    const path = join(folder, 'other.unfinished');
    UnfinishedFile.start(path, 'compare', 'one');
    for (const [command, fingerprint] of [
      ['staff', 'one'],
      ['compare', 'two'],
    ] as const) {
      const failure = failureOf(() => UnfinishedFile.goOn(path, command, fingerprint));
      expect(failure).toMatchObject({ exitCode: 2, message: expect.stringContaining('was left by another') });
    }
  });

  it('makes the folder that the answer will be in', () => {
    const path = join(folder, 'answers/of today/plan.json.unfinished');
    UnfinishedFile.start(path, 'how-many', 'same');
    expect(existsSync(path)).toBe(true);
  });

  it('says what is in the way, and what to do instead, where nothing can be written or read', () => {
    const blocked = join(folder, 'a file');
    writeFileSync(blocked, 'not a folder');
    const failure = failureOf(() => UnfinishedFile.start(join(blocked, 'x.unfinished'), 'staff', 'same'));
    expect(failure).toMatchObject({ exitCode: 2 });
    expect(failure.message).toMatch(
      /^Cannot write .*x\.unfinished, where unfinished work is kept: .*--json FILE$/,
    );
    const place = join(folder, 'folder.unfinished');
    mkdirSync(place);
    for (const begin of [UnfinishedFile.start, UnfinishedFile.goOn]) {
      expect(failureOf(() => begin(place, 'staff', 'same')).message).toBe(
        `Cannot read ${place}, where unfinished work is kept: that is a folder, not a file.`,
      );
    }
  });

  it('ends with a message when its file is lost on the way', () => {
    const path = join(folder, 'lost/x.unfinished');
    const file = UnfinishedFile.start(path, 'staff', 'same');
    rmSync(join(folder, 'lost'), { recursive: true });
    expect(failureOf(() => file.write('today', 0, Float64Array.of(1))).message).toContain('Cannot write');
  });

  it('does not overwrite a file of somebody else', () => {
    const path = join(folder, 'mine.unfinished');
    writeFileSync(path, 'my notes\n');
    expect(failureOf(() => UnfinishedFile.start(path, 'staff', 'same')).message).toContain('Move it away.');
    expect(readFileSync(path, 'utf8')).toBe('my notes\n');
  });
});
