import { describe, expect, it } from 'vitest';
import { changeScenario } from './change-scenario.ts';
import { ChangeError, placeText, readChanges } from './change-wording.ts';

const TEXT = `people:
  technicians: # the two of us
    count: 2
    hours: day
  help: { count: 1, hours: late }
machines:
  resin: { start: when 60 % full, after: 4 h }
  spare:
routes:
  ring:
    - prepare: { by: files, takes: 10 to 45 min, usually 20 }
    - build: { on: resin }
parts:
  resin: { route: ring }
`;

function changed(change: string): string {
  return changeScenario(TEXT, readChanges(change));
}

function refusal(change: string): { message: string; write: string } {
  try {
    changed(change);
  } catch (error) {
    if (error instanceof ChangeError) return { message: error.message, write: error.write };
    throw error;
  }
  throw new Error('was not refused');
}

describe('a change in words of the scenario', () => {
  it('replaces a value and leaves everything else as it is written', () => {
    expect(changed('people / technicians / count: 3')).toBe(TEXT.replace('count: 2', 'count: 3'));
    expect(changed('machines / resin / start: at once')).toBe(TEXT.replace('when 60 % full', 'at once'));
  });

  it('may begin with a name that is there once', () => {
    expect(changed('technicians / hours: late')).toBe(TEXT.replace('hours: day', 'hours: late'));
    expect(refusal('resin / count: 3')).toEqual({
      message: '"resin" is there more than once: machines or parts.',
      write: 'machines / resin / count: 3 or parts / resin / count: 3'.replaceAll(': 3', ''),
    });
  });

  it('finds stages by name', () => {
    expect(changed('routes / ring / prepare / takes: 5 min')).toContain('{ by: files, takes: 5 min }');
    expect(refusal('routes / ring / polish / takes: 5 min').message).toBe(
      'There is no "polish" under routes / ring.',
    );
  });

  it('adds a key to a group, in braces or in lines, and to an empty one', () => {
    expect(changed('help / grace: 10 min')).toContain('help: { grace: 10 min, count: 1, hours: late }');
    expect(changed('technicians / grace: 10 min')).toContain(
      'technicians: # the two of us\n    grace: 10 min\n    count: 2\n',
    );
    expect(changed('machines / spare / count: 2')).toContain('  spare: { count: 2 }\n');
    expect(changed('dispatch / rush interrupts: yes')).toMatch(
      /^dispatch: \{ rush interrupts: yes \}\npeople:/,
    );
  });

  it('takes several changes', () => {
    expect(changed('technicians / count: 3; help / count: 2')).toBe(
      TEXT.replace('count: 2', 'count: 3').replace('count: 1', 'count: 2'),
    );
  });

  it('takes names with its own signs in them between quotes', () => {
    const named = 'machines:\n  wash/cure; a: b: { count: 2 }\n  "say \\"no\\"": { count: 1 }\n'.replace(
      'wash/cure; a: b',
      '"wash/cure; a: b"',
    );
    const change = (path: readonly string[]): string =>
      changeScenario(named, readChanges(`${placeText(path)}: 3; machines / x / note: "a; b"`));
    expect(placeText(['machines', 'wash/cure; a: b', 'count'])).toBe('machines / "wash/cure; a: b" / count');
    expect(() => change(['machines', 'x', 'count'])).toThrow('There is no "x" under machines.');
    const counted = (path: readonly string[]): string =>
      changeScenario(named, readChanges(`${placeText(path)}: 3`));
    expect(counted(['machines', 'wash/cure; a: b', 'count'])).toBe(named.replace('count: 2', 'count: 3'));
    expect(counted(['machines', 'say "no"', 'count'])).toBe(named.replace('count: 1', 'count: 3'));
    expect(readChanges('targets: ["a; b", "c"]; x / y: 2').map(({ value }) => value)).toEqual([
      '["a; b", "c"]',
      '2',
    ]);
  });

  it('is refused with what to write when a name is a slip', () => {
    expect(refusal('people / technisians / count: 3')).toEqual({
      message: 'There is no "technisians" under people.',
      write: 'people / technicians / count',
    });
    expect(refusal('technisians / count: 3').write).toBe('technicians / count');
    expect(refusal('technicians count: 3').write).toBe('technicians / count');
    expect(refusal('lasers / count: 3')).toEqual({
      message: expect.stringMatching(
        /^The scenario has nothing that is called "lasers"\. It has technicians, /,
      ),
      write: 'technicians / count',
    });
    expect(refusal('technicians count 3').message).toContain('is no change');
    expect(refusal('technicians / count:').message).toContain('has no value');
    expect(refusal('technicians / count / more: 3').message).toContain('is a value');
  });
});
