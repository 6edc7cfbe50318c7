import { parseResults } from '@buildweek/results';
import { afterAll, describe, expect, it } from 'vitest';
import { buildweek, Folder, queueScenario } from './buildweek.ts';

const folder = new Folder();
afterAll(() => folder.remove());

/** One server, at work for 60 % of the time. */
function scenario(...targets: readonly string[]): string {
  return `${queueScenario().trimEnd()}\ntargets:\n${targets.map((target) => `  - ${target}\n`).join('')}`;
}

const oneLine = (text: string): string => text.replace(/\s+/g, ' ');

describe('targets', () => {
  const path = folder.write(
    'targets.yaml',
    scenario('90 % of customers within 1 h', 'server busy at most 90 %'),
  );

  it('are judged in every run, the missed ones in the answer; a missed target is an answer and ends with 0', async () => {
    const { exitCode, stdout } = await buildweek(['run', path]);
    expect(exitCode).toBe(0);
    expect(oneLine(stdout)).toMatch(
      /^One server 1 of 2 targets are met; missed: “90 % of customers within 1 h”, found \d+ % \(\d+ to \d+\)\./,
    );
    expect(stdout).toMatch(/90 % of customers within 1 h .* ✗ missed +over 99\.9\s% confidence/);
    expect(stdout).toMatch(/server busy at most 90 % .* ✓ met +over 99\.9\s% confidence/);
    expect(stdout.indexOf('Targets\n')).toBeLessThan(stdout.indexOf('Lead times'));
    expect(oneLine(stdout)).toContain('Confidence is one-sided and says how clearly');
  });

  it('stand in the results', async () => {
    const { stdout } = await buildweek(['run', path, '--json', '-']);
    expect(parseResults(stdout).targets).toMatchObject([
      { wording: '90 % of customers within 1 h', asked: 0.9, verdict: 'missed', currency: null },
      { wording: 'server busy at most 90 %', asked: 0.9, verdict: 'met', currency: null },
    ]);
  });

  it('are listed by check as they are understood', async () => {
    const { exitCode, stdout } = await buildweek(['check', path]);
    expect(exitCode).toBe(0);
    expect(oneLine(stdout)).toContain(
      '- 90 % of customers within 1 h: Of all jobs of “customer” in the long run, within 1 h by the clock from the complete file to the last good part; jobs that are never finished are late.',
    );
  });

  it('that speak of quarters are judged by what is measured, which is said', async () => {
    const quarters = scenario('50 % of customers within 3 h in 90 % of quarters').replace(
      /weeks: 1\b/,
      'weeks: 13',
    );
    const { stdout } = await buildweek(['run', folder.write('quarters.yaml', quarters), '--weeks', '2']);
    expect(oneLine(stdout)).toContain('of periods of 2 weeks');
    expect(oneLine(stdout)).toContain('speaks of quarters; here it is judged by the period of 2 weeks.');
  });

  it('on something that is not measured are answered with line, column and what to write, and end with 2', async () => {
    const wrong = folder.write('wrong.yaml', scenario('throughput at least 5'));
    const { exitCode, stdout, stderr } = await buildweek(['run', wrong]);
    expect({ exitCode, stdout }).toEqual({ exitCode: 2, stdout: '' });
    expect(stderr).toMatch(
      /wrong\.yaml:\d+:5: error: "throughput at least 5" asks for nothing that is measured\./,
    );
    expect(stderr).toContain('write:    for example: 90 % of rush jobs within 2 days');
  });
});
