import {
  JOB_COLUMNS,
  type MachineMapping,
  type MappedStage,
  type Mapping,
  RUN_COLUMNS,
} from '@buildweek/records';
import { formatProblem, type Problem, readYaml, type SourceNode, SourceText } from '@buildweek/scenario';
import { badInput } from '../failure.ts';
import { readText } from '../files/read-file.ts';
import { MappingReader } from './mapping-reader.ts';

const KEYS = [
  'separator',
  'dates',
  'zone',
  'columns',
  'stages',
  'rush means',
  'cancelled means',
  'parts',
  'machines',
];
const MACHINE_KEYS = ['separator', 'dates', 'columns', 'done means', 'failed means', 'broke down means'];

/**
 * What a mapping file says about a log.
 * @throws Failure for bad input with everything that is wrong with it
 */
export function mappingOf(path: string): Mapping {
  const source = new SourceText(path, readText(path, 'mapping'));
  const { root, problems } = readYaml(source);
  const reader = new MappingReader(source);
  const mapping = root === null ? {} : readMapping(root, reader);
  const all: Problem[] = [...problems, ...reader.problems];
  if (all.length === 0) return mapping;
  const count = all.length === 1 ? 'There is 1 error' : `There are ${all.length} errors`;
  throw badInput([...all.map(formatProblem), `${count} in ${path}; nothing was done.`].join('\n\n'));
}

function readMapping(root: SourceNode, reader: MappingReader): Mapping {
  const of = reader.group(root, KEYS);
  return withoutNothing<Mapping>({
    separator: reader.separator(of('separator')),
    dates: reader.order(of('dates')),
    zone: reader.zone(of('zone')),
    columns: reader.columns(of('columns'), JOB_COLUMNS),
    stages: readStages(of('stages'), reader),
    rushMeans: reader.words(of('rush means')),
    cancelledMeans: reader.words(of('cancelled means')),
    parts: reader.names(of('parts')),
    machines: readMachines(of('machines'), reader),
  });
}

function readMachines(node: SourceNode | undefined, reader: MappingReader): MachineMapping | undefined {
  if (node === undefined) return undefined;
  const of = reader.group(node, MACHINE_KEYS);
  return withoutNothing<MachineMapping>({
    separator: reader.separator(of('separator')),
    dates: reader.order(of('dates')),
    columns: reader.columns(of('columns'), RUN_COLUMNS),
    doneMeans: reader.words(of('done means')),
    failedMeans: reader.words(of('failed means')),
    brokeDownMeans: reader.words(of('broke down means')),
  });
}

function readStages(node: SourceNode | undefined, reader: MappingReader): MappedStage[] | undefined {
  if (node === undefined) return undefined;
  return reader.entries(node).map(([name, stage]) => {
    const of = reader.group(stage, ['start', 'end', 'is work']);
    const start = reader.text(of('start'));
    const end = reader.text(of('end'));
    return withoutNothing<MappedStage>({ name, start, end, isWork: reader.yes(of('is work')) });
  });
}

/** Keys without a value are not there. */
function withoutNothing<Group extends object>(
  group: {
    readonly [Key in keyof Group]: Group[Key] | undefined;
  },
): Group {
  return Object.fromEntries(Object.entries(group).filter(([, value]) => value !== undefined)) as Group;
}
