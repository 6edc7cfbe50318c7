import type { Variation } from '@buildweek/model';
import type { PlanAnswer } from '@buildweek/results';
import { expect, test } from 'vitest';
import { styleFor } from '../terminal/style.ts';
import { nextSteps } from './next-steps.ts';

const style = styleFor({ isTTY: false, write: () => true });
const VARIATIONS: readonly Variation[] = [
  { kind: 'count', of: 'machines', group: 'resin', from: 1, to: 4 },
  { kind: 'wording', path: ['people', 'technicians', 'hours'], options: ['day', 'late'] },
  { kind: 'count', of: 'machines', group: 'filament', from: 1, to: 5 },
  { kind: 'count', of: 'carriers', group: 'tanks', from: 1, to: 5 },
];
const choice = (what: string, value: string) => ({ what, value });

function answer(choices: readonly { what: string; value: string }[], isToday = false): PlanAnswer {
  return {
    varied: [
      { what: 'resin', choices: '1 to 4', today: '3' },
      { what: 'technicians / hours', choices: 'day or late', today: 'day' },
      { what: 'filament', choices: '1 to 5', today: '4' },
      { what: 'tanks', choices: '1 to 5', today: '2' },
    ],
    shown: [{ role: 'chosen', isToday, choices }],
  } as unknown as PlanAnswer;
}

test('the plan that was found is handed on in words of the scenario, where it differs from today', () => {
  const found = [
    choice('resin', '2'),
    choice('technicians / hours', 'late'),
    choice('filament', '4'),
    choice('tanks', '3'),
  ];
  const words = nextSteps(answer(found), 'lab.yaml', VARIATIONS, [], null, style);
  expect(words).toContain(
    '    buildweek doubts lab.yaml --with "machines / resin / count: 2; people / technicians / hours: late; carriers / tanks: 3"\n',
  );
  expect(words).toContain(
    '    buildweek growth lab.yaml --with "machines / resin / count: 2; people / technicians / hours: late; carriers / tanks: 3"\n',
  );
});

test('there is nothing to hand on where the scenario says it already, or was read from standard input', () => {
  expect(nextSteps(answer([choice('resin', '3')], true), 'lab.yaml', VARIATIONS, [], null, style)).toBe('');
  expect(nextSteps(answer([choice('resin', '2')]), '-', VARIATIONS, [], null, style)).toBe('');
  expect(nextSteps({ ...answer([]), shown: [] }, 'lab.yaml', VARIATIONS, [], null, style)).toBe('');
});

test('targets that were asked for are handed on to what judges by targets', () => {
  const target = '90 % of jobs within 3 days';
  const words = nextSteps(answer([choice('resin', '2')]), 'lab.yaml', VARIATIONS, [target], null, style);
  for (const command of ['doubts', 'growth']) {
    expect(words).toContain(
      `    buildweek ${command} lab.yaml --with "machines / resin / count: 2; targets: ['90 % of jobs within 3 days']"\n`,
    );
  }
  expect(words).toContain('    buildweek away lab.yaml --with "machines / resin / count: 2"\n');
});

test('growth that the scenario does not state is asked for with an example', () => {
  const words = nextSteps(answer([choice('resin', '2')]), 'lab.yaml', VARIATIONS, [], '2 % a month', style);
  expect(words).toContain(
    '    buildweek growth lab.yaml --by "2 % a month" --with "machines / resin / count: 2"\n',
  );
  expect(words.match(/--by/g)).toHaveLength(1);
});
