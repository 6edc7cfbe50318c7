import type { MachineFacts } from '../facts/machine-groups.ts';
import type { PartFacts } from '../facts/part-facts.ts';
import { type ProcessClass, processClass } from '../facts/process-class.ts';
import type { WorkingHours } from '../facts/working-hours.ts';
import { demandLines } from './demand-lines.ts';
import { hoursLines } from './hours-lines.ts';
import type { LearnedWords, Sourced, SourcedChoice } from './learned-words.ts';
import { TYPICAL_USE } from './typical-routes.ts';
import { yamlText } from './yaml-text.ts';

/** All that a scenario is made of when there is nothing but a log. */
export interface FirstScenarioFacts {
  /** Name of the file of the log. */
  readonly log: string;
  /** The day up to which the log was used, as `2027-02-18`. */
  readonly learnedUntil: string;
  /** The Monday behind the end of the log, as `2027-02-22`. */
  readonly starts: string;
  readonly zone: string | null;
  readonly hours: WorkingHours | null;
  readonly machines: readonly MachineFacts[];
  readonly parts: readonly PartFacts[];
  readonly learned: LearnedWords;
  /** Numbers of people and stations by name that carry the demand; one of each where nothing is said. */
  readonly counts: ReadonlyMap<string, number>;
}

/** What is said of all that a log does not tell. */
const ASSUMED = 'not in the log: common practice, check';

/** A group of machines of the scenario, with the class that is taken. */
interface Group {
  readonly name: string;
  readonly machines: number | null;
  readonly of: ProcessClass;
  readonly isKnownClass: boolean;
  readonly parts: readonly PartFacts[];
}

/**
 * A whole scenario from a log alone, ready to be checked and played: demand, pieces, promises, machines and what was
 * fitted from the log, with what was counted beside each; all else typical of the trade, and marked so.
 */
export function firstScenario(facts: FirstScenarioFacts): string {
  const groups = groupsOf(facts);
  const lines = [
    `# buildweek from-log: learned from ${facts.log} up to ${facts.learnedUntil}. What is not in the log is marked; correct it first.`,
    'buildweek: 1',
    `name: ${yamlText(`As in ${facts.log}`)}`,
    `starts: ${facts.starts} # the Monday behind the end of the log`,
    ...(facts.zone === null ? [`# zone: Europe/Lisbon # ${ASSUMED}`] : [`zone: ${facts.zone}`]),
    'simulate: { weeks: 13, ignored weeks: auto, seed: log, replications: 60 }',
    '',
    ...hoursLines(facts.hours, skillsOf(groups), facts.counts),
    '',
    'machines: # their number from the log; build space, set-up, breakdowns and the rest as their classes have them',
    ...groups.flatMap((group) => machineLines(group, facts.learned)),
    '',
    ...stationLines(groups, facts.counts),
    `routes: # ${ASSUMED}`,
    ...groups.flatMap((group) => routeLines(group, facts.learned)),
    '',
    'parts: # no shapes in the log: how many fill a build, and how long a build prints, stand for them',
    ...groups.flatMap((group) => group.parts.flatMap((part) => partLines(part, group, facts.learned))),
    '',
    'demand:',
    ...demandLines(facts.parts, facts.learned),
    '',
    `targets: ${targetOf(facts.parts)} # ${ASSUMED}`,
  ];
  return `${lines.join('\n')}\n`;
}

/** Promises can be kept only where some are given. */
function targetOf(parts: readonly PartFacts[]): string {
  const promises = parts.some(({ promise, rushPromise }) => promise !== null || rushPromise !== null);
  return promises ? 'on time at least 90 %' : '90 % of jobs within 5 working days';
}

/** Skills that some work asks for: powder needs no preparation of single files. */
function skillsOf(groups: readonly Group[]): string[] {
  const prepares = groups.some(({ of }) =>
    TYPICAL_USE[of].stages.some(({ name }) => name === 'prepare file'),
  );
  return [...(prepares ? ['prepare files'] : []), 'run machines', 'hand work'];
}

/** Machines of the log; where it names none, one group for each class that the words of its jobs mean. */
function groupsOf({ machines, parts }: FirstScenarioFacts): Group[] {
  const usable = machines.filter((facts) => facts.parts.size > 0 || facts.process !== null);
  const groupOfPart = (part: PartFacts): string => {
    const best = usable
      .map((facts) => ({ name: facts.name, jobs: facts.parts.get(part.name) ?? 0 }))
      .sort((a, b) => b.jobs - a.jobs)[0];
    if (best !== undefined && best.jobs > 0) return best.name;
    const own = processClass([part.process, part.material, part.name]);
    const alike = usable.find((facts) => classOf(facts).of === own);
    return alike?.name ?? `${own ?? 'small MEX'} machines`;
  };
  const byGroup = new Map<string, PartFacts[]>();
  for (const part of parts) {
    const name = groupOfPart(part);
    byGroup.set(name, [...(byGroup.get(name) ?? []), part]);
  }
  return [...byGroup].map(([name, own]): Group => {
    const facts = usable.find((one) => one.name === name);
    const [first] = own;
    const words = [first?.process ?? null, first?.material ?? null, first?.name ?? null];
    const known = facts === undefined ? processClass(words) : classOf(facts).known;
    return {
      name,
      machines: facts?.machines.length ?? null,
      of: known ?? 'small MEX',
      isKnownClass: known !== null,
      parts: own,
    };
  });
}

