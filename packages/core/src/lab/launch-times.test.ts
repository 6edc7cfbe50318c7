import type { HourSpan, Lab } from '@buildweek/model';
import { WAIT_CAUSES } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import {
  at,
  attended,
  buildStage,
  constant,
  dated,
  HOUR,
  machine,
  part,
  play,
  printed,
  weekdays,
  workStage,
} from '../fixture/lab.ts';
import { NEVER, printing, setUpAndWarmUp } from '../fixture/printing-lab.ts';
import { begun, contents, ended, finished } from '../fixture/timeline.ts';

function calendars(...windows: readonly (readonly [number, number])[]): Pick<Lab, 'calendars'> {
  const weekly: HourSpan[] = weekdays(...windows);
  return { calendars: [{ name: 'day', weekly, closedDays: [], extra: [] }] };
}

describe('Closing time', () => {
  const lastCall = { beforeClosing: true };

  it('does not take a lunch break for closing, and takes a longer gap for it', () => {
    const launched = (...windows: (readonly [number, number])[]): string | undefined =>
      begun(play(printing(lastCall, [[9, 1]], setUpAndWarmUp, calendars(...windows))), 'build', 'set-up')[0];
    expect(launched([8, 12], [12.5, 16.5])).toBe('mon 15:45 job 0 on printers 1 by technicians 1');
    expect(launched([8, 12], [14, 18])).toBe('mon 17:15 job 0 on printers 1 by technicians 1');
    expect(launched([8, 12], [14.5, 18])).toBe('mon 11:15 job 0 on printers 1 by technicians 1');
  });

  it('follows the lab calendar where nobody is needed to start', () => {
    expect(begun(play(printing(lastCall, [[9, 1]], { warmUp: constant(0.25) })), 'build', 'warm-up')).toEqual(
      ['mon 15:45 job 0 on printers 1'],
    );
  });
});

describe('Fixed launch times', () => {
  const AT_THREE = { fixedHours: [15, 39, 63, 87, 111] };

  it('take parts ready strictly before them, to the minute (case C10, hand computed)', () => {
    const history = play(
      printing(
        AT_THREE,
        [],
        {},
        {
          machines: [
            machine('sinter', {
              capacity: 20,
              warmUp: constant(2),
              coolDown: { duration: constant(16), where: 'machine' },
              unload: attended('all', 1),
              launch: { ...NEVER, ...AT_THREE },
            }),
          ],
          parts: [
            part('lever', [buildStage('build', 'sinter'), workStage('blast', attended('all', 0.5))], {
              print: printed(14),
              stages: [
                buildStage('build', 'sinter', { move: 'per build' }),
                workStage('blast', attended('all', 0.5), { level: 'build', basis: 'build' }),
              ],
            }),
          ],
          demand: [dated('lever', [at('wed', '15:00'), at('thu', '14:59')])],
        },
      ),
    );
    expect(begun(history, 'build', 'warm-up').sort()).toEqual([
      'thu 15:00 job 0 on sinter 1',
      'thu 15:00 job 1 on sinter 1',
    ]);
    expect(ended(history, 'build', 'cool-down')[0]).toMatch(/^fri 23:00/);
    expect(begun(history, 'build', 'unload')[0]).toMatch(/^week 2 mon 08:00/);
    expect(finished(history).sort()).toEqual(['week 2 mon 09:30 job 0', 'week 2 mon 09:30 job 1']);
    const leadHours = [...(history.jobClasses[0]?.leadTimes ?? [])].map((time) => time / HOUR);
    expect(leadHours).toEqual([90 + 31 / 60, 114.5]);
  });

  it('let nothing that came after join a build that starts later', () => {
    const testLab = printing(AT_THREE, [
      [14, 10],
      [14.5, 5],
      [15.5, 5],
    ]);
    expect(contents(play(testLab), 'build', 'print')).toEqual([
      'mon 15:00 on printers 1: 10 of job 0',
      'mon 16:00 on printers 1: 5 of job 1',
      'tue 15:00 on printers 1: 5 of job 2',
    ]);
  });

  it('let a part that comes at the very moment wait for the batch of the next time', () => {
    const [hours] = play(printing(AT_THREE, [[15, 1]])).partHours;
    const batch = WAIT_CAUSES.indexOf('batch');
    expect([...(hours?.waits.slice(0, WAIT_CAUSES.length) ?? [])]).toEqual(
      WAIT_CAUSES.map((_, cause) => (cause === batch ? 24 * HOUR : 0)),
    );
  });

  it('let machines that become idle later take what was ready, and nothing that came after', () => {
    const testLab = printing(AT_THREE, [
      [14, 10],
      [14.5, 10],
      [15.5, 10],
    ]);
    expect(begun(play(testLab), 'build')).toEqual([
      'mon 15:00 job 0 on printers 1',
      'mon 16:00 job 1 on printers 1',
      'tue 15:00 job 2 on printers 1',
    ]);
  });
});
