import type { DoubtSubject, Lab, Stage } from '@buildweek/model';

/** What may be in doubt, with the names that it can be said of. */
export interface SubjectKind {
  /** What it is called, before `of`. */
  readonly words: string;
  /** Names behind `of`. */
  names(lab: Lab): readonly string[];
  /** Null: it cannot be said of everything. */
  subject(name: string | null): DoubtSubject | null;
}

const named =
  (kind: Exclude<DoubtSubject['kind'], 'work times'>) =>
  (of: string | null): DoubtSubject => ({ kind, of });

/** Everything that may be in doubt, apart from the times of work, which are said of skills and stages. */
export const SUBJECTS: readonly SubjectKind[] = [
  { words: 'demand', names: (lab) => namesOf(lab.demand), subject: named('demand') },
  { words: 'print times', names: (lab) => namesOf(lab.machines), subject: named('print times') },
  {
    words: 'breakdowns',
    names: (lab) => [...namesOf(lab.machines), ...namesOf(lab.stations)],
    subject: named('breakdowns'),
  },
  { words: 'failed builds', names: (lab) => namesOf(lab.machines), subject: named('failed builds') },
  { words: 'rejects', names: (lab) => namesOf(lab.parts), subject: named('rejects') },
  { words: 'absence', names: (lab) => namesOf(lab.people), subject: named('absence') },
  { words: 'share of rush', names: (lab) => namesOf(lab.demand), subject: named('share of rush') },
];

/** How the times of all attended work are called. */
export const ALL_WORK = 'attended work';
export const WORK_TIMES = 'times';

export function skillsOf(lab: Lab): string[] {
  return [...new Set(lab.people.flatMap((group) => group.skills))];
}

/** Stages that take a time of their own; how long builds take follows from machines and parts. */
export function stagesOf(lab: Lab): string[] {
  const stages = lab.parts.flatMap((part) => part.stages).filter((stage) => stage.kind !== 'build');
  return [...new Set(stages.map((stage: Stage) => stage.name))];
}

function namesOf(list: readonly { readonly name: string }[]): string[] {
  return list.map(({ name }) => name);
}
