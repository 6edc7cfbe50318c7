import type { Lab, MachineGroup } from '@buildweek/model';
import type { Reading } from '../reading.ts';
import { Attendance } from './attendance.ts';

/** Finds launch rules that wait for a closing time which never comes. */
export function checkLaunch(lab: Lab, reading: Reading): void {
  for (const machine of lab.machines) {
    if (!machine.launch.beforeClosing || closes(machine, lab)) continue;
    reading.report(['machines', machine.name, 'start'], 'value', {
      message: `"${machine.name}" waits for closing time, and somebody is there day and night.`,
      found: 'before closing',
      expected: 'people who go home, or another condition',
      write: 'when full or after 4 h',
    });
  }
}

/** Whether those who start a machine are ever gone; without them the lab's own hours count. */
function closes(machine: MachineGroup, lab: Lab): boolean {
  const first = machine.prepare ?? machine.setUp;
  const people =
    first === null
      ? [{ name: '', count: 1, calendar: lab.labCalendar, skills: [''], otherDutiesShare: 0, graceHours: 0 }]
      : lab.people;
  return Number.isFinite(new Attendance(people, lab.calendars, first?.skill ?? '').longestHours(1));
}
