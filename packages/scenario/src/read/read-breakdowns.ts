import type { AttendedWork, Breakdown, Repair } from '@buildweek/model';
import type { ClassBreakdown } from '../classes/machine-troubles.ts';
import type { Fields } from '../fields.ts';
import { anyText, choice } from '../words/choice.ts';
import { plainDuration } from '../words/duration.ts';
import { wholeNumber } from '../words/numbers.ts';
import { recurrence } from '../words/recurrence.ts';
import { NO_TIME } from './attended-work.ts';
import { ALWAYS } from './read-hours.ts';

export const BREAKDOWNS = 'breaks down';

/** What a build, or a batch, comes to when its machine breaks down. */
const EFFECTS = {
  machine: { key: 'build', lost: 'is lost', spared: 'goes on', usual: 'is lost' },
  station: { key: 'batch', lost: 'starts again', spared: 'goes on', usual: 'starts again' },
} as const;

export type EquipmentKind = keyof typeof EFFECTS;

/**
 * The breakdowns of a machine or station: a list, one group of keys, how often alone, or `never`. When nothing
 * is written they are those of the class; one group, or how often alone, stands in place of all of them and takes
 * what it leaves open from the first. A list stands for itself.
 *
 * @param skill of those who repair when nothing else is said
 */
export function readBreakdowns(
  fields: Fields,
  kind: EquipmentKind,
  skill: string,
  usual: readonly ClassBreakdown[],
): Breakdown[] {
  const node = fields.node(BREAKDOWNS);
  const group = fields.group(BREAKDOWNS);
  const [first = null] = usual;
  if (node?.kind === 'list') {
    return node.items.flatMap((_, index) =>
      readBreakdown(group.group(index), kind, skill, null, `breakdown ${index + 1}`),
    );
  }
  if (node?.kind === 'map') return readBreakdown(group, kind, skill, first, 'breakdown');
  if (node?.kind === 'scalar') {
    if (/^never$/i.test(node.text)) {
      fields.assume(BREAKDOWNS, 'never', 'stated in the scenario');
      return [];
    }
    const between = fields.read(BREAKDOWNS, recurrence);
    if (first === null && between !== undefined) missingRepair(group);
    // The class says what is not written.
    return readBreakdown(group, kind, skill, first, 'breakdown').map((breakdown) =>
      between === undefined ? breakdown : { ...breakdown, by: between.by, between: between.distribution },
    );
  }
  if (fields.has(BREAKDOWNS)) return [];
  if (usual.length === 0) fields.assume(BREAKDOWNS, 'never');
  return usual.flatMap((breakdown, index) =>
    readBreakdown(usual.length === 1 ? group : group.group(index), kind, skill, breakdown, breakdown.called),
  );
}

function readBreakdown(
  fields: Fields,
  kind: EquipmentKind,
  skill: string,
  usual: ClassBreakdown | null,
  name: string,
): Breakdown[] {
  const { key, lost, spared, usual: usualEffect } = EFFECTS[kind];
  const texts = fields.withClass(usual?.texts ?? {});
  const isScalar = fields.reading.nodeAt(fields.path)?.kind === 'scalar';
  const between = isScalar
    ? undefined
    : texts.need('every', recurrence, undefined, 'how often it breaks down', 'every: about 250 h of running');
  const called = fields.read('called', anyText) ?? name;
  const effect = texts.readOr(key, choice(lost, spared), usualEffect);
  const repair = readRepair(fields, skill, usual);
  if (repair === null || (between === undefined && !isScalar)) return [];
  return [
    {
      name: called,
      by: between?.by ?? 'running hours',
      between: between?.distribution ?? { kind: 'constant', value: 1 },
      effect: effect === lost ? 'loses the build' : 'build goes on after the repair',
      repair,
    },
  ];
}

function readRepair(fields: Fields, skill: string, usual: ClassBreakdown | null): Repair | null {
  const isService = fields.has('service') || (usual !== null && usual.repair === null);
  if (fields.has('repair')) {
    fields.refuse('service', '"repair" says who repairs.', 'one of the two');
    return ownRepair(fields, skill, null);
  }
  if (isService) return serviceVisit(fields.group('service'), usual?.service ?? {});
  if (usual !== null) return ownRepair(fields, skill, usual.repair);
  missingRepair(fields);
  return null;
}

function missingRepair(fields: Fields): void {
  if (fields.reading.nodeAt(fields.path)?.kind !== 'scalar') {
    fields.missing(
      'repair',
      'who repairs and how long it takes: "repair" by your own people, or "service" by a visit',
      'repair: { by: run machines, takes: 30 min to 6 h, usually 1.5 h }',
    );
    return;
  }
  fields.reading.report(fields.path, 'value', {
    message: 'Nothing says who repairs and how long it takes.',
    expected: 'how often it breaks down, and the repair',
    write:
      '{ every: about 250 h of running, repair: { by: run machines, takes: 30 min to 6 h, usually 1.5 h } }',
  });
}

/** By one's own people: a time alone, or by whom and how many. It may always pause. */
function ownRepair(fields: Fields, skill: string, classText: string | null): Repair | null {
  const texts = fields.withClass(classText === null ? {} : { repair: classText });
  let work: AttendedWork | null = null;
  if (fields.node('repair')?.kind === 'map') {
    const group = fields.group('repair').withClass(classText === null ? {} : { takes: classText });
    const by = group.readOr('by', anyText, skill);
    const persons = group.readOr('people', wholeNumber(1, '2'), '1');
    const duration = group.need(
      'takes',
      plainDuration,
      NO_TIME,
      'how long it takes',
      'takes: 1 to 4 h, usually 2',
    );
    work = { skill: by, persons, duration, pausable: true };
  } else {
    const duration = texts.read('repair', plainDuration);
    if (duration === undefined) return null;
    fields.group('repair').assume('by', skill);
    work = { skill, persons: 1, duration, pausable: true };
  }
  return { kind: 'own', work };
}

function serviceVisit(written: Fields, texts: Readonly<Record<string, string>>): Repair {
  const fields = written.withClass(texts);
  const response = fields.need(
    'response',
    plainDuration,
    NO_TIME,
    'how long it takes until somebody comes',
    'response: 8 to 72 h, usually 24',
  );
  const visit = fields.need(
    'takes',
    plainDuration,
    NO_TIME,
    'how long the visit takes',
    'takes: 1 to 4 h, usually 2',
  );
  const hours = fields.readOr('hours', anyText, ALWAYS);
  return {
    kind: 'service',
    response: response.distribution,
    visit: visit.distribution,
    calendar: hours === ALWAYS ? null : hours,
  };
}
