import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { ShapeRequest } from '@buildweek/scenario';
import { afterAll, describe, expect, it } from 'vitest';
import { meshReader } from './mesh-reader.ts';

const folder = mkdtempSync(join(tmpdir(), 'buildweek-mesh-'));
afterAll(() => rmSync(folder, { recursive: true }));

function request(path: string): ShapeRequest {
  const space = { width: 200, depth: 200, height: 200, margin: 0 };
  return { path, unit: 'mm', orientation: 'as given', process: 'MEX', space } as ShapeRequest;
}

describe('meshReader', () => {
  const read = meshReader((path) => join(folder, path));

  it('says that a file is not there, or is a folder', () => {
    expect(read(request('gone.stl'))).toMatchObject({
      kind: 'refused',
      message: 'Cannot read the mesh gone.stl: there is no such file.',
    });
    expect(read(request('.'))).toMatchObject({
      kind: 'refused',
      message: 'Cannot read the mesh .: that is a folder, not a file.',
    });
  });

  it('says what is wrong with a mesh', () => {
    writeFileSync(join(folder, 'empty.stl'), 'solid nothing\nendsolid nothing\n');
    const answer = read(request('empty.stl'));
    expect(answer).toMatchObject({ kind: 'refused' });
    expect(answer).not.toMatchObject({ message: expect.stringContaining('Cannot read the mesh') });
  });

  it('lets a mistake of the program through, which is none of the file', () => {
    const broken = meshReader(() => {
      throw new TypeError('a mistake of the program');
    });
    expect(() => broken(request('part.stl'))).toThrow('a mistake of the program');
  });
});
