import { basename } from 'node:path';
import { demandOf } from '@buildweek/records';
import { changeGroup, changeNoted, entryOf, readYaml, type Scenario, SourceText } from '@buildweek/scenario';
import type { ScenarioFile } from '../files/scenario-file.ts';
import type { LogFacts } from './log-facts.ts';
import type { ReadLog } from './read-log.ts';

/** Keys of a demand that are a decision, not something that a log can measure: they stay as they are. */
const DECIDED = ['promise', 'rush promise', 'cancels'];

/** A scenario with what a log tells in it. */
export interface ChangedScenario {
  readonly text: string;
  /** What was not taken over, and why: whole sentences. */
  readonly left: readonly string[];
}

/**
 * Puts the demand of a log, fitted times of work and failed builds into a scenario; everything else stays as it was
 * written.
 */
export function changeFromLog(
  { text: base, reading }: ScenarioFile,
  log: ReadLog,
  facts: LogFacts,
): ChangedScenario {
  const { scenario } = reading;
  const { parts, learned, machines } = facts;
  const left: string[] = [];
  let text = base;
  for (const part of parts) {
    const demand = scenario.demand.find(({ name, part: of }) => name === part.name || of === part.name);
    if (demand === undefined) {
      left.push(`“${part.name}” (${part.jobs} jobs) is no demand of the scenario: it was left out.`);
      continue;
    }
    const values = demandOf(part, learned)
      .filter(({ key }) => !DECIDED.includes(key))
      .map(({ key, value, source }) => ({ key, value, note: source }));
    text = changeGroup(text, 'demand', demand.name, values);
    for (const [stage, choice] of learned.stages.get(part.name) ?? []) {
      if (!hasStage(scenario, demand.part, stage)) {
        left.push(`“${part.name}” has no stage “${stage}” in the scenario: its times were left out.`);
        continue;
      }
      const note = [`${stage}: ${choice.source}`, ...choice.others.map((other) => `or ${other.value}`)].join(
        '; ',
      );
      text = changeNoted(text, ['parts', demand.part, 'times', stage], choice.value, note);
    }
  }
  for (const { name, part } of scenario.demand) {
    if (!parts.some((one) => one.name === name || one.name === part)) {
      left.push(`“${name}” does not come up in the log: its demand stays as it was.`);
    }
  }
  for (const { name } of machines) {
    const fails = learned.fails.get(name);
    if (fails === undefined) continue;
    if (scenario.machines.some((group) => group.name === name)) {
      text = changeNoted(text, failsPath(text, name), fails.value, fails.source);
    } else left.push(`“${name}” is no machine of the scenario: its failed builds were left out.`);
  }
  const path = basename(log.requests.table.path);
  return { text: `# buildweek from-log: demand and what was fitted are those of ${path}.\n${text}`, left };
}

/** Failed builds are one value, or a group of keys with their chance in it. */
function failsPath(text: string, machines: string): string[] {
  const { root } = readYaml(new SourceText('scenario', text));
  const group = root === null ? undefined : entryOf(entryOf(root, 'machines')?.node, machines)?.node;
  const isGroup = entryOf(group, 'fails')?.node.kind === 'map';
  return ['machines', machines, 'fails', ...(isGroup ? ['chance'] : [])];
}

function hasStage({ parts, routes }: Scenario, part: string, stage: string): boolean {
  const route = parts.find(({ name }) => name === part)?.route;
  return routes.find(({ name }) => name === route)?.stages.some(({ name }) => name === stage) ?? false;
}
