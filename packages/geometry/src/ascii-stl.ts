import { strFromU8, strToU8 } from 'fflate';
import { facetNormal } from './binary-stl.ts';
import type { Mesh } from './mesh.ts';
import { MeshError } from './mesh-error.ts';
import { isPlace, READ_LIMITS, refusePlace, refuseTooMany } from './read-limits.ts';
import { VertexTable } from './vertex-table.ts';

const REMEDY = 'The file is damaged or cut off: export or copy it again.';

/** Whether the file begins with the word solid and what follows is text. */
export function looksLikeAsciiStl(bytes: Uint8Array): boolean {
  const start = strFromU8(bytes.subarray(0, 1024), true);
  return /^(\xef\xbb\xbf)?\s*solid(\s|$)/i.test(start) && !/[^\t\n\v\f\r\x20-\xff]/.test(start);
}

/**
 * Reads an ASCII STL file, one or more solids; equal corners become one vertex, and normals are left aside.
 *
 * @param scale mm in the unit of the file.
 * @throws MeshError with the line when the file is not written as it should be or does not reach its end.
 */
export function readAsciiStl(bytes: Uint8Array, scale: number): Mesh {
  if (bytes.length > READ_LIMITS.textBytes) {
    throw new MeshError(
      `The file is an ASCII STL file of ${Math.round(bytes.length / 1e6)} MB; at most ${READ_LIMITS.textBytes / 1e6} MB are read.`,
      'Export it as binary STL, which takes a fifth of the room.',
    );
  }
  const text = strFromU8(bytes, true);
  const words = new Words(text);
  const table = new VertexTable();
  let triangles = new Uint32Array(3 * 1024);
  let corners = 0;
  words.skipByteOrderMark();
  while (!words.atEnd()) {
    words.expect('solid');
    words.skipLine();
    for (;;) {
      const word = words.next();
      if (word === 'endsolid') break;
      if (word !== 'facet') words.refuse(word, 'facet or endsolid');
      words.expect('normal');
      for (let component = 0; component < 3; component++) words.next();
      words.expect('outer');
      words.expect('loop');
      if (corners + 3 > triangles.length) {
        refuseTooMany(corners / 3 + 1, 'triangles');
        const longer = new Uint32Array(2 * triangles.length);
        longer.set(triangles);
        triangles = longer;
      }
      for (let corner = 0; corner < 3; corner++) {
        words.expect('vertex');
        const x = words.number() * scale;
        const y = words.number() * scale;
        const z = words.number() * scale;
        if (!isPlace(x, y, z)) refusePlace(x, y, z, `Line ${words.line()}`);
        triangles[corners++] = table.add(x, y, z);
      }
      words.expect('endloop');
      words.expect('endfacet');
    }
    words.skipLine();
  }
  if (corners === 0) {
    throw new MeshError('The file holds no triangle.', 'Export the part again, with the body selected.');
  }
  return { positions: table.positions(), triangles: triangles.slice(0, corners) };
}

/** Writes an ASCII STL file in mm, numbers with as many digits as they need to be read back unchanged. */
export function writeAsciiStl(mesh: Mesh, name: string): Uint8Array {
  const { positions, triangles } = mesh;
  const title = name.replace(/\s+/g, ' ').trim();
  const lines = [`solid ${title}`];
  for (let triangle = 0; triangle < triangles.length / 3; triangle++) {
    lines.push(`facet normal ${facetNormal(mesh, triangle).join(' ')}`, 'outer loop');
    for (let corner = 3 * triangle; corner < 3 * triangle + 3; corner++) {
      const at = 3 * triangles[corner];
      lines.push(`vertex ${positions[at]} ${positions[at + 1]} ${positions[at + 2]}`);
    }
    lines.push('endloop', 'endfacet');
  }
  lines.push(`endsolid ${title}`, '');
  return strToU8(lines.join('\n'));
}

/** Words of a text one after the other, between white space. */
class Words {
  readonly #text: string;
  #at = 0;
  #start = 0;

  constructor(text: string) {
    this.#text = text;
  }

  skipByteOrderMark(): void {
    if (this.#text.startsWith('\xef\xbb\xbf')) this.#at = 3;
  }

  /** Whether nothing but white space is left. */
  atEnd(): boolean {
    this.#skipSpace();
    return this.#at >= this.#text.length;
  }

  /** The next word in small letters; empty at the end of the text. */
  next(): string {
    return this.#take().toLowerCase();
  }

  number(): number {
    const word = this.#take();
    const value = Number(word);
    if (word === '' || Number.isNaN(value)) this.refuse(word, 'a coordinate');
    return value;
  }

  expect(expected: string): void {
    const word = this.next();
    if (word !== expected) this.refuse(word, expected);
  }

  skipLine(): void {
    const end = this.#text.indexOf('\n', this.#at);
    this.#at = end < 0 ? this.#text.length : end + 1;
  }

  /** Number of the line on which the last word stands. */
  line(): number {
    let line = 1;
    for (let at = this.#text.indexOf('\n'); at >= 0 && at < this.#start; line++) {
      at = this.#text.indexOf('\n', at + 1);
    }
    return line;
  }

  refuse(word: string, expected: string): never {
    const found = word === '' ? 'the file ends' : `stands ${JSON.stringify(word.slice(0, 40))}`;
    throw new MeshError(`On line ${this.line()}, where ${expected} should be, ${found}.`, REMEDY);
  }

  #take(): string {
    this.#skipSpace();
    this.#start = this.#at;
    while (this.#at < this.#text.length && this.#text.charCodeAt(this.#at) > 32) this.#at++;
    return this.#text.slice(this.#start, this.#at);
  }

  #skipSpace(): void {
    while (this.#at < this.#text.length && this.#text.charCodeAt(this.#at) <= 32) this.#at++;
  }
}
