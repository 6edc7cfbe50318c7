import type { Fields } from '../fields.ts';
import type { ScenarioSendOut } from '../scenario.ts';
import {
  type OutsideTimeWording,
  outsideTime,
  type SendOutConditions,
  sendOutConditions,
} from '../words/sent-out.ts';

/** Key of all that is said of work that is made outside. */
export const SENT_OUT = 'sent out';

/** Stands in for a time that is missing or wrong, which has been reported. */
const SOME_DAYS: OutsideTimeWording = { kind: 'working days', days: { kind: 'constant', value: 5 } };

/** What holds for every demand that says nothing of its own. */
export interface UsualSendOut {
  /** Null: never. */
  readonly conditions: SendOutConditions | null;
  readonly takes: OutsideTimeWording | null;
}

export function readUsualSendOut(fields: Fields): UsualSendOut {
  const group = fields.group(SENT_OUT);
  if (!fields.has(SENT_OUT)) return { conditions: null, takes: null };
  const takes = group.read('takes', outsideTime) ?? null;
  const conditions = group.readOr('when', sendOutConditions, 'never');
  if (!group.has('takes') && conditions !== null) needTakes(group);
  return { conditions, takes: takes ?? (group.has('takes') ? SOME_DAYS : null) };
}

/** `sent out: always`, conditions, or a group that also says how long it takes. */
export function readSentOut(demand: Fields, usual: UsualSendOut): ScenarioSendOut | null {
  if (!demand.has(SENT_OUT)) {
    // A misspelt key may be meant to say it.
    if (demand.reading.isMisspelt(demand.path)) return null;
    demand.assume(SENT_OUT, usual.conditions === null ? 'never' : 'as for all jobs');
    const { conditions, takes } = usual;
    return conditions === null ? null : { conditions, isOwn: false, takes: takes ?? SOME_DAYS };
  }
  if (demand.node(SENT_OUT)?.kind !== 'map') {
    const conditions = demand.read(SENT_OUT, sendOutConditions) ?? null;
    if (conditions === null) return null;
    if (usual.takes === null) {
      demand.report(
        SENT_OUT,
        'value',
        'How long it takes outside is not said.',
        'a time here, or one for all that is sent out',
        `{ when: ${textOf(demand)}, takes: 4 to 9 working days, usually 6 }`,
      );
    }
    return { conditions, isOwn: true, takes: usual.takes ?? SOME_DAYS };
  }
  const group = demand.group(SENT_OUT);
  const conditions = group.need('when', sendOutConditions, null, 'when it is sent out', 'when: always');
  const takes = group.read('takes', outsideTime) ?? usual.takes;
  if (conditions === null) return null;
  if (takes === null && !group.has('takes')) needTakes(group);
  return { conditions, isOwn: true, takes: takes ?? SOME_DAYS };
}

function needTakes(group: Fields): void {
  group.missing('takes', 'how long it takes outside', 'takes: 4 to 9 working days, usually 6');
}

function textOf(demand: Fields): string {
  const node = demand.node(SENT_OUT);
  return node?.kind === 'scalar' ? node.text : 'always';
}
