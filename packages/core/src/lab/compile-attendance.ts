import type { AttendedWork, Lab } from '@buildweek/model';
import { toMilliseconds } from '../kernel/clock.ts';
import { createSampler } from '../kernel/sampler.ts';
import type { CompiledAttendedQueue, CompiledPerson, CompiledWork } from './compiled-lab.ts';

/** Collects the skills that work asks for and the labels that hours are booked on, while a lab is compiled. */
export class AttendanceCompiler {
  private readonly lab: Lab;
  private readonly queues: { skill: string; persons: number }[] = [];
  private readonly labels: string[] = [];

  constructor(lab: Lab) {
    this.lab = lab;
  }

  /**
   * @param work what needs hands
   * @param label name on which the hours of the people are booked
   */
  work(work: AttendedWork, label: string): CompiledWork {
    return {
      queue: this.queue(work.skill, work.persons),
      persons: work.persons,
      sampler: createSampler(work.duration.distribution),
      constant: work.duration.distribution.kind === 'constant',
      typical: toMilliseconds(work.duration.typicalHours),
      pausable: work.pausable,
      label: positionIn(this.labels, label),
    };
  }

  get workLabels(): readonly string[] {
    return this.labels;
  }

  get mostPersons(): number {
    return this.queues.reduce((most, queue) => Math.max(most, queue.persons), 1);
  }

  /** People, once all work is known. */
  persons(): CompiledPerson[] {
    const persons: CompiledPerson[] = [];
    this.lab.people.forEach((group, groupIndex) => {
      const queues = Int32Array.from(
        this.queues.flatMap((queue, index) => (group.skills.includes(queue.skill) ? [index] : [])),
      );
      for (let number = 1; number <= group.count; number++) {
        persons.push({
          index: persons.length,
          group: groupIndex,
          numberInGroup: number,
          name: `${group.name} ${number}`,
          queues,
        });
      }
    });
    return persons;
  }

  attendedQueues(persons: readonly CompiledPerson[]): CompiledAttendedQueue[] {
    const skillsOf = (person: CompiledPerson): number => this.lab.people[person.group].skills.length;
    return this.queues.map(({ skill, persons: needed }, index) => ({
      index,
      skill,
      persons: needed,
      // The sort is stable: among people with as many skills the lower number comes first.
      candidates: Int32Array.from(
        persons
          .filter((person) => person.queues.includes(index))
          .sort((a, b) => skillsOf(a) - skillsOf(b))
          .map((person) => person.index),
      ),
    }));
  }

  private queue(skill: string, persons: number): number {
    const found = this.queues.findIndex((queue) => queue.skill === skill && queue.persons === persons);
    return found >= 0 ? found : this.queues.push({ skill, persons }) - 1;
  }
}

/** @returns the position of `name` in `names`, where it is put when it is new */
function positionIn(names: string[], name: string): number {
  const found = names.indexOf(name);
  return found >= 0 ? found : names.push(name) - 1;
}
