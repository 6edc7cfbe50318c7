import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { createSimulator } from '@buildweek/core';
import type { BuildTimeModel } from '@buildweek/model';
import { studentQuantile } from '@buildweek/numbers';
import { type CalibrationAnswer, calibrationAnswerSchema, MACHINE_STATES } from '@buildweek/results';
import { readScenario } from '@buildweek/scenario';
import { afterAll, describe, expect, it } from 'vitest';
import { buildweek, Folder } from './buildweek.ts';
import { LASER_NOW, laserTruth, MASK_NOW, type Made, maskTruth, measured, shop } from './measured-shop.ts';

const folder = new Folder();
afterAll(() => folder.remove());

interface Fitted {
  readonly answer: CalibrationAnswer;
  /** Lines to write in the scenario, as the terminal shows them. */
  readonly lines: readonly string[];
}

async function calibrated(scenario: string, list: string): Promise<Fitted> {
  const command = ['calibrate', scenario, list, '--machine', 'vat'];
  const json = await buildweek([...command, '--json', '-']);
  expect(json.stderr).toBe('');
  const text = await buildweek(command);
  expect(text.exitCode).toBe(0);
  const [, pasted = ''] = text.stdout.split(/^To write under machines .*\n/m);
  return {
    answer: calibrationAnswerSchema.parse(JSON.parse(json.stdout)),
    lines: (pasted.split('\n\n')[0] ?? '').trimEnd().split('\n'),
  };
}

function labOf(text: string) {
  const reading = readScenario(text, 'shop.yaml');
  if (reading.kind === 'scenario') return reading.lab;
  throw new Error(reading.problems.map(({ line, message }) => `${line}: ${message}`).join('\n'));
}

function machineIn(text: string) {
  const shaped = labOf(text).machines[0]?.shaped;
  if (shaped === null || shaped === undefined) throw new Error('The machine has no shaped builds.');
  return shaped;
}

function numberIn(model: BuildTimeModel, name: string): number {
  return (model as unknown as Readonly<Record<string, number>>)[name] ?? Number.NaN;
}

/** Hours that the machine prints when the simulator plays nothing but this build. */
function simulatedHours(machine: string, contents: readonly (readonly [Made, number])[]): number {
  const jobs = contents.map(
    ([part, pieces]) => `${part.name}: { dates: [2027-03-01 08:00], pieces: ${pieces} }`,
  );
  const history = createSimulator(labOf(shop(machine, jobs.join('\n  ')))).simulate({
    seed: 'one build',
    replication: 0,
    ignoredWeeks: 0,
    weeks: 1,
    capWeeks: 1,
    trace: false,
    queueWaits: false,
  });
  expect(history.machines[0]?.runs).toBe(1);
  const states: readonly string[] = MACHINE_STATES;
  return (history.machines[0]?.timeInState[states.indexOf('print')] ?? 0) / 3_600_000;
}

