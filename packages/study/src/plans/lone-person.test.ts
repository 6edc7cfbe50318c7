import { describe, expect, it } from 'vitest';
import { people } from '../fixture/lab.ts';
import { lonePersonSentences } from './lone-person.ts';

const ILL = { share: 0.03 } as unknown as NonNullable<ReturnType<typeof people>['absence']>;

describe('what hangs on one person', () => {
  it('is said with the skills, and that nobody ever takes leave', () => {
    const operator = people('operators', 1, ['files', 'machines', 'hands']);
    const finisher = people('finisher', 1, ['hands']);
    expect(lonePersonSentences({ people: [operator, finisher] })).toEqual([
      'In this plan “files” and “machines” hang on the only one of “operators”; the scenario states no leave and no absence of “operators”.',
    ]);
  });

  it('is said of each group, and of absence only where there is none', () => {
    const operator = people('operators', 1, ['machines'], { absence: ILL });
    expect(lonePersonSentences({ people: [operator, people('finisher', 1, ['hands'])] })).toEqual([
      'In this plan “machines” hangs on the only one of “operators” and “hands” hangs on the only one of “finisher”; the scenario states no leave and no absence of “finisher”.',
    ]);
  });

  it('is nothing where every skill is there twice; who is not there counts for nothing', () => {
    expect(lonePersonSentences({ people: [people('operators', 2, ['machines'])] })).toEqual([]);
    const both = [people('operators', 1, ['machines']), people('evening', 1, ['machines'])];
    expect(lonePersonSentences({ people: both })).toEqual([]);
    const one = [people('operators', 1, ['machines'], { absence: ILL }), people('evening', 0, ['machines'])];
    expect(lonePersonSentences({ people: one })).toHaveLength(1);
  });
});
