import { describe, expect, it } from 'vitest';
import { readYaml } from '../source/read-yaml.ts';
import { toPlain } from '../source/source-node.ts';
import { SourceText } from '../source/source-text.ts';
import { changeGroup, changeNoted } from './change-groups.ts';
import { ChangeError } from './change-wording.ts';

const TEXT = `buildweek: 1
demand: # what is asked for
  ring: { jobs: 5 per week, rush: 10 %, promise: 3 working days } # rings
  cap:
    jobs: 4 per week # caps
    when:
      mon 08:00-12:00: 2
      tue-fri 08:00-16:00: 1
    pieces: 1 to 4
  plug:

targets: on time at least 90 %
`;
const VALUES = [
  { key: 'jobs', value: '6 per week', note: '60 jobs' },
  { key: 'pieces', value: '[1, 2]', note: '59 say so' },
];

function plain(text: string): unknown {
  const { root, problems } = readYaml(new SourceText('scenario', text));
  expect(problems).toEqual([]);
  return root === null ? null : toPlain(root);
}

describe('changeGroup', () => {
  it('sets groups that stand in braces on lines of their own', () => {
    const braces =
      'buildweek: 1\ndemand: { ring: { jobs: 5 per week, rush: 10 % }, cap: { jobs: 4 per week } } # all\ntargets: x\n';
    const changed = changeGroup(braces, 'demand', 'ring', VALUES);
    expect(plain(changed)).toEqual({
      buildweek: 1,
      demand: { ring: { jobs: '6 per week', pieces: [1, 2], rush: '10 %' }, cap: { jobs: '4 per week' } },
      targets: 'x',
    });
    expect(changed).toContain('jobs: 6 per week # 60 jobs');
  });

  it('goes on with the indents of the file', () => {
    const wide = 'demand:\n    ring: { jobs: 5 per week }\n    cap:\n';
    for (const name of ['ring', 'cap']) {
      expect(plain(changeGroup(wide, 'demand', name, VALUES))).toMatchObject({
        demand: { [name]: { jobs: '6 per week' } },
      });
    }
  });

  it('writes a group in braces on lines of its own, and keeps what is not changed', () => {
    const text = changeGroup(TEXT, 'demand', 'ring', VALUES);
    expect(text).toContain(
      '  ring:\n    jobs: 6 per week # 60 jobs\n    pieces: [1, 2] # 59 say so\n    rush: 10 %\n    promise: 3 working days\n  cap:',
    );
  });

  it('keeps blocks of several lines', () => {
    const before = plain(TEXT) as { demand: { cap: object } };
    const text = changeGroup(TEXT, 'demand', 'cap', VALUES);
    expect(plain(text)).toEqual({
      ...before,
      demand: { ...before.demand, cap: { ...before.demand.cap, jobs: '6 per week', pieces: [1, 2] } },
    });
    expect(text.split('\n').slice(0, 3)).toEqual(TEXT.split('\n').slice(0, 3));
    expect(text).toContain('\n  plug:\n\ntargets: on time at least 90 %\n');
  });

  it('fills an empty group', () => {
    expect(changeGroup(TEXT, 'demand', 'plug', VALUES)).toContain(
      '\n  plug:\n    jobs: 6 per week # 60 jobs\n    pieces: [1, 2] # 59 say so\n\ntargets',
    );
  });

  it('refuses a group that is not there', () => {
    expect(() => changeGroup(TEXT, 'demand', 'gear', VALUES)).toThrow(ChangeError);
  });
});

describe('changeNoted', () => {
  it('puts a value in, and a note at the end of its line, behind one that is there', () => {
    expect(changeNoted(TEXT, ['demand', 'ring', 'rush'], '12 %', '6 of 50 jobs')).toContain(
      'rush: 12 %, promise: 3 working days } # rings; 6 of 50 jobs\n',
    );
    expect(changeNoted(TEXT, ['demand', 'cap', 'pieces'], '[1, 2]', '59 say so')).toContain(
      '    pieces: [1, 2] # 59 say so\n',
    );
  });

  it('puts a key in that is not there', () => {
    expect(changeNoted(TEXT, ['demand', 'cap', 'rush'], '9 %', '6 of 66 jobs')).toContain(
      '  cap:\n    rush: 9 % # 6 of 66 jobs\n    jobs: 4 per week # caps\n',
    );
    expect(changeNoted(TEXT, ['demand', 'ring', 'times', 'sand'], '1 min', 'x')).toContain(
      '  ring: { times: { sand: 1 min }, jobs: 5 per week, rush: 10 %, promise: 3 working days } # rings; x\n',
    );
  });
});
