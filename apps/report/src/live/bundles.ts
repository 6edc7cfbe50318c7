import { readFileSync } from 'node:fs';

/** Scripts of the page, as `npm run build` has bundled them. From sources and from `dist` the way is the same. */
const FOLDER = new URL('../../dist/bundle/', import.meta.url);

/** What a page with the simulator in it holds. */
export interface Bundles {
  /** The script of the page itself. */
  readonly page: string;
  /** The script of its workers: gzip, base64. */
  readonly worker: string;
  /** The script of a page that is served while its file may change. */
  readonly follow: string;
}

let known: Bundles | null = null;

/** @throws Error when the program has not been built */
export function bundles(): Bundles {
  known ??= {
    page: readFileSync(new URL('page.js', FOLDER), 'utf8'),
    worker: readFileSync(new URL('worker.js.gz', FOLDER)).toString('base64'),
    follow: readFileSync(new URL('follow.js', FOLDER), 'utf8'),
  };
  return known;
}
