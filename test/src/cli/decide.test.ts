import { existsSync, readFileSync } from 'node:fs';
import { type DecisionAnswer, decisionAnswerSchema } from '@buildweek/results';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildweek, Folder } from './buildweek.ts';

const PATIENCE = 180_000;

/** Printers in parallel with exponential times: 0.9 jobs an hour, 4 hours each; 14.29 h at p95 with 5, 12.50 h with 6. */
const PRINTERS = `buildweek: 1
name: printers in parallel
simulate: { weeks: 13, ignored weeks: 1, seed: printers, replications: 20 }
stations: { printer: { count: 5, price: 4000, life: 4 years, owned: 5 } }
routes: { print: [print: { on: printer, takes: exponential mean 4 h }] }
parts: { part: { route: print, price outside: 20 } }
demand: { part: { jobs: 0.9 per hour, when: any time } }
targets: 95 % of jobs within 14 h
may vary: { printer: 4 to 8 }
doubts: { demand: 90 to 110 % }
money: { currency: EUR }
`;

let folder: Folder;
let scenario: string;

beforeAll(() => {
  folder = new Folder();
  scenario = folder.write('printers.yaml', PRINTERS);
});

afterAll(() => {
  folder.remove();
});

describe('buildweek decide', () => {
  it(
    'proposes the number of printers that Erlang C gives, with today, the numbers that matter and a page',
    async () => {
      const [json, page] = [folder.file('decision.json'), folder.file('decision.html')];
      const { exitCode, stdout, stderr } = await buildweek([
        'decide',
        scenario,
        '--json',
        json,
        '--page',
        page,
        '--worlds',
        '20',
      ]);
      expect({ exitCode, stderr: stderr.includes('Error') }).toEqual({ exitCode: 0, stderr: false });
      const answer: DecisionAnswer = decisionAnswerSchema.parse(JSON.parse(readFileSync(json, 'utf8')));
      // Source: Erlang C as in how-many.test.ts: 6 printers are the fewest for 95 % within 14 h.
      expect(answer.proposal).toContain('“printer” from 5 to 6');
      expect(stdout).toContain('from 5 to 6');
      expect(answer.options.map(({ role }) => role).slice(0, 2)).toEqual(['today', 'recommended']);
      expect(answer.recommended?.lab.stations[0]?.count).toBe(6);
      expect(answer.recommended?.scenario.text).toContain('count: 6');
      expect(answer.doubts?.doubts.map(({ name }) => name)).toEqual(['demand']);
      // One number, whichever way it is reached: the comparison and the run in full play the same replications.
      const compared = answer.options[1]?.targets[0]?.value;
      const run = answer.recommended?.targets[0]?.found;
      if (compared?.kind !== 'estimate' || run?.kind !== 'estimate') throw new Error('There is no estimate.');
      expect(compared.value).toBeCloseTo(run.value, 10);
      const text = readFileSync(page, 'utf8');
      expect(text).toContain('from 5 to 6');
      const again = await buildweek(['report', json, '--output', folder.file('again.html')]);
      expect(again.exitCode).toBe(0);
      expect(readFileSync(folder.file('again.html'), 'utf8')).toBe(text);
    },
    PATIENCE,
  );

  it('asks for targets and for what may be chosen, and leaves nothing behind', async () => {
    const bare = folder.write(
      'bare.yaml',
      PRINTERS.replace(/^targets.*\n/m, '').replace(/^may vary.*\n/m, ''),
    );
    const page = folder.file('bare.html');
    const { exitCode, stderr } = await buildweek(['decide', bare, '--page', page]);
    expect(exitCode).toBe(2);
    for (const told of ['targets:', 'may vary:', 'buildweek run']) expect(stderr).toContain(told);
    expect(existsSync(page)).toBe(false);
  });
});
