import { WAIT_CAUSES } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import {
  attended,
  buildStage,
  constant,
  dated,
  HOUR,
  lab,
  machine,
  part,
  people,
  play,
  printed,
  station,
  stationStage,
  workStage,
} from '../fixture/lab.ts';
import { begun, finished } from '../fixture/timeline.ts';
import type { History } from '../observe/history.ts';

/** A lever is built, washed and sanded; a ring is only sanded. */
function shop(machines: number, stations: number, technicians: number) {
  return play(
    lab({
      people: [
        people('technicians', technicians, ['hands'], { calendar: 'always' }),
        people('helpers', 1, ['help'], { calendar: 'always' }),
      ],
      machines: [machine('printers', { count: machines })],
      stations: [station('washers', { count: stations })],
      parts: [
        part(
          'lever',
          [
            buildStage('build', 'printers'),
            stationStage('wash', 'washers', constant(1)),
            workStage('sand', attended('hands', 1)),
          ],
          { print: printed(5) },
        ),
        part('ring', [workStage('polish', attended('help', 1))]),
      ],
      demand: [dated('lever', [0]), dated('ring', [1])],
    }),
  );
}

/** Hours for which the job that is never finished stands in a queue, by the kind of the queue. */
function standing(history: History, kind: 'machine' | 'station' | 'people'): number {
  const areas = history.queues.filter((queue) => queue.kind === kind).map(({ area }) => area);
  return areas.reduce((sum, area) => sum + area, 0) / HOUR;
}

describe('A kind of which the lab has none', () => {
  it('lets what comes to its machines wait, and all else go on', () => {
    const history = shop(0, 1, 1);
    expect(begun(history, 'build')).toEqual([]);
    expect(finished(history)).toEqual(['mon 02:00 job 1']);
    expect(history.machines).toEqual([]);
    expect(standing(history, 'machine')).toBe(336);
    expect(history.jobClasses[0]).toMatchObject({ part: 'lever', unfinished: 1 });
  });

  it('lets what comes to its stations wait', () => {
    const history = shop(1, 0, 1);
    expect(finished(history)).toEqual(['mon 02:00 job 1']);
    expect(history.stations).toEqual([]);
    expect(standing(history, 'station')).toBe(336 - 5);
  });

  it('lets what comes to its people wait', () => {
    const history = shop(1, 1, 0);
    expect(finished(history)).toEqual(['mon 02:00 job 1']);
    expect(history.people[0]).toMatchObject({ group: 'technicians', count: 0 });
    expect(history.people[0]?.timeInState.length).toBe(0);
    expect(standing(history, 'people')).toBe(336 - 6);
    expect(history.laws.leadTimeImbalance).toBe(0);
  });

  it('is waited for as machines and as people, not as a shift that would come', () => {
    const causes = (machines: number, technicians: number): string[] => {
      // The requester cancels, so that what was waited for is written into the trace.
      const history = play(
        lab({
          people: [people('technicians', technicians, ['hands'])],
          machines: [machine('printers', { count: machines })],
          parts: [
            part('lever', [buildStage('build', 'printers'), workStage('sand', attended('hands', 1))], {
              print: printed(5),
            }),
          ],
          demand: [
            {
              ...dated('lever', [0]),
              changes: {
                cancels: {
                  chance: 1,
                  after: { kind: 'constant', value: 100 },
                  onlyBeforeStart: false,
                },
                revises: null,
              },
            },
          ],
        }),
      );
      const waits = (history.trace ?? []).filter(({ what }) => what === 'has waited');
      return WAIT_CAUSES.filter((cause) => waits.some((wait) => wait.cause === cause));
    };
    expect(causes(0, 1)).toEqual(['machine']);
    expect(causes(1, 0)).toEqual(['person']);
  });
});
