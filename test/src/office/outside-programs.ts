import { execFile } from 'node:child_process';
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';
import { promisify } from 'node:util';

const run = promisify(execFile);

/** What to install where a program is missing. */
const PACKAGES = {
  soffice: 'libreoffice-impress-nogui libreoffice-calc-nogui fonts-liberation fonts-dejavu-core',
  pdftotext: 'poppler-utils',
  pdfinfo: 'poppler-utils',
} as const;

type Program = keyof typeof PACKAGES;

function isExecutable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/**
 * Where a program is that opens again what was written.
 *
 * @param path folders to look in, as in the variable PATH
 * @throws Error with the line to install it when there is none
 */
export function findProgram(program: Program, path: string): string {
  const found = path
    .split(delimiter)
    .filter((folder) => folder !== '')
    .map((folder) => join(folder, program))
    .find(isExecutable);
  if (found !== undefined) return found;
  throw new Error(
    `No ${program} was found for the tests of files for the office. Install it with "apt-get install -y --no-install-recommends ${PACKAGES[program]}".`,
  );
}

async function output(program: Program, args: readonly string[]): Promise<string> {
  const { stdout } = await run(findProgram(program, process.env.PATH ?? ''), args, {
    maxBuffer: 64 * 1024 * 1024,
  });
  return stdout;
}

/** Opens files in LibreOffice and saves them in another form into a folder. @param profile where it keeps its settings */
export async function converted(
  files: readonly string[],
  form: string,
  folder: string,
  profile: string,
): Promise<void> {
  await output('soffice', [
    '--headless',
    `-env:UserInstallation=file://${profile}`,
    '--convert-to',
    form,
    '--outdir',
    folder,
    ...files,
  ]);
}

/** The text of a PDF in the order in which it is read, its spaces as plain ones and no line ends. */
export async function pdfText(file: string): Promise<string> {
  return (await output('pdftotext', ['-raw', file, '-'])).replace(/[\s\u00a0\u202f]+/g, ' ');
}

/** A word on a page with the box around it, points. */
export interface PlacedWord {
  readonly page: number;
  readonly text: string;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Every word of a PDF with its place, and the size of its pages. */
export async function pdfWords(
  file: string,
): Promise<{ words: PlacedWord[]; width: number; height: number }> {
  const html = await output('pdftotext', ['-bbox', file, '-']);
  const words: PlacedWord[] = [];
  let page = 0;
  let width = 0;
  let height = 0;
  for (const line of html.split('\n')) {
    const size = /<page width="([\d.]+)" height="([\d.]+)"/.exec(line);
    if (size !== null) {
      page += 1;
      [width, height] = [Number(size[1]), Number(size[2])];
    }
    const word = /<word xMin="(.+?)" yMin="(.+?)" xMax="(.+?)" yMax="(.+?)">(.*)<\/word>/.exec(line);
    if (word === null) continue;
    const [left = 0, top = 0, right = 0, bottom = 0] = word.slice(1, 5).map(Number);
    words.push({ page, text: word[5] ?? '', left, top, right, bottom });
  }
  return { words, width, height };
}

/** What a PDF says of itself. */
export async function pdfFacts(file: string): Promise<Map<string, string>> {
  const lines = (await output('pdfinfo', [file])).split('\n');
  return new Map(lines.map((line) => [line.split(':')[0] ?? '', line.slice(line.indexOf(':') + 1).trim()]));
}
