import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from 'fflate';

/** The earliest time that a ZIP file can name; every file in it is given this one. */
const NO_TIME = new Date(1980, 0, 1);
/** Names under which a file of the office keeps the moment at which it was made. */
const MOMENTS = /<dcterms:(created|modified)[^>]*>[^<]*<\/dcterms:\1>/g;

/** What else becomes of the files inside. */
export interface ZipChanges {
  readonly path: (path: string) => string;
  /** @param path the new one */
  readonly text: (path: string, text: string) => string;
}

const NO_CHANGES: ZipChanges = { path: (path) => path, text: (_, text) => text };

const isZip = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b;

/**
 * The same file of the office with nothing in it that differs from one making to the next: no times, files in order of
 * their names (the list of contents first, as readers expect), the workbooks inside likewise.
 *
 * @param bytes a ZIP file
 */
export function sameZip(bytes: Uint8Array, changes: ZipChanges = NO_CHANGES): Uint8Array {
  const files = Object.entries(unzipSync(bytes))
    .filter(([path]) => !path.endsWith('/'))
    .map(([path, content]) => ({ path: changes.path(path), content }))
    .sort((one, other) => rank(one.path) - rank(other.path) || (one.path < other.path ? -1 : 1));
  const entries: Zippable = {};
  for (const { path, content } of files) {
    if (isZip(content)) entries[path] = [sameZip(content), { level: 0, mtime: NO_TIME }];
    else if (/\.(?:xml|rels)$/.test(path)) {
      const text = changes.text(path, strFromU8(content).replace(MOMENTS, ''));
      entries[path] = [strToU8(text), { level: 6, mtime: NO_TIME }];
    } else entries[path] = [content, { level: path.endsWith('.png') ? 0 : 6, mtime: NO_TIME }];
  }
  return zipSync(entries);
}

/** Paths of the files in a ZIP file. */
export function zipPaths(bytes: Uint8Array): string[] {
  const paths: string[] = [];
  unzipSync(bytes, {
    filter: ({ name }) => {
      paths.push(name);
      return false;
    },
  });
  return paths;
}

/** The list of contents stands first, what it leads to next. */
function rank(path: string): number {
  if (path === '[Content_Types].xml') return 0;
  return path === '_rels/.rels' ? 1 : 2;
}
