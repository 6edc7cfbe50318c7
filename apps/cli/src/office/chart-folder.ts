import { existsSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { ChartFile } from '@buildweek/report/office';
import { badInput } from '../failure.ts';
import { writeOutput } from '../files/output-file.ts';

/** Makes sure that charts can be put into a folder. @throws Failure for bad input when it is a file */
export function checkFolder(folder: string): void {
  if (statSync(folder, { throwIfNoEntry: false })?.isDirectory() === false) {
    throw badInput(`Cannot write charts into ${folder}: that is a file, not a folder.`);
  }
}

/** Names of the files that an earlier command put into a folder, by the index that it left there. */
function writtenBefore(folder: string, index: string): Set<string> {
  try {
    const list: unknown = JSON.parse(readFileSync(join(folder, index), 'utf8'));
    if (typeof list !== 'object' || list === null || !('format' in list)) return new Set();
    if (list.format !== 'buildweek charts' || !('charts' in list) || !Array.isArray(list.charts))
      return new Set();
    const names = list.charts.flatMap(({ files }: { files?: object }) => Object.values(files ?? {}));
    return new Set([index, ...names.map(String)]);
  } catch {
    return new Set();
  }
}

/**
 * Writes charts into a folder, the index last.
 *
 * @param index name of the file that lists the others
 * @param force whether the user said that anything there may be overwritten
 * @throws Failure for bad input when something else stands there, before anything is written
 */
export function writeCharts(
  folder: string,
  files: readonly ChartFile[],
  index: string,
  force: boolean,
): void {
  const own = force ? new Set(files.map(({ name }) => name)) : writtenBefore(folder, index);
  const foreign = files.find(({ name }) => !own.has(name) && existsSync(join(folder, name)));
  if (foreign !== undefined) {
    throw badInput(
      `${join(folder, foreign.name)} is there already and is not a chart that this command wrote. Choose another folder, or add --force to overwrite it.`,
    );
  }
  for (const { name, content } of files) writeOutput(join(folder, name), content);
}
