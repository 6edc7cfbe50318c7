import { BuildPacker } from '@buildweek/timing';
import { describe, expect, it } from 'vitest';
import { edited } from './fixture/plain-lab.ts';
import { editedShapes, MESH_SHAPE, meshesOfLab, readShaped, SHAPED_LAB } from './fixture/shaped-lab.ts';
import { partShape, shapedBuilds } from './schema/shape-schema.ts';
import type { ShapeRequest } from './shape-reader.ts';

function read(text = SHAPED_LAB, shapes = meshesOfLab) {
  const reading = readShaped(text, shapes);
  if (reading.kind === 'problems') {
    throw new Error(reading.problems.map((problem) => `${problem.line}: ${problem.message}`).join('\n'));
  }
  return reading;
}

describe('a lab whose builds follow from the shapes of its parts', () => {
  const { lab, warnings, assumptions } = read();
  const machine = (name: string) => lab.machines.find((group) => group.name === name);
  const part = (name: string) => lab.parts.find((type) => type.name === name);

  it('uses every key for shapes', () => {
    for (const key of [...Object.keys(shapedBuilds), ...Object.keys(partShape), 'finish', 'for finish']) {
      expect(SHAPED_LAB).toMatch(new RegExp(`[ {]${key}: `));
    }
  });

  it('is read without a warning', () => {
    expect(warnings).toEqual([]);
  });

  it('gives an extruding machine its platform, and the rates of its print time in mm and seconds', () => {
    const shaped = machine('filament')?.shaped;
    expect(shaped?.space).toEqual({
      kind: 'platform',
      width: 250,
      depth: 210,
      height: 200,
      margin: 5,
      spacing: 4,
    });
    expect(shaped?.time).toMatchObject({
      kind: 'extrusion',
      layer: 0.2,
      wallThickness: 1.2,
      skinThickness: 0.8,
      infillShare: 0.2,
      supportShare: 0.15,
    });
    const time = shaped?.time;
    expect(time?.kind === 'extrusion' ? [time.rate, time.secondsPerLayer] : []).toEqual([
      expect.closeTo(30_000 / 3600, 12),
      expect.closeTo(3, 12),
    ]);
    expect(machine('filament')?.mostJobs).toBe(1);
    expect(machine('resin')?.mostJobs).toBeNull();
  });

  it('takes what a machine does not say from its class', () => {
    expect(machine('resin')?.shaped).toMatchObject({
      space: { width: 145, depth: 82, height: 170, margin: 3, spacing: 2 },
      time: { kind: 'mask', layer: 0.05, bottomLayers: 4 },
    });
    expect(assumptions).toContainEqual({
      what: 'machines / resin / layer',
      value: '0.05 mm',
      source: 'default of a machine class',
      line: null,
    });
    expect(assumptions).toContainEqual({
      what: 'machines / vat / spacing',
      value: '2 mm',
      source: 'default of the program',
      line: null,
    });
  });

  it('tells a laser from a mask by the keys that are there when no class does', () => {
    expect(machine('vat')?.shaped?.time.kind).toBe('laser vat');
    const mask = editedShapes(', scans: 800 mm2 per s', '');
    expect(read(mask).lab.machines[2]?.shaped?.time).toMatchObject({ kind: 'mask', bottomLayers: 0 });
  });

  it('adds to bottom layers what is more, or takes the time of any layer from what they take in all', () => {
    const secondsOf = (text: string) => {
      const time = read(text).lab.machines[1]?.shaped?.time;
      return time?.kind === 'mask' ? time.secondsPerBottomLayer : null;
    };
    expect(secondsOf(SHAPED_LAB)).toBeCloseTo(30, 12);
    expect(secondsOf(editedShapes('4 at 30 s more each', '4 at 30 s each'))).toBeCloseTo(22, 12);
  });

  it('gives a powder machine its bed, its powder, and a cool-down that grows with the build', () => {
    const shaped = machine('powder')?.shaped;
    expect(shaped).toMatchObject({
      space: {
        kind: 'powder bed',
        width: 170,
        depth: 170,
        height: 280,
        spacing: 2,
        packingDensity: 0.1,
        boxShare: 0.55,
      },
      time: { kind: 'powder bed', bedding: 12, scanRate: 250 },
      coolDownHoursPerMillimetre: 0.06,
      powder: { bedDensity: 0.45, partDensity: 1, virginShare: 0.4 },
      timeFactor: { kind: 'constant', value: 1 },
    });
    expect(machine('powder')?.coolDown).toEqual({
      where: 'outside',
      duration: { distribution: { kind: 'pert', low: 1, mode: 1.5, high: 2 }, typicalHours: 1.5 },
    });
  });

  it('takes a print time by volume and height in the place of layers', () => {
    expect(machine('paste')?.shaped?.time).toEqual({
      kind: 'volume and height',
      hoursPerBuild: 0.5,
      hoursPerCubicCentimetre: 0.05,
      hoursPerCentimetre: 0.4,
    });
  });

  it('gives parts their shape, and a space such that as many as fit fill a machine', () => {
    const ring = part('ring');
    expect(ring?.print).toMatchObject({
      kind: 'shape',
      shape: {
        width: 42,
        depth: 42,
        height: 11,
        volume: 5200,
        surface: 6000,
        supportedVolume: 800,
        supportContactArea: 120,
      },
    });
    const space = machine('resin')?.shaped?.space;
    if (space === undefined || ring?.print?.kind !== 'shape') throw new Error('nothing to pack');
    const most = new BuildPacker(space, [ring.print.shape]).most(0);
    expect(most).toBeGreaterThan(1);
    expect(ring.space).toBe(1 / most);
    expect(part('bracket')?.print).toEqual({ kind: 'shape', shape: MESH_SHAPE });
  });

  it('fills stations by the boxes of the parts', () => {
    expect(lab.stations.map(({ name, capacity, unit }) => [name, capacity, unit])).toEqual([
      ['basket', 4e6, 'box volume'],
      // The class counts parts where the size of one that comes is not known.
      ['cure', 12e6, 'box volume'],
    ]);
    const typed = edited('on: washer, empties carrier: yes', 'on: washer').replace(
      'washer: { holds: 2 builds, takes: 12 min per batch, load: 3 min, by: run machines }',
      'washer: { class: cure unit }',
    );
    expect(read(typed).lab.stations[0]).toMatchObject({ capacity: 20, unit: 'parts' });
  });

  it('says what was estimated of a part, and how a mesh stands and why', () => {
    expect(assumptions).toContainEqual({
      what: 'parts / housing / as it stands',
      value: '60 x 40 x 25 mm, volume 18 cm3, surface 90 cm2, support contact 3 cm2: flat on its back',
      source: 'measured from a mesh',
      line: null,
    });
    const estimated = assumptions.filter(({ value }) => value.includes('estimated'));
    expect(estimated.map(({ what }) => what)).toEqual(['parts / duct / supported volume']);
  });

  it('asks for meshes with the process, the unit, the orientation and the build space', () => {
    const requests: ShapeRequest[] = [];
    read(SHAPED_LAB, (request) => {
      requests.push(request);
      return meshesOfLab(request);
    });
    const space = machine('filament')?.shaped?.space;
    expect(requests).toEqual([
      { path: 'parts/bracket.stl', process: 'MEX', unit: 'cm', orientation: 'as given', space },
      { path: 'parts/housing.3mf', process: 'MEX', unit: null, orientation: 'best', space },
    ]);
  });

  it('takes millimetres for the unit of an STL file, and says so', () => {
    const { assumptions } = read(editedShapes(', unit: cm', ''));
    expect(assumptions).toContainEqual({
      what: 'parts / bracket / unit',
      value: 'mm',
      source: 'default of the program',
      line: null,
    });
  });

  it('tells defects of a mesh as warnings at its line', () => {
    const { warnings } = read(SHAPED_LAB, (request) => ({
      ...meshesOfLab(request),
      ...(request.path.endsWith('3mf') ? { notes: ['It has 3 open edges.'] } : {}),
    }));
    expect(warnings).toHaveLength(1);
    expect(warnings[0]).toMatchObject({
      severity: 'warning',
      message: 'It has 3 open edges.',
      found: 'parts/housing.3mf',
    });
    expect(warnings[0]?.sourceLine).toContain('mesh: parts/housing.3mf');
  });
});

