import { afterAll, describe, expect, it } from 'vitest';
import { buildweek, Folder, queueScenario } from './buildweek.ts';

const folder = new Folder();
afterAll(() => folder.remove());

describe('buildweek check', () => {
  it('prints the lab as understood, with defaults and where each value came from', async () => {
    const { exitCode, stdout } = await buildweek(['check', 'scenarios/small.yaml']);
    expect(exitCode).toBe(0);
    expect(stdout).toMatch(/simulate \/ seed +corner +line 4/);
    expect(stdout).toMatch(/machines \/ printer \/ warm-up .* default of a machine class/);
    expect(stdout).toMatch(/people \/ technician \/ count +1 +default of the program/);
  });

  it('prints the load of every resource by hand calculation', async () => {
    const path = folder.write('queue.yaml', queueScenario());
    const { stdout } = await buildweek(['check', path]);
    // 100 customers a week of 1 h each on a server of 168 h.
    expect(stdout).toMatch(/server +station +1 +100 +168 +60/);
  });

  it('prints a rough lead time of every part by hand calculation, or why there is none', async () => {
    const path = folder.write('lead-time.yaml', queueScenario());
    const { stdout } = await buildweek(['check', path]);
    // M/M/1: 1 h of service, and 100 / 68 h of waiting for the server.
    expect(stdout).toMatch(/jobs +by hand, h +stages +trouble +requester +batch +equipment +people/);
    expect(stdout).toMatch(/customer +2\.47 +1 +0 +0 +0 +1\.47 +0/);
    const full = folder.write('no-lead-time.yaml', queueScenario('', 210));
    const refused = (await buildweek(['check', full])).stdout.replace(/\s+/g, ' ');
    expect(refused).toContain('customer not given [1]');
    expect(refused).toContain(
      '[1] 125 % of the hours of “server” are asked for, trouble counted: the queue grows without end.',
    );
  });

  it('warns of a load above 100 %, with the number, and ends with 0', async () => {
    const path = folder.write('full.yaml', queueScenario('', 210));
    const { exitCode, stdout } = await buildweek(['check', path]);
    expect(exitCode).toBe(0);
    expect(stdout.replace(/\s+/g, ' ')).toContain(
      'The load of server is 125 %: 210 h a week are asked for, 168 h are there.',
    );
  });

  it('answers a mistyped key with line, column and what to write, and ends with 2', async () => {
    const path = folder.write('typo.yaml', queueScenario().replace('takes:', 'tekes:'));
    const { exitCode, stdout, stderr } = await buildweek(['check', path]);
    expect({ exitCode, stdout }).toEqual({ exitCode: 2, stdout: '' });
    expect(stderr).toContain(`${path}:9:`);
    expect(stderr).toContain('- service: { on: server, tekes: exponential mean 1 h per job }');
    expect(stderr).toContain('takes');
    expect(stderr).toContain('nothing was done');
  });

  it('tells of all errors at once', async () => {
    const text = queueScenario()
      .replace('takes:', 'tekes:')
      .replace('pattern', '')
      .replace('holds: 1', 'holds: 0');
    const { stderr } = await buildweek(['check', folder.write('two.yaml', text)]);
    expect(stderr).toContain('There are 2 errors');
  });

  it('reads standard input for -', async () => {
    expect(await buildweek(['check', '-'], queueScenario())).toMatchObject({ exitCode: 0 });
  });

  it('says which file is not there', async () => {
    const path = folder.file('missing.yaml');
    expect(await buildweek(['check', path])).toEqual({
      exitCode: 2,
      stdout: '',
      stderr: `Cannot read the scenario ${path}: there is no such file.\n`,
    });
    expect((await buildweek(['check', folder.root])).stderr).toContain('that is a folder, not a file');
  });

  it('writes no colours where there is no terminal, and lets no scenario steer the terminal', async () => {
    // A right-to-left override, which would turn round what follows it.
    const text = queueScenario().replace('One server', '"red \\u202E server"');
    const { stdout } = await buildweek(['check', folder.write('red.yaml', text)]);
    expect(stdout).toMatch(/^red · server\n/);
    expect(stdout).not.toMatch(/[\p{Bidi_Control}]/u);
    expect(stdout.replaceAll('\n', '')).not.toMatch(/\p{Cc}/u);
  });
});
