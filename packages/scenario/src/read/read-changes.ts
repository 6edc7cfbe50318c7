import type { ChangeOfMind, RequesterChanges } from '@buildweek/model';
import type { Fields } from '../fields.ts';
import { changeOfMind, shareOfJobs } from '../words/change-of-mind.ts';
import { yesNo } from '../words/choice.ts';
import { plainDuration } from '../words/duration.ts';
import { NO_TIME } from './attended-work.ts';

/** What requesters do to jobs that they have asked for. */
export function readChanges(demand: Fields): RequesterChanges {
  return { cancels: readChange(demand, 'cancels'), revises: readChange(demand, 'revises') };
}

function readChange(demand: Fields, key: 'cancels' | 'revises'): ChangeOfMind | null {
  if (demand.node(key)?.kind !== 'map') return demand.readOr(key, changeOfMind, 'never');
  const group = demand.group(key);
  const chance = group.need('chance', shareOfJobs, 0, 'for which share of jobs', 'chance: 3 %');
  const after = group.need(
    'after',
    plainDuration,
    NO_TIME,
    'how long after the arrival',
    'after: 2 to 72 h, usually 24',
  );
  const onlyBeforeStart = group.readOr('only before start', yesNo, 'no');
  return chance === 0 ? null : { chance, after: after.distribution, onlyBeforeStart };
}
