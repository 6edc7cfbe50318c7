import type { DoubtSubject, Lab } from '@buildweek/model';
import { listed, nearest } from '../nearest.ts';
import { WordingError } from '../words/wording-error.ts';
import { ALL_WORK, SUBJECTS, skillsOf, stagesOf, WORK_TIMES } from './doubt-subjects.ts';

const EXPECTED = `what is in doubt: ${listed([...SUBJECTS.map(({ words }) => words), `${WORK_TIMES} of ${ALL_WORK}`], 12)}, perhaps with "of" and a name`;

/**
 * What a doubt is about: `demand`, `demand of housing`, `times of hand work`.
 *
 * @throws WordingError for what there is not
 */
export function doubtSubject(text: string, lab: Lab): DoubtSubject {
  const words = text.trim().replace(/\s+/g, ' ');
  const kind = SUBJECTS.find((candidate) => startsWith(words, candidate.words));
  if (kind !== undefined) {
    if (words.length === kind.words.length) return kind.subject(null) as DoubtSubject;
    const name = nameBehind(words, kind.words, kind.names(lab));
    return kind.subject(name) as DoubtSubject;
  }
  if (startsWith(words, WORK_TIMES)) return workTimes(words, lab);
  const candidates = [...SUBJECTS.map((one) => one.words), `${WORK_TIMES} of ${ALL_WORK}`];
  const [head = '', ...rest] = words.split(' of ');
  const meant = nearest(words, candidates) ?? nearest(head, candidates);
  const tail = meant !== null && nearest(words, candidates) === null ? rest : [];
  throw new WordingError(
    `"${text}" is nothing that can be in doubt.`,
    EXPECTED,
    [meant ?? 'demand', ...tail].join(' of '),
  );
}

function startsWith(text: string, words: string): boolean {
  return text === words || text.startsWith(`${words} of `);
}

function nameBehind(text: string, words: string, names: readonly string[]): string {
  const name = text.slice(`${words} of `.length);
  if (names.includes(name)) return name;
  const meant = nearest(name, names);
  throw new WordingError(
    `There is nothing called "${name}" that has ${words}.`,
    names.length === 0 ? `${words} of something that is there` : `${words} of ${listed(names, 12)}`,
    meant === null ? words : `${words} of ${meant}`,
  );
}

/** Times are said of a skill or a stage; where both have the name, the word is put before it. */
function workTimes(text: string, lab: Lab): DoubtSubject {
  const [skills, stages] = [skillsOf(lab), stagesOf(lab)];
  const all = [ALL_WORK, ...skills, ...stages.filter((stage) => !skills.includes(stage))];
  const name = text.slice(`${WORK_TIMES} of `.length);
  if (name === ALL_WORK) return { kind: 'work times', by: 'everything' };
  const stated = /^(skill|stage) (.+)$/.exec(name);
  const statedName = stated?.[2] ?? '';
  const by = stated?.[1];
  if (by === 'skill' && skills.includes(statedName)) return { kind: 'work times', by, of: statedName };
  if (by === 'stage' && stages.includes(statedName)) return { kind: 'work times', by, of: statedName };
  const isSkill = skills.includes(name);
  const isStage = stages.includes(name);
  if (isSkill && isStage) {
    throw new WordingError(
      `"${name}" is a skill and a stage.`,
      `"skill ${name}" or "stage ${name}"`,
      `${WORK_TIMES} of stage ${name}`,
    );
  }
  if (isSkill) return { kind: 'work times', by: 'skill', of: name };
  if (isStage) return { kind: 'work times', by: 'stage', of: name };
  const meant = nearest(name, all) ?? ALL_WORK;
  throw new WordingError(
    text === WORK_TIMES
      ? 'It does not say the times of what.'
      : `No skill and no stage with a time of its own is called "${name}".`,
    `${WORK_TIMES} of ${listed(all, 14)}; how long builds take is "print times"`,
    `${WORK_TIMES} of ${meant}`,
  );
}
