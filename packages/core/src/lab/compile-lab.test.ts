import type { Lab } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import {
  attended,
  buildStage,
  constant,
  dated,
  lab,
  machine,
  part,
  people,
  printed,
  station,
  stationStage,
  workStage,
} from '../fixture/lab.ts';
import { change } from '../fixture/printing-lab.ts';
import { createSimulator } from '../simulate.ts';

const LEVER = part('lever', [buildStage('build', 'printers')], { print: printed(1) });

function refusal(more: Partial<Lab>): () => void {
  const testLab = lab({
    people: [people('technicians', 1, ['all'])],
    machines: [machine('printers')],
    parts: [LEVER],
    demand: [dated('lever', [1])],
    ...more,
  });
  return () =>
    createSimulator(testLab).simulate({
      seed: '',
      replication: 0,
      ignoredWeeks: 0,
      weeks: 1,
      capWeeks: 0,
      trace: false,
      queueWaits: false,
    });
}

describe('A lab that contradicts itself', () => {
  it('is refused with the name that does not resolve', () => {
    expect(refusal({})).not.toThrow();
    expect(refusal({ demand: [dated('ring', [1])] })).toThrow('Demand "ring" names no part of the lab.');
    expect(refusal({ machines: [] })).toThrow('names no machine group of the lab.');
    expect(refusal({ parts: [part('lever', [stationStage('wash', 'washers', constant(1))])] })).toThrow(
      'Stage "wash" names no station group of the lab.',
    );
    expect(refusal({ machines: [machine('printers', { carrier: 'tanks' })] })).toThrow(
      'There is no carrier "tanks" in the lab.',
    );
    expect(refusal({ labCalendar: 'night' })).toThrow('There is no calendar "night" in the lab.');
    expect(refusal({ people: [people('technicians', 1, [], { calendar: 'night' })] })).toThrow(
      'There is no calendar "night" in the lab.',
    );
  });

  it('is refused when a piece is larger than what its machine holds', () => {
    expect(refusal({ parts: [{ ...LEVER, space: 1.5 }] })).toThrow(
      'A piece of "lever" is larger than what "printers" holds.',
    );
    expect(refusal({ parts: [{ ...LEVER, space: 1 + 1e-12 }] })).not.toThrow();
  });

  it('is refused when an attended material change has no set-up to lengthen', () => {
    const materialChanges = [change(null, null, 1)];
    expect(refusal({ machines: [machine('printers', { materialChanges })] })).toThrow(
      'has an attended material change but no set-up to lengthen.',
    );
    expect(
      refusal({ machines: [machine('printers', { materialChanges, setUp: attended('all', 1) })] }),
    ).not.toThrow();
  });

  it('is refused when a duration is none', () => {
    const work = { ...attended('all', 1), duration: constant(-1) };
    expect(
      refusal({ parts: [part('lever', [workStage('sand', work)])], stations: [station('washers')] }),
    ).toThrow(RangeError);
  });
});
