import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { scenarioMeshes } from '../scenario-meshes.ts';
import { demoLog } from './demo-log.ts';

const FOLDER = new URL('../../../scenarios/', import.meta.url);

describe('The demo log', () => {
  const made = demoLog(readFileSync(new URL('demo.yaml', FOLDER), 'utf8'), scenarioMeshes);

  it.each([...made])(
    '%s is in the repository exactly as it is made (npm run make-demo-log -w @buildweek/test)',
    (name, text) => {
      expect(readFileSync(new URL(name, FOLDER), 'utf8') === text).toBe(true);
    },
  );

  it('is small', () => {
    for (const text of made.values()) expect(Buffer.byteLength(text)).toBeLessThan(1_000_000);
  });
});
