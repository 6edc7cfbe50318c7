import { readScenario } from '@buildweek/scenario';
import { describe, expect, it } from 'vitest';
import { MOMENTS } from './cases/distributions.ts';
import { LAWS_OF_TIMES } from './cases/index.ts';
import { expectAgreement, PATIENCE } from './expect-agreement.ts';

describe('Published values of laws of times, from scenario to results', () => {
  it.each(LAWS_OF_TIMES)('agree: $title', expectAgreement, PATIENCE);

  it('agree: S18: parameters of a law with given moments', () => {
    const reading = readScenario(MOMENTS.scenario, 'published.yaml');
    if (reading.kind === 'problems') throw new Error('The scenario has problems.');
    const laws = new Map(
      reading.lab.parts.map(({ name, stages: [stage] }) => [
        name,
        stage?.kind === 'wait' ? stage.duration.distribution : null,
      ]),
    );
    const logStandardDeviation: unknown = expect.closeTo(Math.sqrt(0.4054651081), 9);
    const logMean: unknown = expect.closeTo(0.8958797346, 9);
    expect(laws.get('lognormal')).toEqual({ kind: 'lognormal', logMean, logStandardDeviation });
    expect(laws.get('gamma')).toEqual({ kind: 'gamma', shape: 4, scale: 0.75 });
  });
});
