import { createSimulator, type History } from '@buildweek/core';
import type { StudySettings } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import type { ReplicationExecutor, StopSignal } from './executor.ts';
import { queueLab } from './fixture/lab.ts';
import { createInProcessExecutor } from './in-process-executor.ts';
import type { StudyProgress } from './progress.ts';
import { runStudy, type StudyResults } from './run-study.ts';

const settings: StudySettings = {
  seed: 'study',
  weeks: 4,
  ignoredWeeks: 0,
  capWeeks: 8,
  replications: 24,
  precision: null,
  replicationLimit: 200,
  level: 0.95,
};

/** Plays a few at a time and gives them back last first, as slow workers might. */
function backwardsExecutor(together: number): ReplicationExecutor {
  return {
    async *run(lab, wanted, stop) {
      const simulator = createSimulator(lab);
      for (let start = 0; start < wanted.length; start += together) {
        const batch = wanted.slice(start, start + together).map((one) => simulator.simulate(one));
        for (const history of batch.reverse()) {
          if (stop?.aborted) return;
          yield history;
        }
      }
    },
  };
}

/** A signal that stops after so many questions. */
function stopAfter(questions: number): StopSignal {
  let asked = 0;
  return {
    get aborted() {
      asked++;
      return asked > questions;
    },
    addEventListener() {},
    removeEventListener() {},
  };
}

async function play(
  more: Partial<StudySettings>,
  executor = createInProcessExecutor(),
  options: Parameters<typeof runStudy>[3] = {},
): Promise<StudyResults> {
  const outcome = await runStudy(queueLab(), { ...settings, ...more }, executor, options);
  if (outcome.kind === 'too few') throw new Error(outcome.reason);
  return outcome.results;
}

describe('runStudy', () => {
  it('gives the same results in whatever order the replications come back', async () => {
    const inOrder = await play({});
    for (const together of [2, 5, 24]) expect(await play({}, backwardsExecutor(together))).toEqual(inOrder);
  });

  it('says how many replications were played, and that this was what was asked for', async () => {
    const { run } = await play({});
    expect(run).toEqual({
      seed: 'study',
      replications: 24,
      replicationLimit: 24,
      weeks: 4,
      ignoredWeeks: { weeks: 0, method: 'given', note: 'The scenario or the command says 0 weeks.' },
      capWeeks: 8,
      level: 0.95,
      stopped: 'number of replications reached',
      precision: null,
    });
  });

  it('looks at the precision after 20, 40, 80 … replications only, whoever plays them', async () => {
    const precision = { measure: 'mean lead time', relativeHalfWidth: 0.12 } as const;
    const found = await play({ replications: null, precision });
    expect(found.run.stopped).toBe('precision reached');
    expect([20, 40, 80, 160]).toContain(found.run.replications);
    const { meanLeadTime } = found.jobs[0] ?? {};
    if (meanLeadTime?.kind !== 'estimate') throw new Error('no estimate');
    const reached = (meanLeadTime.high - meanLeadTime.low) / 2 / meanLeadTime.value;
    expect(found.run.precision).toEqual({
      measure: 'mean lead time of all jobs',
      asked: 0.12,
      reached: expect.closeTo(reached, 12),
    });
    expect(reached).toBeLessThanOrEqual(0.12);
    expect(await play({ replications: null, precision }, backwardsExecutor(7))).toEqual(found);
  });

  it('stops at the limit when the precision is not reached, and says so', async () => {
    const precision = { measure: 'p90 lead time', relativeHalfWidth: 0.001 } as const;
    const { run } = await play({ replications: null, precision, replicationLimit: 50 });
    expect(run).toMatchObject({ replications: 50, stopped: 'limit reached' });
    expect(run.precision?.reached).toBeGreaterThan(0.001);
  });

  it('keeps the replications that were finished before somebody stopped', async () => {
    const stopped = await play({}, createInProcessExecutor(), { stop: stopAfter(21) });
    expect(stopped.run).toMatchObject({ replications: 21, stopped: 'stopped by the user' });
    const whole = await play({ replications: 21 });
    expect({ ...stopped, run: null }).toEqual({ ...whole, run: null });
  });

  it('drops replications behind a gap, since which of them were ready depended on the workers', async () => {
    // Batches of 10, last first; the third batch is cut short after 5, so replications 20 to 24 are missing.
    const outcome = await runStudy(queueLab(), { ...settings, replications: 40 }, backwardsExecutor(10), {
      stop: stopAfter(25),
    });
    expect(outcome).toMatchObject({ kind: 'results', results: { run: { replications: 20 } } });
  });

  it('has nothing to report with fewer than 20 replications', async () => {
    const outcome = await runStudy(queueLab(), settings, createInProcessExecutor(), { stop: stopAfter(7) });
    expect(outcome).toEqual({
      kind: 'too few',
      replications: 7,
      reason: 'An interval needs at least 20 replications; 7 were finished.',
    });
  });

  it('refuses settings that cannot be played, in a sentence', async () => {
    await expect(play({ replications: 19 })).rejects.toThrow(
      'The number of replications must be a whole number of at least 20, not 19.',
    );
    await expect(play({ weeks: 0 })).rejects.toThrow('The number of measured weeks must be');
    await expect(play({ level: 1 })).rejects.toThrow('The confidence level must lie between 0 and 1, not 1.');
  });

  it('tells how far it is, replication by replication', async () => {
    const seen: StudyProgress[] = [];
    await play({ replications: 20 }, createInProcessExecutor(), {
      onProgress: (progress) => seen.push(progress),
    });
    expect(seen.map(({ done }) => done)).toEqual(Array.from({ length: 20 }, (_, index) => index + 1));
    expect(seen[0]).toEqual({ stage: 'replications', done: 1, total: 20, mayEndSooner: false });
  });

  it('keeps every wait for percentiles only when it is asked to', async () => {
    expect((await play({})).queues[0]?.waitPercentiles).toEqual([]);
    const asked = await play({}, createInProcessExecutor(), { queueWaits: true });
    expect(asked.queues[0]?.waitPercentiles.map(({ share }) => share)).toEqual([0.5, 0.8, 0.9, 0.95]);
  });

  it('warns of a load of 100 % and more, with the number, and begins its headline with it', async () => {
    const outcome = await runStudy(queueLab(30, 8), { ...settings, capWeeks: 1 }, createInProcessExecutor());
    if (outcome.kind === 'too few') throw new Error(outcome.reason);
    // 30 customers a week of 8 h each on one server of 168 h: 240 / 168 = 143 %.
    expect(outcome.results.warnings[0]).toBe(
      'The load of server is 143 %: 240 h a week are asked for, 168 h are there. Its queue grows without end.',
    );
    expect(outcome.results.headline[0]).toContain('The lab cannot keep up');
    expect(outcome.results.warnings.at(-1)).toMatch(/jobs were not finished 1 week after the measured ones/);
  });

  it('reports a law that fails as an error of the program', async () => {
    const honest = createInProcessExecutor();
    const planted: ReplicationExecutor = {
      async *run(lab, wanted, stop) {
        for await (const found of honest.run(lab, wanted, stop)) {
          const laws = { ...found.laws, jobStays: found.laws.jobStays + (found.replication === 3 ? 1 : 0) };
          yield { ...found, laws } satisfies History;
        }
      },
    };
    const results = await play({}, planted);
    expect(results.checks[0]).toMatchObject({ law: "Little's law", holds: false });
    expect(results.warnings[0]).toContain('Do not rely on these results.');
    expect((await play({})).checks.every((check) => check.holds)).toBe(true);
  });
});
