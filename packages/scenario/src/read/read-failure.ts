import type { BuildFailure } from '@buildweek/model';
import type { Fields } from '../fields.ts';
import { choice } from '../words/choice.ts';
import { failureChance } from '../words/failure-chance.ts';
import { readAttendedWork, withSkill } from './attended-work.ts';

const KEY = 'fails';

/**
 * Builds that do not come out: how often alone, or a group of keys.
 *
 * @param skill of those who clean when nothing else is said
 * @param usual what the class says; null: never
 */
export function readFailure(fields: Fields, skill: string, usual: string | null): BuildFailure | null {
  if (fields.node(KEY)?.kind !== 'map') {
    const texts = usual === null ? fields : fields.withClass({ [KEY]: usual });
    const chance = texts.readOr(KEY, failureChance, 'never');
    return failureOf({ ...chance, loses: 'the build', cleaning: null });
  }
  const group = fields.group(KEY).withClass(usual === null ? {} : { chance: usual });
  const chance = group.need(
    'chance',
    failureChance,
    { chancePerBuild: 0, perPrintHour: 0 },
    'how often builds fail',
    'chance: 5 % of builds',
  );
  const loses = group.readOr('loses', choice('the build', 'one job'), 'the build');
  if (loses === 'one job') {
    group.refuse('cleaning', 'the others are unloaded as usual.', 'loses: the build');
    return failureOf({ ...chance, loses, cleaning: null });
  }
  const cleaning = withSkill(readAttendedWork(group, 'cleaning') ?? null, skill);
  if (!group.has('cleaning')) group.assume('cleaning', 'none: it is unloaded as usual');
  return failureOf({ ...chance, loses, cleaning });
}

function failureOf(failure: BuildFailure): BuildFailure | null {
  return failure.chancePerBuild > 0 || failure.perPrintHour > 0 ? failure : null;
}
