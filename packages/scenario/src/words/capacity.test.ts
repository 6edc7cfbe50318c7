import { describe, expect, it } from 'vitest';
import { refusal } from '../fixture/refusal.ts';
import { fitsPerBuild, machineCapacity, spaceOfBuild, stationCapacity } from './capacity.ts';

describe('a capacity', () => {
  it('of a machine is a number of parts', () => {
    expect(machineCapacity('24 parts')).toBe(24);
    expect(refusal(machineCapacity, '24').write).toBe('24 parts');
    expect(refusal(machineCapacity, '2 jobs').write).toBe('2 parts');
    expect(refusal(machineCapacity, '0 parts').message).toBe('0 is not a whole number from 1 up.');
  });

  it('of a station is a number of parts, jobs or builds, or a volume', () => {
    expect(stationCapacity('20 parts')).toEqual({ capacity: 20, unit: 'parts' });
    expect(stationCapacity('1 job')).toEqual({ capacity: 1, unit: 'jobs' });
    expect(stationCapacity('2 platforms')).toEqual({ capacity: 2, unit: 'builds' });
    expect(stationCapacity('4 litres')).toEqual({ capacity: 4e6, unit: 'box volume' });
    expect(stationCapacity('750 cm3')).toEqual({ capacity: 750_000, unit: 'box volume' });
    expect(refusal(stationCapacity, '4 liters').write).toBe('4 litres');
    expect(refusal(stationCapacity, '2 boxes').message).toBe(
      'A station holds parts, jobs, builds or litres, not "boxes".',
    );
  });

  it('of a build is said by the part: how many fit, or the share that one takes', () => {
    expect(fitsPerBuild('24 per build')).toBe(24);
    expect(refusal(fitsPerBuild, '24').write).toBe('24 per build');
    expect(refusal(fitsPerBuild, '0 per build').write).toBe('1 per build');
    expect(spaceOfBuild('2.5 % of a build')).toBeCloseTo(0.025, 15);
    expect(refusal(spaceOfBuild, '120 %').message).toBe(
      'The part takes more than a whole build: it fits no machine.',
    );
    expect(refusal(spaceOfBuild, '0 %').message).toBe('A part takes some space.');
  });
});
