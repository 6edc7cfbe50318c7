import { existsSync, readFileSync } from 'node:fs';
import { type PlanAnswer, planAnswerSchema } from '@buildweek/results';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildweek, Folder, startBuildweek } from './buildweek.ts';

const PATIENCE = 180_000;

/** Printers in parallel with exponential times, as a textbook has them: 0.9 jobs an hour, 4 hours each. */
const PRINTERS = `buildweek: 1
name: printers in parallel
simulate: { weeks: 13, ignored weeks: 1, seed: printers }
stations: { printer: { count: 7 } }
routes: { print: [print: { on: printer, takes: exponential mean 4 h }] }
parts: { part: { route: print } }
demand: { part: { jobs: 0.9 per hour, when: any time } }
targets: 95 % of jobs within 14 h
may vary: { printer: 4 to 9 }
`;

let folder: Folder;
let printers: string;

beforeAll(() => {
  folder = new Folder();
  printers = folder.write('printers.yaml', PRINTERS);
});

afterAll(() => {
  folder.remove();
});

function parsed(text: string): PlanAnswer {
  return planAnswerSchema.parse(JSON.parse(text));
}

describe('buildweek how-many', () => {
  it(
    'finds the number of printers that Erlang C gives',
    async () => {
      // 95 % of jobs within 14 h: with 4 printers p95 is 32.66 h, with 5 it is 14.29 h, with 6 it is 12.50 h. Source: Erlang C
      // sojourn law, closed form. In shares: 5 printers keep 14 h for 94.6 %, 6 for 96.6 %.
      const { exitCode, stdout } = await buildweek([
        'how-many',
        printers,
        '--indifference',
        '0.4 %',
        '--json',
        '-',
      ]);
      expect(exitCode).toBe(0);
      const answer = parsed(stdout);
      expect(answer.chosen).toBe('printer 6');
      expect(answer.looked.map(({ name, verdict }) => `${name} ${verdict}`)).toEqual([
        'printer 4 missed',
        'printer 5 missed',
        'printer 6 met',
      ]);
      expect(answer.notLookedAt).toBe(3);
      const reached = (name: string) => answer.shown.find((plan) => plan.name === name)?.targets[0]?.value;
      expect(reached('printer 5')).toMatchObject({ kind: 'estimate' });
      for (const [name, theory] of [
        ['printer 5', withinShare(5, 14)],
        ['printer 6', withinShare(6, 14)],
      ] as const) {
        const value = reached(name);
        if (value?.kind !== 'estimate') throw new Error('There is no estimate.');
        // The interval holds 95 % of the time; at twice its half width a right one is all but certain.
        expect(Math.abs(value.value - theory)).toBeLessThan(value.high - value.low);
      }
    },
    PATIENCE,
  );

  it(
    'goes on after a stop to the same answer, and leaves nothing behind',
    async () => {
      const whole = await buildweek(['how-many', printers, '--json', '-']);
      const json = folder.file('plan.json');
      const arguments_ = ['how-many', printers, '--json', json];
      const { child, ended } = startBuildweek(arguments_);
      const kept = `${json}.unfinished`;
      while (!existsSync(kept) || readFileSync(kept, 'utf8').split('\n').length < 8) {
        await new Promise((resolve) => setTimeout(resolve, 5));
      }
      child.kill('SIGINT');
      const stopped = await ended;
      expect(stopped.exitCode).toBe(130);
      expect(stopped.stderr).toContain(`is kept in ${kept}`);
      expect(stopped.stderr).toContain('buildweek how-many ');
      expect(stopped.stderr).toMatch(/ --json .* --resume$/m);
      expect(existsSync(json)).toBe(false);
      const other = await buildweek([...arguments_, '--resume', '--seed', 'another']);
      expect(other.exitCode).toBe(2);
      expect(other.stderr).toContain('was left by another command, scenario, setting');
      expect((await buildweek([...arguments_, '--resume'])).exitCode).toBe(0);
      expect(parsed(readFileSync(json, 'utf8'))).toEqual(parsed(whole.stdout));
      expect(existsSync(kept)).toBe(false);
    },
    PATIENCE,
  );

  it(
    'says which target no plan meets, what the best reaches, and which range to widen',
    async () => {
      const { exitCode, stdout } = await buildweek([
        'how-many',
        printers,
        '--vary',
        'printer: 4 to 7',
        '--target',
        '99 % of jobs within 8 h',
        '--json',
        '-',
      ]);
      expect(exitCode).toBe(0);
      const { chosen, headline } = parsed(stdout);
      expect(chosen).toBeNull();
      expect(headline[0]).toBe('None of 4 plans in the range meets every target.');
      expect(headline[1]).toMatch(
        /^“99 % of jobs within 8 h” is what fails: the plan that comes closest, printer 7, reaches 8\d/,
      );
    },
    PATIENCE,
  );

  it(
    'finds the best within a budget, which is all it may have when nothing has a price',
    async () => {
      const { stdout } = await buildweek([
        'how-many',
        printers,
        '--best',
        'p90',
        '--vary',
        'printer: 4 to 7',
        '--json',
        '-',
      ]);
      const answer = parsed(stdout);
      // Within a fiftieth of the time of today's seven printers six are as good.
      expect(['printer 6', 'printer 7']).toContain(answer.chosen);
      expect(answer.looked.find(({ name }) => name === 'printer 4')).toMatchObject({ verdict: 'beaten' });
    },
    PATIENCE,
  );

  it('answers a question that cannot be asked with what to write', async () => {
    const withoutTargets = folder.write('plain.yaml', PRINTERS.replace(/targets:.*\n/, ''));
    const refusal = async (...more: string[]): Promise<string> => {
      const { exitCode, stderr } = await buildweek(['how-many', ...more]);
      expect(exitCode).toBe(2);
      return stderr;
    };
    expect(await refusal(withoutTargets)).toContain('--target "90 % of jobs within 3 days"');
    const nothingToVary = folder.write('fixed.yaml', PRINTERS.replace(/may vary:.*\n/, ''));
    expect(await refusal(nothingToVary)).toContain('--vary "printer: 1 to 4"');
    expect(await refusal(printers, '--vary', 'printer: 1 to 3')).toContain(
      'The scenario has 7 of "printer", which is not in the range.',
    );
    expect(await refusal(printers, '--best', 'late')).toContain('none can be late');
    expect(await refusal(printers, '--best', 'p90', '--budget', '1000')).toContain('states no prices');
  });
});

/** P(T ≤ t) in M/M/c with 0.9 arrivals and ¼ services an hour. Source: Erlang C, sojourn = service + wait. */
function withinShare(servers: number, hours: number): number {
  const [arrivals, services] = [0.9, 0.25];
  const load = arrivals / services;
  let blocked = 1;
  for (let server = 1; server <= servers; server++) blocked = (load * blocked) / (server + load * blocked);
  const waits = blocked / (1 - (load / servers) * (1 - blocked));
  const drain = servers * services - arrivals;
  const later =
    Math.exp(-services * hours) +
    (waits * services * (Math.exp(-services * hours) - Math.exp(-drain * hours))) / (drain - services);
  return 1 - later;
}
