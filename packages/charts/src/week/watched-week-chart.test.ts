import { describe, expect, it } from 'vitest';
import { axisTitles, compileChart, expressionsOf, numbersIn } from '../fixture/compiled-chart.ts';
import { watchedWeekFixture } from '../fixture/watched-week-fixture.ts';
import { DOINGS } from './doings.ts';
import { watchedWeekChart } from './watched-week-chart.ts';

const week = watchedWeekFixture();

describe.each(['wide', 'narrow'] as const)('The %s chart of a week', (size) => {
  const chart = watchedWeekChart(week, 4, size);

  it('compiles without a complaint to the specification that was looked at', async () => {
    const { spec, complaints } = compileChart(chart);
    expect(complaints).toEqual([]);
    await expect(`${JSON.stringify(spec, null, 1)}\n`).toMatchFileSnapshot(
      `../__snapshots__/watched-week-${size}.json`,
    );
  });

  it('draws what was done when', () => {
    const numbers = numbersIn(chart.spec);
    for (const hour of [7, 7.5, 18, 31, 31.5, 60, 80]) expect(numbers).toContain(hour.toFixed(6));
  });

  it('has no expression that holds a name from the scenario', () => {
    const hostile = watchedWeekChart(watchedWeekFixture('"];alert(1)//'), 4, size);
    expect(expressionsOf(compileChart(hostile).spec).join()).not.toContain('alert');
    expect(axisTitles(compileChart(hostile).spec).join()).not.toContain('alert');
  });
});

describe('The chart of a week', () => {
  it('says in its title what the traced job waited for, and in words what everybody did', () => {
    const { title, description } = watchedWeekChart(week, 4);
    expect(title).toContain('job 4');
    expect(title).toMatch(/took 36.h, 22.h of them waiting for the shift/);
    expect(description).toMatch(/resin 1\u2069?: .*broken down 20.h/);
  });

  it('traces no job that was not there', () => {
    expect(watchedWeekChart(week, 99).title).toContain('what every machine and everybody did');
  });

  it('tells kinds of doing apart without colour, by heights or in the pairs that share a colour family', () => {
    const heights = Object.values(DOINGS).map(({ height }) => height);
    expect(new Set(heights).size).toBe(heights.length - 1);
    expect(DOINGS.down.colour).not.toBe(DOINGS['hands at work'].colour);
  });
});
