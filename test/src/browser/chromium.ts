import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome'];

function isExecutable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** The variables of the process that say where to look. */
interface SearchPlaces {
  readonly BUILDWEEK_CHROMIUM?: string | undefined;
  readonly PATH?: string | undefined;
}

/**
 * Where Chromium is: in `BUILDWEEK_CHROMIUM`, on the PATH, or at its usual place.
 *
 * @param environment variables of the process
 * @param usual where it is when nothing is said
 * @throws Error with the line to install it when there is none
 */
export function findChromium(environment: SearchPlaces, usual = '/usr/bin/chromium'): string {
  const folders = (environment.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  const candidates = [
    environment.BUILDWEEK_CHROMIUM ?? '',
    ...folders.flatMap((folder) => NAMES.map((name) => join(folder, name))),
    usual,
  ];
  const found = candidates.find((candidate) => candidate !== '' && isExecutable(candidate));
  if (found !== undefined) return found;
  throw new Error(
    'No Chromium was found for the browser tests. Install it with "apt-get install -y chromium", ' +
      'or name it in the variable BUILDWEEK_CHROMIUM.',
  );
}

/** Starts Chromium for tests: no sandbox (tests may run as root) and nothing that talks to a network. */
export function startChromium(): Promise<Browser> {
  return chromium.launch({
    executablePath: findChromium({
      BUILDWEEK_CHROMIUM: process.env.BUILDWEEK_CHROMIUM,
      PATH: process.env.PATH,
    }),
    args: [
      '--no-sandbox',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--disable-quic',
      '--no-first-run',
    ],
  });
}
