import type { DoubtsAnswer, Results } from '@buildweek/results';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildweek, Folder } from './buildweek.ts';

const PATIENCE = 120_000;
const LAB = `buildweek: 1
name: a lab
simulate: { weeks: 4, ignored weeks: 1, seed: changes, replications: 20 }
people: { hands: { skills: [run machines, hand work] } }
machines: { printer: { class: small MEX, count: 2, start: at once } }
routes: { printed: [print: { on: printer }, clean: { by: hand work, takes: 5 min per part }] }
parts: { bracket: { route: printed, fits: 6 per build, print: 3 h per build } }
demand: { bracket: { jobs: 18 per week, promise: 48 h } }
targets: 90 % of jobs within 3 days
doubts: { demand: 80 to 130 % }
`;

let folder: Folder;
let lab: string;
let edited: string;

beforeAll(() => {
  folder = new Folder();
  lab = folder.write('lab.yaml', LAB);
  edited = folder.write('edited.yaml', LAB.replace('count: 2', 'count: 3').replace('18 per', '20 per'));
});

afterAll(() => {
  folder.remove();
});

/** The changes by which the one file becomes the other, in two places. */
const CHANGES = ['--with', 'printer / count: 3', '--with', 'demand / bracket / jobs: 20 per week'];

async function json<Answer>(...words: readonly string[]): Promise<Answer> {
  const { stdout } = await buildweek([...words, '--json', '-']);
  return JSON.parse(stdout) as Answer;
}

describe('--with', () => {
  it(
    'plays a lab as if the changes stood in its file',
    async () => {
      const changed = await json<Results>('run', lab, ...CHANGES);
      const asEdited = await json<Results>('run', edited);
      const asItIs = await json<Results>('run', lab);
      expect(changed.jobs).toEqual(asEdited.jobs);
      expect(changed.jobs).not.toEqual(asItIs.jobs);
      expect(changed.scenario.text).toContain('count: 3');
    },
    PATIENCE,
  );

  it(
    'holds doubts and growth against a plan that is in no file',
    async () => {
      const few = ['--worlds', '20', '--of', 'mean lead time'];
      const changed = await json<DoubtsAnswer>('doubts', lab, ...few, ...CHANGES);
      expect(changed.measure).toEqual((await json<DoubtsAnswer>('doubts', edited, ...few)).measure);
      expect(changed.measure).not.toEqual((await json<DoubtsAnswer>('doubts', lab, ...few)).measure);
    },
    PATIENCE,
  );

  it('says of a change that cannot be made what may be changed', async () => {
    const { exitCode, stderr } = await buildweek(['check', lab, '--with', 'printers / count: 3']);
    expect(exitCode).toBe(2);
    expect(stderr).toContain('The scenario has nothing that is called "printers".');
    expect(stderr).toContain('write:    printer / count');
  });
});
