import type { Reading } from '../reading.ts';
import type { Scenario } from '../scenario.ts';
import type { SourcePath } from '../source/source-node.ts';
import { itemPath } from './item-path.ts';

/** Hours that machines and stations name: those in which they are there, and those of their service. */
export function equipmentHours(scenario: Scenario, reading: Reading): { path: SourcePath; name: string }[] {
  const sections = [
    { section: 'machines', groups: scenario.machines },
    { section: 'stations', groups: scenario.stations },
  ];
  return sections.flatMap(({ section, groups }) =>
    groups.flatMap((group) => {
      const path = [section, group.name];
      const own = group.calendar === null ? [] : [{ path: [...path, 'available'], name: group.calendar }];
      const service = group.breakdowns.flatMap(({ repair }, index) => {
        if (repair.kind !== 'service' || repair.calendar === null) return [];
        const item = itemPath(reading, [...path, 'breaks down'], index);
        return [{ path: [...item, 'service', 'hours'], name: repair.calendar }];
      });
      return [...own, ...service];
    }),
  );
}