function classOf({ process, name, material }: MachineFacts): {
  known: ProcessClass | null;
  of: ProcessClass;
} {
  const known = processClass([process, name, material]);
  return { known, of: known ?? 'small MEX' };
}

function machineLines({ name, machines, of, isKnownClass }: Group, learned: LearnedWords): string[] {
  const fails = learned.fails.get(name);
  const breakdowns = learned.breakdowns.get(name);
  return [
    `  ${yamlText(name)}:`,
    `    class: ${of} # ${isKnownClass ? 'by the words of the log' : ASSUMED}`,
    machines === null ? `    count: 1 # ${ASSUMED}` : `    count: ${machines} # named in the log`,
    `    start: ${TYPICAL_USE[of].start} # ${ASSUMED}`,
    ...(fails === undefined ? [] : [`    fails: ${fails.value} # ${fails.source}`]),
    ...(breakdowns === undefined ? [] : [breakdownLine(breakdowns)]),
  ];
}

/** Machines that never broke down in the log do so as their class has it. */
function breakdownLine({ value, source }: Sourced): string {
  const every = /^every (.+)$/.exec(value)?.[1];
  return every === undefined
    ? `    # breaks down as its class has it: ${value}, ${source}`
    : `    breaks down: { every: about ${every} } # ${source}; repair as its class has it`;
}

function stationLines(groups: readonly Group[], counts: ReadonlyMap<string, number>): string[] {
  const stations = new Map(groups.flatMap(({ of }) => [...TYPICAL_USE[of].stations]));
  if (stations.size === 0) return [];
  return [
    `stations: # ${ASSUMED}; as many as carry the demand`,
    ...[...stations].map(([name, of]) => `  ${name}: { class: ${of}, count: ${counts.get(name) ?? 1} }`),
    '',
  ];
}

/** Stages that the log knows and the usual route has not got come before the last, which is the inspection. */
function routeLines({ name, of, parts }: Group, { stages: fitted }: LearnedWords): string[] {
  const usual = TYPICAL_USE[of].stages;
  const own = new Set(parts.flatMap((part) => [...(fitted.get(part.name)?.keys() ?? [])]));
  const known = new Set(usual.map((stage) => stage.name));
  const others = [...own].filter((stage) => !known.has(stage) && stage !== 'print');
  const lineOf = (stage: (typeof usual)[number]): string => {
    if (stage.name === 'build') return `    - build: { on: ${yamlText(name)} }`;
    const takes = stage.takes === null ? '' : `, takes: ${stage.takes}`;
    return `    - ${stage.name}: { ${stage.is}${takes} }`;
  };
  return [
    `  ${yamlText(`${name} part`)}:`,
    ...usual.slice(0, -1).map(lineOf),
    ...others.map(
      (stage) =>
        `    - ${yamlText(stage)}: { by: hand work, may pause: yes, takes: 1 min per part } # times: see the parts`,
    ),
    ...usual.slice(-1).map(lineOf),
  ];
}

function partLines(part: PartFacts, group: Group, learned: LearnedWords): string[] {
  const print = learned.partPrints.get(part.name) ?? learned.prints.get(group.name);
  const { mostInBuild, material } = part;
  const largest = part.quantities[Math.floor(0.9 * (part.quantities.length - 1))] ?? 1;
  const fitted = [...(learned.stages.get(part.name) ?? [])];
  return [
    `  ${yamlText(part.name)}:`,
    `    route: ${yamlText(`${group.name} part`)}`,
    ...(material === null ? [] : [`    material: ${yamlText(material)} # the most usual in its jobs`]),
    mostInBuild === null
      ? `    fits: ${largest} per build # no run tells: as many pieces as nine of ten jobs have; check`
      : `    fits: ${mostInBuild.pieces} per build # the most that were in one of ${mostInBuild.runs} runs`,
    ...(print === undefined
      ? [`    print: ${TYPICAL_USE[group.of].print} # no record of machines: a guess, check`]
      : choiceLines('print', print, '    ')),
    ...(fitted.length === 0 ? [] : ['    times:']),
    ...fitted.flatMap(([stage, choice]) => choiceLines(yamlText(stage), choice, '      ')),
  ];
}

/** The value that fits best, with the others as comments below it. */
function choiceLines(key: string, { value, source, others }: SourcedChoice, indent: string): string[] {
  return [
    `${indent}${key}: ${value} # ${source}`,
    ...others.map((other) => `${indent}# ${key}: ${other.value} # ${other.source}`),
  ];
}
