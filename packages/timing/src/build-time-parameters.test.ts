import type { BuildTimeModel } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { BUILD_TIME_PARAMETERS } from './build-time-parameters.ts';
import { BuildTimer } from './build-timer.ts';
import { block } from './test-data/blocks.ts';

const kinds = Object.keys(BUILD_TIME_PARAMETERS) as BuildTimeModel['kind'][];

/** A model whose parameters are all at one end of their ranges, or in the middle. */
function modelAt(kind: BuildTimeModel['kind'], which: 'low' | 'typical' | 'high'): BuildTimeModel {
  const entries = BUILD_TIME_PARAMETERS[kind].map((parameter) => [parameter.name, parameter[which]]);
  return { kind, ...Object.fromEntries(entries) } as BuildTimeModel;
}

describe('BUILD_TIME_PARAMETERS', () => {
  it.each(kinds)('has for %s the typical value between the low and the high one, and a source', (kind) => {
    for (const { low, typical, high, source, unit } of BUILD_TIME_PARAMETERS[kind]) {
      expect(low).toBeLessThan(typical);
      expect(typical).toBeLessThan(high);
      expect(source).toMatch(/common practice, no source|\(\d{4}\)/);
      expect(unit).not.toBe('');
    }
  });

  it.each(kinds)('has for %s every parameter that the print time needs', (kind) => {
    for (const which of ['low', 'typical', 'high'] as const) {
      const hours = new BuildTimer(modelAt(kind, which), [block(40, 30, 20)]).printHours(
        Int32Array.of(1),
        20,
      );
      expect(hours).toBeGreaterThan(0.02);
      expect(hours).toBeLessThan(48);
    }
  });

  // J. Go and others, Additive Manufacturing 16 (2017), pages 1-11: tens of cm3 per hour, 10 to 60.
  it('has a typical rate of extrusion in the range of measured machines', () => {
    const rate = BUILD_TIME_PARAMETERS.extrusion.find(({ name }) => name === 'rate');
    const perHour = ((rate?.typical ?? 0) * 3600) / 1000;
    expect(perHour).toBeGreaterThan(10);
    expect(perHour).toBeLessThan(60);
  });
});
