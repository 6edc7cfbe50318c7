import type { LoggedJob, MachineRun } from '../logged-jobs.ts';
import { mostOf } from './counted-words.ts';

/** Machines whose names differ in a number only. */
export interface MachineFacts {
  /** Without the number: `resin` of `resin 1`. */
  readonly name: string;
  readonly machines: readonly string[];
  /** What the jobs on them say of their process, most often; null where none does. */
  readonly process: string | null;
  readonly material: string | null;
  /** Parts that were made on them, and jobs of each. */
  readonly parts: ReadonlyMap<string, number>;
}

/**
 * The machines that a log names, in groups by their names.
 * @returns in the order of the names; empty where neither jobs nor runs name any
 */
export function machineFacts(jobs: readonly LoggedJob[], runs: readonly MachineRun[]): MachineFacts[] {
  const groups = new Map<string, Group>();
  const groupOf = (machine: string): Group => {
    const name = groupName(machine);
    const group = groups.get(name) ?? new Group();
    groups.set(name, group);
    group.machines.add(machine);
    return group;
  };
  for (const { machine, process, material, part } of jobs) {
    if (machine !== null) groupOf(machine).take(process, material, part);
  }
  const byName = jobsByName(jobs);
  for (const { machine, material, job } of runs) {
    const group = groupOf(machine);
    if (material !== null) group.take(null, material, null);
    for (const own of jobsOfRun(job, byName)) group.take(own.process, own.material, own.part);
  }
  return [...groups]
    .map(([name, group]) => ({
      name,
      machines: [...group.machines].sort(inNaturalOrder),
      process: mostOf(group.processes),
      material: mostOf(group.materials),
      parts: group.parts,
    }))
    .sort((a, b) => inNaturalOrder(a.name, b.name));
}

/** The jobs that a run names: a list of numbers with anything between them. */
export function jobsOfRun(written: string | null, byName: ReadonlyMap<string, LoggedJob>): LoggedJob[] {
  if (written === null) return [];
  const whole = byName.get(written);
  if (whole !== undefined) return [whole];
  return written
    .split(/[\s,;|+&/]+/)
    .map((name) => byName.get(name))
    .filter((job) => job !== undefined);
}

export function jobsByName(jobs: readonly LoggedJob[]): Map<string, LoggedJob> {
  return new Map(jobs.flatMap((job) => (job.name === null ? [] : [[job.name, job] as const])));
}

class Group {
  readonly machines = new Set<string>();
  readonly processes = new Map<string, number>();
  readonly materials = new Map<string, number>();
  readonly parts = new Map<string, number>();

  take(process: string | null, material: string | null, part: string | null): void {
    if (process !== null) this.processes.set(process, (this.processes.get(process) ?? 0) + 1);
    if (material !== null) this.materials.set(material, (this.materials.get(material) ?? 0) + 1);
    if (part !== null) this.parts.set(part, (this.parts.get(part) ?? 0) + 1);
  }
}

/** Without a number at the end, or a letter that stands alone. */
function groupName(machine: string): string {
  return machine.replace(/[\s_#.-]*(?:nr|no|n°)?[\s_#.-]*\d+$/i, '').replace(/[\s_-]+[A-Z]$/, '') || machine;
}

function inNaturalOrder(a: string, b: string): number {
  return a.localeCompare(b, 'en', { numeric: true });
}
