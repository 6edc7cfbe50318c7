import { decisionFixture } from '@buildweek/charts/decision-fixture';
import type { DecisionAnswer } from '@buildweek/results';

/** Names that would do something if anything but text were made of them. */
export const HOSTILE = {
  markup: '<img src=x onerror=alert(1)>',
  formula: '=HYPERLINK("http://example.invalid";"resin")',
  rightToLeft: 'מכסה עדשה קטן',
  long: `${'a very long name of a part that nobody would give '.repeat(4)}`.slice(0, 200),
  unbroken: 'x'.repeat(200),
} as const;

const NAMES: ReadonlyMap<string, string> = new Map([
  ['resin', HOSTILE.formula],
  ['technicians', HOSTILE.markup],
  ['prepare files', HOSTILE.unbroken],
]);

/** A decision whose lab, machines, people and parts have such names. */
export function hostileDecision(): DecisionAnswer {
  const decision = decisionFixture(HOSTILE.markup);
  const parts = (decision.recommended ?? decision.today).hours.map(({ part }) => part);
  const names = new Map([
    ...NAMES,
    [parts[0] ?? '', HOSTILE.rightToLeft],
    [parts[1] ?? '', HOSTILE.long],
    [parts[2] ?? '', HOSTILE.formula],
  ]);
  return JSON.parse(JSON.stringify(decision), (_, value) =>
    typeof value === 'string' ? (names.get(value) ?? value) : value,
  );
}
