import { existsSync, readFileSync, statSync } from 'node:fs';
import { type Results, type StaffAnswer, type StaffPlan, staffAnswerSchema } from '@buildweek/results';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildweek, Folder, queueScenario, ROOT, startBuildweek } from './buildweek.ts';

const PATIENCE = 180_000;
const FEW = ['--replications', '20', '--ignored-weeks', '1', '--weeks', '4'];
const LAB = 'scenarios/small.yaml';
const TEXT = readFileSync(`${ROOT}/${LAB}`, 'utf8');
const WITH_OPTIONS = `${TEXT}
staff:
  options:
    late start: { technician / hours: { mon-fri: 10:00-14:00 14:30-18:30 } }
    two of us: [technician / count: 2]
    night: { technician / hours: { "mon, wed": 22:00-06:00, "tue, thu": 14:00-20:00 } }
`;

let folder: Folder;

beforeAll(() => {
  folder = new Folder();
});

afterAll(() => {
  folder.remove();
});

function answerIn(text: string): StaffAnswer {
  return staffAnswerSchema.parse(JSON.parse(text));
}

function measured(plan: StaffPlan | undefined, name: string): unknown {
  return plan?.measures.find((measure) => measure.name === name)?.value;
}

describe('buildweek staff', () => {
  it(
    'makes options of the people who are there, and says on a terminal what they do and what they change',
    async () => {
      const { exitCode, stdout } = await buildweek(['staff', LAB, ...FEW]);
      expect(exitCode).toBe(0);
      expect(stdout).toMatch(/^Whom to have when: A small print corner\n/);
      expect(stdout).toContain('With the same hours');
      expect(stdout).toMatch(/\n {2}technician from 10:00: .+\n {4,}\d+\.\d+ \(/);
      expect(stdout).toMatch(/\n {2}one more of technician: better than today, change -\d+\.\d+ \(.* days\n/);
      expect(stdout).toMatch(/\n {2}The hours of every person keep 11 h of rest, at most 48 h a week/);
      expect(stdout).toMatch(/\n {2}“today”: The mean lead time is .* simulated and .* by\s+formulas/);
      // From 08:00 to 16:30 with a break of half an hour within an hour, and two hours later.
      expect(stdout).toMatch(/\n {2}Mon [·\-+oO#]{24} {3}[·\-+oO#]{24}\n {14}▔{9} {12,}▔+\n/);
      expect(stdout).toContain('people / technician / hours: { mon-fri: 10:00-14:00 14:30-18:30 }');
      expect(stdout).toMatch(
        /so\s+that\s+with\s95\s%\s+confidence\s+those\s+of\s+all\s+options\s+hold\s+at\s+once/,
      );
    },
    PATIENCE,
  );

  it(
    'gives what a run of the changed file gives, and the same on any number of threads',
    async () => {
      const scenario = folder.write('lab.yaml', WITH_OPTIONS);
      const [json, page] = [folder.file('staff.json'), folder.file('staff.html')];
      const { exitCode } = await buildweek(['staff', scenario, ...FEW, '--json', json, '--page', page]);
      expect(exitCode).toBe(0);
      const answer = answerIn(readFileSync(json, 'utf8'));
      expect(answer.plans.map(({ name }) => name)).toEqual(['today', 'late start', 'two of us', 'night']);
      expect(readFileSync(page, 'utf8')).toMatch(/^<!doctype html>/i);
      for (const plan of answer.plans.slice(0, 2)) {
        const changed = folder.write('changed.yaml', plan.scenario.text);
        const run = await buildweek(['run', changed, ...FEW, '--json', '-']);
        const results = JSON.parse(run.stdout) as Results;
        const [all] = results.jobs;
        expect(measured(plan, 'mean lead time')).toEqual(all?.meanLeadTime);
        expect(measured(plan, 'jobs on time')).toEqual(all?.onTime);
        const queues = results.queues.filter(({ kind }) => kind === 'people');
        plan.waiting.forEach((jobs, hour) => {
          const waiting = queues.reduce((sum, { byHourOfWeek }) => sum + (byHourOfWeek.value[hour] ?? 0), 0);
          expect(jobs).toBeCloseTo(waiting, 9);
        });
        const [technician] = results.people;
        const overtime =
          technician?.states.find(({ state }) => state === 'overtime')?.share.value ?? Number.NaN;
        expect(measured(plan, 'overtime of all people')).toMatchObject({
          value: expect.closeTo(overtime * 168, 6),
        });
      }
      const again = await buildweek(['staff', scenario, ...FEW, '--json', '-', '--workers', '1']);
      expect(answerIn(again.stdout)).toEqual(answer);
    },
    PATIENCE,
  );

  it(
    'names every person whose hours break a rule, with days and hours, and leaves the law to others',
    async () => {
      const scenario = folder.write('rules.yaml', WITH_OPTIONS);
      const { stdout } = await buildweek(['staff', scenario, ...FEW, '--json', '-']);
      const [, , , night] = answerIn(stdout).plans;
      expect(night?.breaches).toEqual([
        {
          person: 'technician 1',
          rule: 'rest',
          when: 'Tuesday 06:00 to Tuesday 14:00',
          found: 8,
          limit: 11,
          times: 4,
          firstDate: '2024-01-02',
        },
        {
          person: 'technician 1',
          rule: 'rest',
          when: 'Thursday 06:00 to Thursday 14:00',
          found: 8,
          limit: 11,
          times: 4,
          firstDate: '2024-01-04',
        },
      ]);
      const text = await buildweek(['staff', scenario, ...FEW]);
      expect(text.stdout).toContain('technician 1 rests 8 h (Tuesday 06:00 to Tuesday 14:00)');
    },
    PATIENCE,
  );

  it(
    'goes on after Ctrl-C to the same answer',
    async () => {
      const long = ['--replications', '30', '--ignored-weeks', '1', '--weeks', '26'];
      const whole = await buildweek(['staff', LAB, ...long, '--json', '-']);
      const json = folder.file('stopped.json');
      const { child, ended } = startBuildweek(['staff', LAB, ...long, '--workers', '1', '--json', json]);
      const unfinished = `${json}.unfinished`;
      const hasBegun = (): boolean => existsSync(unfinished) && statSync(unfinished).size > 50_000;
      while (!hasBegun() && child.exitCode === null) await new Promise((resolve) => setTimeout(resolve, 20));
      child.kill('SIGINT');
      const stopped = await ended;
      expect(stopped.exitCode).toBe(130);
      expect(stopped.stderr).toContain('--resume');
      expect(existsSync(json)).toBe(false);
      const resumed = await buildweek(['staff', LAB, ...long, '--json', json, '--resume']);
      expect(resumed.exitCode).toBe(0);
      expect(answerIn(readFileSync(json, 'utf8'))).toEqual(answerIn(whole.stdout));
      expect(existsSync(unfinished)).toBe(false);
    },
    PATIENCE,
  );

  it('refuses options that cannot be: at the place of the slip, or with the errors of what they make', async () => {
    const slip = await buildweek(
      ['staff', '-'],
      `${TEXT}\nstaff: { options: { late: { techician / hours: day } } }\n`,
    );
    expect(slip.exitCode).toBe(2);
    expect(slip.stderr).toMatch(/standard input:\d+:29: error: There is no way to make the option "late"\./);
    expect(slip.stderr).toContain('technician / hours');
    const nobody = await buildweek(
      ['staff', '-'],
      `${TEXT}\nstaff: { options: { no hands: { technician / skills: [run machines] } } }\n`,
    );
    expect(nobody.exitCode).toBe(2);
    expect(nobody.stderr).toContain(
      'The option “no hands” (technician / skills: [run machines]) makes no lab',
    );
    expect(nobody.stderr).toMatch(
      /with the option “no hands”:\d+:\d+: error: Nobody can do the stage "remove supports"/,
    );
    const noHours = await buildweek(
      ['staff', '-'],
      `${TEXT}\nstaff: { options: { late: { technician / hours: lat } } }\n`,
    );
    expect(noHours.exitCode).toBe(2);
    expect(noHours.stderr).toMatch(/with the option “late”:\d+:\d+: error: There are no hours called "lat"/);
    const empty = await buildweek(['staff', '-'], queueScenario());
    expect(empty.exitCode).toBe(2);
    expect(empty.stderr).toContain('Nobody works in the lab of standard input');
  });
});
