import { describe, expect, it } from 'vitest';
import { history, machineHistory } from '../fixture/history.ts';
import { lab, machine } from '../fixture/lab.ts';
import { GroupUseSums } from './group-use-sums.ts';

describe('The use of a group of machines', () => {
  it('counts a breakdown as time in which it is held, not as work, and waiting to fill as neither', () => {
    const sums = new GroupUseSums(lab({ machines: [machine('printers')] }));
    const week = { print: 84, 'waiting to be unloaded': 21, down: 42, 'waiting to fill': 10.5 };
    for (let replication = 0; replication < 20; replication++) {
      sums.add(history(replication, { machines: [machineHistory('printers', week)] }));
    }
    const use = sums.results(0.95).find(({ name }) => name === 'printers');
    expect(use?.atWork.value).toBeCloseTo(84 / 168, 12);
    expect(use?.waitingForPeople?.value).toBeCloseTo(21 / 168, 12);
    expect(use?.held.value).toBeCloseTo((84 + 21 + 42) / 168, 12);
  });
});
