import type { LoggedStage } from '@buildweek/records';
import { describe, expect, it } from 'vitest';
import { attended, bench, build, lab, machine, part } from '../fixture/lab.ts';
import { logged } from '../fixture/logged.ts';
import { knownStages } from './logged-stages.ts';

const LAB = lab({
  machines: [machine('printer')],
  parts: [
    part('lever', [
      bench('prepare file', attended('all', 1)),
      build('resin build', 'printer'),
      bench('remove supports', attended('all', 1)),
    ]),
  ],
});

function found(...stages: readonly LoggedStage[]) {
  const one = logged(0, 1, { stages });
  const job = { logged: one, stream: 0, part: 'lever', enters: 0, isJudged: true };
  return knownStages(LAB, [job])
    .get('lever')
    ?.map(({ stage, logged: name }) => [stage, name]);
}

const clicks = (name: string): LoggedStage => ({ name, start: 1, end: 2, isWork: false });

describe('knownStages', () => {
  it('finds stages by name, by a name within a name, and the build by its words, in the order of the route', () => {
    expect(found(clicks('Remove_Supports'), clicks('Print'), clicks('file'))).toEqual([
      ['prepare file', 'file'],
      ['resin build', 'Print'],
      ['remove supports', 'Remove_Supports'],
    ]);
  });

  it('leaves out what the route has not got, and stages without any time', () => {
    expect(found(clicks('polish'), { ...clicks('print'), start: null, end: null })).toEqual([]);
  });

  it('takes the first of two names for one stage', () => {
    expect(found(clicks('print'), clicks('printing'))).toEqual([['resin build', 'print']]);
  });
});
