import { describe, expect, it } from 'vitest';
import { edited, problemsOf } from '../fixture/plain-lab.ts';

const MACHINE = 'class: small mask VPP';

/** Problems of the plain lab with keys for its machine; people are there 8:00 to 12:00 and 12:30 to 16:30. */
function withKeys(keys: string, print = '3 h per build') {
  return problemsOf(edited(MACHINE, `${MACHINE}, ${keys}`).replace('3 h per build', print));
}

describe('a build that may not run alone', () => {
  // Set-up 10 min typically, warm-up 6 min: 8:10 is the earliest start, and 12:00 the end.
  it('has to fit, with its warm-up, between set-up and the end of the attended hours', () => {
    expect(withKeys('runs alone: never', '3 h 44 min per build')).toEqual([]);
    expect(withKeys('runs alone: never', '3 h 45 min per build')).toMatchObject([
      {
        severity: 'error',
        line: 20,
        message:
          'The build of 8 "ring" may never run: alone it typically takes 3 h 51 min, and "resin" may run for ' +
          'at most 3 h 50 min at a stretch, with somebody there or alone.',
        write: 'runs alone: always under machines / resin',
      },
    ]);
  });

  it('has to fit when it is full', () => {
    expect(withKeys('runs alone: never', '25 min per part')).toEqual([]);
    expect(withKeys('runs alone: never', '30 min per part')).toHaveLength(1);
  });

  it('may go on from attended hours into hours in which it may run alone', () => {
    const night = 'runs alone: mon-thu 16:30-08:00';
    // Monday 12:30 plus 10 min to Tuesday 12:00.
    expect(withKeys(night, '23 h 14 min per build')).toEqual([]);
    expect(withKeys(night, '23 h 15 min per build')).toHaveLength(1);
    expect(withKeys('runs alone: mon-thu 17:00-08:00', '5 h per build')).toHaveLength(1);
  });

  it('is judged on the whole print, also where the first layers are watched', () => {
    const watched = 'runs alone: never, first layers: 30 min';
    expect(withKeys(watched, '3 h 44 min per build')).toEqual([]);
    expect(withKeys(watched, '3 h 45 min per build')).toHaveLength(1);
  });

  it('has to fit with the print and the cool-down that follow from its height', () => {
    const ofHeight = (height: number, keys = '') =>
      problemsOf(
        edited(MACHINE, `${MACHINE}, runs alone: never${keys}`).replace(
          'fits: 8 per build, print: 3 h per build',
          `size: 20 x 20 x ${height} mm, volume: 4 cm3`,
        ),
      );
    // Layers of 0.05 mm take 8 s and the first five 32 s more: 1,660 layers and a warm-up of 6 min are 3 h 50 min.
    expect(ofHeight(83)).toEqual([]);
    expect(ofHeight(83.01)).toMatchObject([
      { line: 20, severity: 'error', found: expect.stringMatching(/^3 h 5/) },
    ]);
    // Of 60 mm: 2 h 48 min 40 s, and an hour of cooling.
    expect(ofHeight(60, ', cool-down: 1 min per mm')).toEqual([]);
    expect(ofHeight(61, ', cool-down: 1 min per mm')).toHaveLength(1);
  });
});

describe('equipment that is there only at times', () => {
  const shared = (print: string, keys = 'available: shared') =>
    problemsOf(
      edited(MACHINE, `${MACHINE}, ${keys}`)
        .replace('3 h per build', print)
        .replace('hours:\n', 'hours:\n  shared: { tue: 10:00-15:00 }\n'),
    );

  it('has to be there from the set-up to the end of unloading', () => {
    // 10 min set-up, 6 min warm-up, 6 min unloading.
    expect(shared('4 h 38 min per build')).toEqual([]);
    expect(shared('4 h 39 min per build')).toMatchObject([
      {
        line: 21,
        message:
          'The build of 8 "ring" never fits into the hours of "resin": it typically takes 5 h 1 min with its ' +
          'attended work, and there are at most 5 h for it.',
        write: 'available: always under machines / resin',
      },
    ]);
  });

  it('counts from the moment when somebody can start it', () => {
    const early = (hours: string) =>
      problemsOf(
        edited(MACHINE, `${MACHINE}, available: shared`).replace(
          'hours:\n',
          `hours:\n  shared: { tue: ${hours} }\n`,
        ),
      );
    expect(early('06:00-11:22')).toEqual([]);
    expect(early('06:00-11:21')).toHaveLength(1);
  });
});

describe('a station that may not run alone', () => {
  const washer = (keys: string, takes: string) =>
    problemsOf(edited('holds: 2 builds, takes: 12 min', `holds: 2 builds, ${keys}, takes: ${takes}`));

  it('has to fit into the attended hours, unless somebody stays', () => {
    // Loading takes 3 min.
    expect(washer('runs alone: never', '3 h 57 min')).toEqual([]);
    expect(washer('runs alone: never', '3 h 58 min')).toMatchObject([
      { line: 16, message: expect.stringContaining('The stage "wash" for "ring" may never run') },
    ]);
    expect(washer('runs alone: never, attended: yes, may pause: yes', '5 h')).toEqual([]);
  });
});
