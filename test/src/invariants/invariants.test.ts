import { checkLaws, type History, hashHistory } from '@buildweek/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { generatedScenarios } from './generated-scenario.ts';
import { historyOf, labOf } from './histories.ts';
import { SCENARIO_FILES } from './scenario-files.ts';

const PROPERTY = { seed: 20270322, numRuns: 200 };

/** Laws that do not hold, with the difference. */
function broken(history: History): string[] {
  return checkLaws(history)
    .filter((law) => !law.holds)
    .map((law) => `${law.law}: ${law.difference} ms`);
}

/** What nobody needs: the section, the settings, and the price that a scenario that tells of money asks for. */
const SPARES = [
  ['machines', 'spare printer', 'count: 2, set-up: 10 min', 'price: 0'],
  ['stations', 'spare oven', 'takes: 1 h per batch, holds: 3 jobs', 'price: 0'],
  ['people', 'spare person', 'hours: day, skills: [juggling]', 'hourly cost: 0'],
] as const;

/** The text with a machine, a station and a person that nobody needs, behind the others or in front of them. */
function withSpares(text: string, inFront: boolean): string {
  let larger = text;
  const hasMoney = /^money:/m.test(text);
  for (const [section, name, settings, price] of SPARES) {
    const line = `  ${name}: { ${hasMoney ? `${settings}, ${price}` : settings} }\n`;
    const block = new RegExp(`^(${section}:.*\\n)((?:[ #].*\\n|\\n)+)`, 'm');
    larger = block.test(larger)
      ? larger.replace(
          block,
          (_, head: string, lines: string) => head + (inFront ? line + lines : lines + line),
        )
      : `${larger}${section}:\n${line}`;
  }
  return larger;
}

function withoutSpares(history: History): string {
  const needed = ({ group }: { readonly group: string }): boolean => !group.startsWith('spare');
  return hashHistory({
    ...history,
    machines: history.machines.filter(needed),
    stations: history.stations.filter(needed),
    people: history.people.filter(needed),
    queues: history.queues.filter((queue) => !queue.name.startsWith('spare') && queue.name !== 'juggling'),
  });
}

/** What a longer plan has to have in common with a shorter one: its first weeks. */
function firstWeeks({ weeks }: History, count: number): number[][] {
  return [weeks.arrivedJobs, weeks.finishedJobs, weeks.finishedParts, weeks.jobsInLab].map((values) => [
    ...values.slice(0, count),
  ]);
}

/** Everything that is expected of any scenario, played for some weeks. */
function expectInvariants(text: string, weeks: number, inFront: boolean): void {
  const lab = labOf(text);
  const plain = historyOf(lab, { weeks });
  expect(broken(plain)).toEqual([]);
  expect(broken(historyOf(lab, { weeks: 1, ignoredWeeks: weeks - 1, replication: 1 }))).toEqual([]);
  const traced = historyOf(lab, { weeks, trace: true });
  expect(traced.trace).not.toBeNull();
  expect(hashHistory(traced)).toBe(hashHistory(plain));
  const larger = historyOf(labOf(withSpares(text, inFront)), { weeks });
  expect(larger.machines.length - plain.machines.length).toBe(2);
  expect(larger.stations.length - plain.stations.length).toBe(1);
  expect(larger.people.length - plain.people.length).toBe(1);
  expect(withoutSpares(larger)).toBe(hashHistory(plain));
  const longer = historyOf(lab, { weeks: 2 * weeks });
  expect(broken(longer)).toEqual([]);
  expect(firstWeeks(longer, weeks)).toEqual(firstWeeks(plain, weeks));
}

describe('Any scenario', () => {
  it.each(SCENARIO_FILES)(
    'keeps the laws and its record, traced, with spares, and for longer: $name',
    ({ text }) => {
      for (const inFront of [true, false]) expectInvariants(text, 4, inFront);
    },
  );

  it('keeps the laws and its record, traced, with spares, and for longer: generated', () => {
    fc.assert(
      fc.property(generatedScenarios, fc.boolean(), (text, inFront) => {
        expectInvariants(text, 2, inFront);
      }),
      PROPERTY,
    );
  }, 240_000);
});
