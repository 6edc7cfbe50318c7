import { decisionAnswerSchema } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import { compileChart, expressionsOf, numbersIn } from '../fixture/compiled-chart.ts';
import { decisionFixture } from '../fixture/decision-fixture.ts';
import { changeLine, changesBeside, reaches, shortChange, tellingTargets } from './option-words.ts';
import { optionsChart } from './options-chart.ts';

const answer = decisionFixture();

describe.each(['wide', 'narrow'] as const)('The %s chart of the options', (size) => {
  const [chart] = optionsChart(answer, size);

  it('compiles without a complaint to the specification that was looked at', async () => {
    if (chart === undefined) throw new Error('There is no chart.');
    const { spec, complaints } = compileChart(chart);
    expect(complaints).toEqual([]);
    await expect(`${JSON.stringify(spec, null, 1)}\n`).toMatchFileSnapshot(
      `../__snapshots__/options-${size}.json`,
    );
  });

  it('shows what every option reaches, with its interval, and what is asked for', () => {
    const numbers = numbersIn(chart?.spec);
    for (const { targets } of answer.options) {
      for (const { value, asked } of targets) {
        if (value.kind !== 'estimate') continue;
        expect(numbers).toContain(value.value.toFixed(6));
        expect(numbers).toContain(Math.min(1, value.high).toFixed(6));
        expect(numbers).toContain(asked.toFixed(6));
      }
    }
  });

  it('has no expression that holds a name from the scenario', () => {
    const hostile = decisionFixture();
    const target = '"];alert(1)//';
    const named = {
      ...hostile,
      options: hostile.options.map((option) => ({
        ...option,
        changes: [target],
        targets: option.targets.map((one) => ({ ...one, target })),
      })),
    };
    const [drawn] = optionsChart(named, size);
    if (drawn === undefined) throw new Error('There is no chart.');
    expect(expressionsOf(compileChart(drawn).spec).join()).not.toContain('alert');
  });
});

describe('The words of options', () => {
  it('are the changes without where they stand in the file', () => {
    expect(shortChange('people / technicians / count: 3')).toBe('technicians: 3');
    expect(shortChange('machines / resin / start: at once')).toBe('resin / start: at once');
    expect(answer.options.map(changeLine)[0]).toBe('no change');
  });

  it('say only what comes on top where an option holds all that is recommended', () => {
    const [first] = answer.options;
    if (first === undefined) throw new Error('The fixture has options.');
    const recommended = { ...first, changes: ['machines / resin / count: 3'] };
    const faster = { ...first, changes: ['people / technicians / count: 3', 'machines / resin / count: 3'] };
    expect(changesBeside(faster, recommended)).toBe('recommended, and technicians: 3');
    expect(changesBeside(recommended, recommended)).toBe('resin: 3');
    expect(changesBeside({ ...first, changes: ['a: 1'] }, recommended)).toBe('a: 1');
    expect(changesBeside(faster, undefined)).toBe('technicians: 3, resin: 3');
  });

  it('say whether a target is reached by the verdict, else by the whole interval', () => {
    const target = answer.options[0]?.targets[0];
    if (target?.value.kind !== 'estimate') throw new Error('The fixture has estimates.');
    const at = (low: number, high: number) => ({
      ...target,
      asked: 0.9,
      verdict: 'not tested' as const,
      value: {
        ...target.value,
        kind: 'estimate' as const,
        value: (low + high) / 2,
        low,
        high,
      } as typeof target.value,
    });
    expect([at(0.9, 0.95), at(0.8, 0.89), at(0.85, 0.95)].map(reaches)).toEqual([
      'reached',
      'missed',
      'not decided',
    ]);
    expect(reaches({ ...at(0.8, 0.95), verdict: 'met' })).toBe('reached');
  });

  it('put targets that an option misses before others, in their order', () => {
    expect(tellingTargets(answer, 1)).toEqual([0]);
    expect(tellingTargets(answer, 2)).toEqual([0, 1]);
  });
});

describe('The fixture of a decision', () => {
  it('is a document of its schema', () => {
    expect(() => decisionAnswerSchema.parse(answer)).not.toThrow();
  });
});
