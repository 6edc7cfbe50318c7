import type { Fields } from '../fields.ts';
import type { ScenarioInstant, ScenarioJobAtStart, ScenarioMachineAtStart } from '../scenario.ts';
import { anyText, yesNo } from '../words/choice.ts';
import { dateTime } from '../words/dates.ts';
import { plainDuration } from '../words/duration.ts';
import { wholeNumber } from '../words/numbers.ts';

/** When the state holds; null at the start of the plan. */
export function readNow(fields: Fields): ScenarioInstant | null {
  return fields.group('at the start').read('now', dateTime) ?? null;
}

export function readJobsAtStart(fields: Fields): ScenarioJobAtStart[] {
  const start = fields.group('at the start');
  return Array.from({ length: start.length('jobs') }, (_, index): ScenarioJobAtStart => {
    const job = start.group('jobs').group(index);
    const remaining = job.read('remaining', plainDuration);
    return {
      name: job.read('name', anyText) ?? null,
      demand: job.need('demand', anyText, '', 'the demand it belongs to', 'demand: …'),
      pieces: job.readOr('pieces', wholeNumber(1, '4'), '1'),
      rush: job.readOr('rush', yesNo, 'no'),
      arrived: job.read('arrived', dateTime) ?? null,
      due: job.read('due', dateTime) ?? null,
      stage: job.need('stage', anyText, '', 'the stage at which it is', 'stage: …'),
      remainingHours: remaining?.typicalHours ?? null,
      machine: job.read('in', anyText) ?? null,
    };
  });
}

export function readMachinesAtStart(fields: Fields): ScenarioMachineAtStart[] {
  const machines = fields.group('at the start').group('machines');
  return fields
    .group('at the start')
    .names('machines')
    .flatMap((machine): ScenarioMachineAtStart[] => {
      const group = machines.group(machine);
      const busyUntil = group.need(
        'busy until',
        dateTime,
        null,
        'when its build ends',
        'busy until: 2027-03-01 09:30',
      );
      const material = group.read('material', anyText) ?? null;
      return busyUntil === null ? [] : [{ machine, busyUntil, material }];
    });
}
