import type { Fields } from '../fields.ts';
import type { ScenarioRoute, ScenarioStage } from '../scenario.ts';
import { anyText, choice, yesNo } from '../words/choice.ts';
import { plainDuration } from '../words/duration.ts';
import { FINISHES, type Finish, finishesOfStage } from '../words/finish.ts';
import { wholeNumber } from '../words/numbers.ts';
import { stageTime } from '../words/stage-time.ts';
import { byTheClock } from '../words/working-days.ts';
import { NO_TIME } from './attended-work.ts';
import { ASKS, readQuestion, readStageTroubles } from './read-stage-troubles.ts';
import { readStationTimes } from './read-stations.ts';

export function readRoutes(fields: Fields): ScenarioRoute[] {
  return fields.names('routes').map((name): ScenarioRoute => {
    const list = fields.group('routes').group(name);
    const count = fields.group('routes').length(name);
    const stages: ScenarioStage[] = [];
    const names = new Set<string>();
    for (let index = 0; index < count; index++) {
      const item = list.group(index);
      const stageName = item.node(stageNameOf(item))?.kind === 'map' ? stageNameOf(item) : null;
      if (stageName === null) continue;
      if (names.has(stageName)) {
        item.report(
          stageName,
          'key',
          `The route "${name}" has two stages called "${stageName}".`,
          'stages with different names',
          `${stageName} again`,
        );
      }
      names.add(stageName);
      stages.push(readStage(item.group(stageName), stageName));
    }
    if (count === 0 && fields.group('routes').node(name)?.kind === 'list') {
      fields
        .group('routes')
        .report(
          name,
          'value',
          `The route "${name}" has no stages.`,
          'at least one stage',
          '- sand: { by: hand work, takes: 20 min }',
        );
    }
    return { name, stages };
  });
}

/** The one key of an item; the structure of the file makes sure that there is one. */
function stageNameOf(item: Fields): string {
  return item.names()[0] ?? '';
}

const waitTime = byTheClock('A wait goes on day and night; it has no working days.', plainDuration);

function readStage(fields: Fields, name: string): ScenarioStage {
  const stated = fields.has('level') ? (fields.read('level', choice('job', 'build')) ?? null) : null;
  const common = {
    name,
    level: stated,
    move: fields.readOr('move', choice('per job', 'per build'), 'per job'),
    emptiesCarrier: fields.readOr('empties carrier', yesNo, 'no'),
    finishes: readFinishes(fields),
    ...readStageTroubles(fields),
  };
  if (fields.has(ASKS)) return readQuestion(fields, common);
  if (fields.has('wait')) {
    for (const key of ['on', 'by', 'takes', 'people', 'may pause', 'load', 'unload', 'attended']) {
      fields.refuse(
        key,
        'a wait needs nothing and nobody.',
        'the wait alone, and the rest as a stage of its own',
      );
    }
    return {
      kind: 'wait',
      ...common,
      duration: fields.read('wait', waitTime) ?? NO_TIME,
      requesterChance: null,
    };
  }
  if (fields.has('on')) {
    return {
      kind: 'placed',
      ...common,
      on: fields.read('on', anyText) ?? '',
      times: readStationTimes(fields),
    };
  }
  for (const key of ['load', 'unload', 'attended']) {
    fields.refuse(key, 'it belongs to a station, named by "on".', 'on: the station');
  }
  if (!fields.has('by')) {
    fields.missing(
      'by',
      'who does it (by), where it is done (on), how long it waits (wait), or whom it waits for (ask requester)',
      'by: hand work',
    );
  }
  const takes = fields.need(
    'takes',
    stageTime(['job', 'part', 'build']),
    { duration: NO_TIME, basis: null, bySize: [] },
    'how long it takes',
    'takes: 20 min per job',
  );
  const basis = takes.basis === null || takes.basis === 'batch' ? 'job' : takes.basis;
  if (takes.basis === null) fields.assume('takes counts', 'per job');
  return {
    kind: 'work',
    ...common,
    work: {
      skill: fields.read('by', anyText) ?? '',
      persons: fields.readOr('people', wholeNumber(1, '2'), '1'),
      duration: takes.duration,
      pausable: fields.readOr('may pause', yesNo, 'no'),
    },
    basis,
    bySize: takes.bySize,
  };
}

/** Finishes that a stage is done for; null: for all. */
function readFinishes(fields: Fields): readonly Finish[] | null {
  if (!fields.has('for finish')) return null;
  const asked = new Set(fields.readList('for finish', finishesOfStage).flat());
  // A list that names all of them, and one of which nothing is right, leave nothing out.
  return asked.size === 0 || asked.size === FINISHES.length
    ? null
    : FINISHES.filter((finish) => asked.has(finish));
}
