import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from 'fflate';

/** The earliest time that a ZIP file can name; every file in it is given this one. */
const NO_TIME = new Date(1980, 0, 1);
/** Names under which a file of the office keeps the moment at which it was made. */
const MOMENTS = /<dcterms:(created|modified)[^>]*>[^<]*<\/dcterms:\1>/g;

/** Who made a file, which is nobody. */
const PERSONS = /<(dc:creator|cp:lastModifiedBy)>[^<]*<\/\1>/g;

/** What else becomes of the files inside. */
export interface ZipChanges {
  readonly path?: (path: string) => string;
  /** @param path the new one */
  readonly text?: (path: string, text: string) => string;
  /** What the file is said to be made with, so that it is known again; the workbooks inside say nothing. */
  readonly application?: string;
}

/** The list of contents. */
const CONTENTS = '[Content_Types].xml';
/** Where a file of the office says what it was made with. */
const APPLICATION = 'docProps/app.xml';

const isZip = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b;

/**
 * The same file of the office with nothing in it that differs from one making to the next: no times, files in order of
 * their names (the list of contents first, as readers expect), the workbooks inside likewise.
 *
 * @param bytes a ZIP file
 */
export function sameZip(bytes: Uint8Array, changes: ZipChanges = {}): Uint8Array {
  const { path: renamed = (path) => path, text: changed = (_, text) => text, application } = changes;
  const files = Object.entries(
    application === undefined ? unzipSync(bytes) : withApplication(unzipSync(bytes)),
  )
    .filter(([path]) => !path.endsWith('/'))
    .map(([path, content]) => ({ path: renamed(path), content }))
    .sort((one, other) => rank(one.path) - rank(other.path) || (one.path < other.path ? -1 : 1));
  const paths = new Set(files.map(({ path }) => path));
  const entries: Zippable = {};
  for (const { path, content } of files) {
    if (path === APPLICATION && application !== undefined) {
      // Not packed, so that a look at the start of the file finds it.
      entries[path] = [strToU8(applicationFile(application)), { level: 0, mtime: NO_TIME }];
    } else if (isZip(content)) entries[path] = [sameZip(content), { level: 0, mtime: NO_TIME }];
    else if (/\.(?:xml|rels)$/.test(path)) {
      const read = changed(path, strFromU8(content).replace(MOMENTS, '').replace(PERSONS, ''));
      const text = path === CONTENTS ? withoutMissing(read, paths) : read;
      entries[path] = [strToU8(text), { level: 6, mtime: NO_TIME }];
    } else entries[path] = [content, { level: path.endsWith('.png') ? 0 : 6, mtime: NO_TIME }];
  }
  return zipSync(entries);
}

/** The list of contents without what is not there; some programs call a file damaged that lists more than it has. */
function withoutMissing(contents: string, paths: ReadonlySet<string>): string {
  return contents.replace(/<Override [^>]*PartName="\/([^"]+)"[^>]*\/>/g, (entry, path: string) =>
    paths.has(path) ? entry : '',
  );
}

/** The files with a place for what they were made with, where the writing library makes none. */
function withApplication(files: Readonly<Record<string, Uint8Array>>): Record<string, Uint8Array> {
  if (APPLICATION in files) return files;
  const added = (path: string, before: string, xml: string): Record<string, Uint8Array> => ({
    [path]: strToU8(strFromU8(files[path] ?? new Uint8Array()).replace(before, `${xml}${before}`)),
  });
  return {
    ...files,
    ...added(
      CONTENTS,
      '</Types>',
      `<Override PartName="/${APPLICATION}" ContentType="application/vnd.openxmlformats-officedocument.extended-properties+xml"/>`,
    ),
    ...added(
      '_rels/.rels',
      '</Relationships>',
      `<Relationship Id="application" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/extended-properties" Target="${APPLICATION}"/>`,
    ),
    [APPLICATION]: new Uint8Array(),
  };
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
  if (path === CONTENTS) return 0;
  if (path === '_rels/.rels') return 1;
  return path === APPLICATION ? 2 : 3;
}

/** Source: ISO/IEC 29500-1, Office Open XML, extended file properties. */
function applicationFile(application: string): string {
  return `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/extended-properties"><Application>${application}</Application></Properties>`;
}