describe('a stage for some finishes', () => {
  const stagesOf = (text: string, name: string) =>
    read(text)
      .lab.parts.find((part) => part.name === name)
      ?.stages.map((stage) => stage.name);

  it('is left out for parts that do not ask for it', () => {
    expect(stagesOf(SHAPED_LAB, 'housing')).toEqual(['build', 'remove supports']);
    expect(stagesOf(SHAPED_LAB, 'ring')).toEqual(['build', 'wash', 'cure', 'wipe']);
  });

  it('is for that finish and better, since a smooth part has been cleaned before', () => {
    expect(stagesOf(SHAPED_LAB, 'bracket')).toEqual(['build', 'remove supports', 'sand']);
    const only = editedShapes('for finish: cleaned }', 'for finish: only cleaned }');
    expect(stagesOf(only, 'bracket')).toEqual(['build', 'sand']);
    expect(stagesOf(only, 'housing')).toEqual(['build', 'remove supports']);
  });
});

describe('a time by the size of a part', () => {
  it('is that of its measures, all terms added up', () => {
    const stages = read().lab.parts[0]?.stages;
    const minutes = (value: number) => expect.closeTo(value / 60, 12);
    // One minute, and 0.2 to 0.8 min for each of the 3 cm2 on which supports touch the mesh.
    expect(stages?.[1]).toMatchObject({
      basis: 'part',
      work: {
        duration: {
          distribution: { kind: 'pert', low: minutes(1.6), mode: minutes(2.2), high: minutes(3.4) },
          typicalHours: minutes(2.2),
        },
      },
    });
    expect(stages?.[2]).toMatchObject({
      work: { duration: { distribution: { kind: 'constant', value: minutes(27) } } },
    });
  });

  it('may be that of one part alone', () => {
    const text = editedShapes(
      'mesh: parts/housing.3mf }',
      'mesh: parts/housing.3mf, times: { remove supports: 1 min per cm2 of surface } }',
    );
    expect(read(text).lab.parts[1]?.stages[1]).toMatchObject({
      basis: 'part',
      work: { duration: { typicalHours: expect.closeTo(1.5, 12) } },
    });
  });
});
