import { describe, expect, it } from 'vitest';
import { MACHINE_CLASSES } from './machine-classes.ts';
import { MACHINE_TROUBLES } from './machine-troubles.ts';
import { STATION_CLASSES } from './station-classes.ts';
import { typicalMachines } from './typical-machines.ts';

describe('typical machines', () => {
  const classes = typicalMachines();
  const valueIn = (className: string, name: string) =>
    classes.find((found) => found.name === className)?.parameters.find((value) => value.name === name);

  it('are all classes that a scenario can name', () => {
    expect(classes.map(({ name }) => name)).toEqual([...MACHINE_CLASSES.keys(), ...STATION_CLASSES.keys()]);
    expect(classes.filter(({ kind }) => kind === 'machines').map(({ process }) => process)).toEqual([
      'MEX',
      'MEX',
      'VPP',
      'VPP',
      'PBF',
      'PBF',
    ]);
  });

  it('have a low, a typical and a high value in this order, and a source for each', () => {
    for (const { name, parameters } of classes) {
      expect(parameters.length).toBeGreaterThan(0);
      for (const { low, typical, high, source, name: parameter } of parameters) {
        expect([name, parameter, low <= typical && typical <= high]).toEqual([name, parameter, true]);
        expect(source).toMatch(/common practice/);
      }
      const names = parameters.map((parameter) => parameter.name);
      expect(new Set(names).size).toBe(names.length);
    }
  });

  it('have every time that the class puts in the place of a key', () => {
    for (const [className, { texts }] of MACHINE_CLASSES) {
      const named = Object.keys(texts).map((key) =>
        key === 'cool-down' && className.endsWith('PBF') ? 'cool-down of builds of unknown height' : key,
      );
      for (const name of named) expect(valueIn(className, name)).toBeDefined();
    }
    for (const [className, texts] of STATION_CLASSES) {
      for (const name of Object.keys(texts).filter((key) => !['by', 'holds'].includes(key))) {
        expect(valueIn(className, name)).toBeDefined();
      }
    }
    expect(valueIn('small MEX', 'set-up')).toMatchObject({ low: 5, typical: 10, high: 20, unit: 'min' });
    expect(valueIn('wash bath', 'takes')).toMatchObject({ typical: 12, unit: 'min per batch' });
  });

  it('agree with what fails, is rejected and breaks down in a class', () => {
    for (const [className, { fails, rejects, breakdowns }] of MACHINE_TROUBLES) {
      expect(fails).toBe(`${valueIn(className, 'fails')?.typical} % of builds`);
      expect(rejects).toBe(`${valueIn(className, 'rejects')?.typical} %`);
      const perHour = breakdowns.reduce(
        (sum, { texts }) => sum + 1 / Number(/about (\d+) h/.exec(texts.every ?? '')?.[1]),
        0,
      );
      expect(1 / perHour).toBeCloseTo(valueIn(className, 'breaks down every')?.typical ?? 0, 9);
    }
  });

  it('mark what no scenario uses yet', () => {
    expect(valueIn('large PBF', 'price')).toMatchObject({ use: 'for planning money later', unit: 'EUR' });
    expect(valueIn('large PBF', 'layer')?.use).toBe('stands in');
    expect(valueIn('large PBF', 'inspect')?.use).toBe('for routes');
  });
});