describe('buildweek calibrate', () => {
  const cases = [
    {
      now: LASER_NOW,
      truth: laserTruth,
      parameters: { secondsPerLayer: 31, scanRate: 500 } as Readonly<Record<string, number>>,
      seed: 17,
    },
    {
      now: MASK_NOW,
      truth: maskTruth,
      parameters: { secondsPerLayer: 11, secondsPerBottomLayer: 49 } as Readonly<Record<string, number>>,
      seed: 18,
    },
  ];

  it.each(cases)(
    'finds the parameters $parameters that builds were made with, and its lines give them to the simulator',
    async ({ now, truth, parameters, seed }) => {
      const spread = 0.06;
      const { csv, builds } = measured(truth, 24, spread, seed);
      const scenario = folder.write('shop.yaml', shop(now));
      const { answer, lines } = await calibrated(scenario, folder.write('builds.csv', csv));

      // Two intervals at 99.9 % each: on correct fits one seed in 500 would fail.
      const wide = studentQuantile(0.9995, answer.degreesOfFreedom);
      for (const { name, value, standardError, origin } of answer.parameters) {
        expect(origin).toBe('fitted');
        expect(Math.abs(value - (parameters[name] ?? Number.NaN))).toBeLessThan(wide * (standardError ?? 0));
      }
      expect(answer.spread.low).toBeLessThan(spread);
      expect(answer.spread.high).toBeGreaterThan(spread);
      expect(answer.explained).toBeGreaterThan(0.95);
      expect(answer.notToldApart).toEqual([]);
      expect(answer.errors.median).toBeLessThan(answer.errorsNow.median / 2);
      expect(answer.builds.every(({ fits }) => fits)).toBe(true);

      // What is pasted is what was fitted, to the digits that its standard error leaves a meaning.
      expect(lines.map((line) => line.trim())).toEqual(answer.lines);
      const pasted = lines.join('\n');
      const shaped = machineIn(shop(pasted));
      for (const { name, value, standardError } of answer.parameters) {
        const rounding = 0.05 * (standardError ?? 0) + 1e-9;
        expect(Math.abs(numberIn(shaped.time, name) - value)).toBeLessThan(rounding);
      }
      expect(shaped.timeFactor.kind).toBe('lognormal');
      if (shaped.timeFactor.kind !== 'lognormal') return;
      const logSpread = Math.sqrt(Math.log1p(answer.spread.value ** 2));
      expect(shaped.timeFactor.logStandardDeviation / logSpread).toBeCloseTo(1, 1);

      // With the spread left out, every build prints in the simulator as long as the answer estimates.
      const exact = lines.map((line) => line.replace(/(print time spread: ).*/, '$1none')).join('\n');
      builds.forEach(({ contents }, index) => {
        const estimate = answer.builds[index]?.estimatedHours ?? 0;
        expect(simulatedHours(exact, contents) / estimate).toBeCloseTo(1, 2);
      });
    },
  );

  it('says in plain words what builds of one height cannot tell apart, and keeps the ratio', async () => {
    const rows = [6.1, 6.3, 5.9, 6.2, 6.0].map((hours, index) => `${index + 1},cup,${index + 1},${hours}`);
    const list = folder.write('alike.csv', `build,part,pieces,hours\n${rows.join('\n')}\n`);
    const scenario = folder.write('mask.yaml', shop(MASK_NOW));
    const { answer } = await calibrated(scenario, list);
    const [perLayer, further] = answer.parameters;
    // 8 s for every layer, and 32 s more for each of the first six, as the scenario has it.
    expect((further?.value ?? 0) / (perLayer?.value ?? 1)).toBeCloseTo(4, 9);
    expect(answer.notToldApart).toEqual([
      {
        parameters: ['secondsPerLayer', 'secondsPerBottomLayer'],
        text: expect.stringMatching(
          /do not tell time per layer and further time of a bottom layer apart.*Measure/,
        ),
      },
    ]);
    const { stdout } = await buildweek(['calibrate', scenario, list, '--machine', 'vat']);
    expect(stdout).toContain('Not told apart');
  });

  it('tells of every mistake in the list at once, at its line and column, and writes nothing', async () => {
    const list = folder.write(
      'wrong.csv',
      'build,part,pieces,hours\n1,plaet,2,3\n2,lid,2,3:75\n3,cup,many,4,5\n3,cup,1,\n4,mast,1,\n',
    );
    const json = folder.file('wrong.json');
    const scenario = folder.write('shop.yaml', shop(LASER_NOW));
    const command = ['calibrate', scenario, list, '--machine', 'vat', '--json', json];
    const { exitCode, stdout, stderr } = await buildweek(command);
    expect({ exitCode, stdout }).toEqual({ exitCode: 2, stdout: '' });
    expect(existsSync(json)).toBe(false);
    const told = stderr.split('\n').filter((line) => line.startsWith(`${list}:`));
    expect(told.map((line) => line.slice(list.length + 1))).toEqual([
      '2:3: error: The scenario has no part "plaet".',
      '3:3: error: "lid" is built on "other".',
      '3:9: error: "3:75" is no time.',
      '4:7: error: "many" is no number of pieces.',
      '4:14: error: This row has 5 cells, and the header line 4.',
      '5:3: error: "cup" is in build 3 already, on line 4.',
      '6:10: error: Nothing says how long build 4 printed.',
    ]);
    expect(stderr).toContain('write:    plate or cup or mast or block');
    expect(stderr).toContain(`There are 7 mistakes in ${list}; nothing was done.`);
  });

  it('refuses a fit on two builds at the line of the last', async () => {
    const list = folder.write('two.csv', 'build,part,pieces,hours\n1,cup,2,3\n2,cup,4,5\n');
    const scenario = folder.write('shop.yaml', shop(LASER_NOW));
    const { exitCode, stderr } = await buildweek(['calibrate', scenario, list, '--machine', 'vat']);
    expect(exitCode).toBe(2);
    expect(stderr).toContain(`${list}:3:1: error: There are 2 builds in this list`);
  });

  it('says which machines there are when there is nothing to fit on the one that is named', async () => {
    const list = folder.write('builds.csv', measured(laserTruth, 5, 0.1, 7).csv);
    const scenario = folder.write('shop.yaml', shop(LASER_NOW));
    const on = async (machine: string) => buildweek(['calibrate', scenario, list, '--machine', machine]);
    expect(await on('vats')).toMatchObject({
      exitCode: 2,
      stderr: '"Measured shop" has no machines "vats". There are: "vat".\n',
    });
    expect((await on('other')).stderr).toMatch(/^Print times of "other" are typed at its parts/);
  });

  it('overwrites its own answer, but no file of somebody else', async () => {
    const list = folder.write('builds.csv', measured(laserTruth, 8, 0.1, 7).csv);
    const scenario = folder.write('shop.yaml', shop(LASER_NOW));
    const json = folder.file('answer.json');
    const command = ['calibrate', scenario, list, '--machine', 'vat', '--json', json];
    expect((await buildweek(command)).exitCode).toBe(0);
    expect((await buildweek(command)).exitCode).toBe(0);
    writeFileSync(json, 'notes');
    expect((await buildweek(command)).exitCode).toBe(2);
    expect(readFileSync(json, 'utf8')).toBe('notes');
    expect((await buildweek([...command, '--force'])).exitCode).toBe(0);
  });

  it('fits the example of the repository, and warns of what its builds tell badly', async () => {
    const { exitCode, stdout, stderr } = await buildweek([
      ...['calibrate', 'scenarios/demo.yaml', 'scenarios/measured-builds.csv', '--machine', 'powder'],
      ...['--json', '-'],
    ]);
    expect({ exitCode, stderr }).toEqual({ exitCode: 0, stderr: '' });
    const answer = calibrationAnswerSchema.parse(JSON.parse(stdout));
    expect(answer.builds.every(({ fits }) => fits)).toBe(true);
    expect(answer.errors.median).toBeLessThan(answer.errorsNow.median);
    expect(answer.warnings).toEqual([expect.stringMatching(/^The scan rate is badly known/)]);
  });

  it('has a help text with an example of a list', async () => {
    const { exitCode, stdout } = await buildweek(['calibrate', '--help']);
    expect(exitCode).toBe(0);
    expect(stdout).toContain('build;part;pieces;hours');
    expect(stdout).toMatch(/Example:\n {2}buildweek calibrate /);
  });
});
