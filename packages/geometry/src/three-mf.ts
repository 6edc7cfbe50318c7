import { DecodeUTF8 } from 'fflate';
import { SaxesParser } from 'saxes';
import type { LengthUnit } from './length-unit.ts';
import type { Mesh } from './mesh.ts';
import { MeshError } from './mesh-error.ts';
import { isPlace, READ_LIMITS, refusePlace, refuseTooMany } from './read-limits.ts';
import {
  documentScale,
  type ModelDocument,
  ModelDocumentReader,
  type ModelObject,
  type ObjectUse,
} from './three-mf-document.ts';
import { composed, determinant, type Transform } from './transform.ts';
import { VertexTable } from './vertex-table.ts';
import { ZipArchive } from './zip-archive.ts';

const MODEL_RELATIONSHIP = 'http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel';
const AGAIN = 'The file breaks the 3MF specification: export the part again.';

/** What a 3MF file holds, its build items placed as the file says. */
export interface ThreeMfContent {
  readonly mesh: Mesh;
  readonly unit: LengthUnit;
  /** Items of the build. */
  readonly items: number;
  /** Uses of objects that are no part of the model (supports and surfaces) and were left out. */
  readonly leftOut: number;
}

/** Whether the bytes begin as a ZIP archive does. */
export function looksLikeZip(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3 && bytes[3] === 4;
}

/**
 * Reads a 3MF file (3MF Core Specification 1.4.0): the items of its build with their transforms, components to any
 * depth up to a limit, the unit of the model; object files of the Production Extension are followed. A mirrored use
 * is turned right side out.
 *
 * @throws MeshError when the file is no package, is damaged, breaks the specification, contains itself or is too big.
 */
export function readThreeMf(bytes: Uint8Array): ThreeMfContent {
  const documents = new Documents(new ZipArchive(bytes));
  const root = documents.root;
  const items = documents.document(root).items;
  if (items.length === 0) {
    throw new MeshError(
      'The file places nothing on the platform: its build has no item.',
      'Put the part on the platform and export it again.',
    );
  }
  const assembly = new Assembly(documents);
  for (const item of items) assembly.refuseBeyondLimits(root, item);
  for (const item of items) assembly.add(root, item);
  return {
    mesh: assembly.mesh(),
    unit: documents.document(root).unit,
    items: items.length,
    leftOut: assembly.leftOut,
  };
}

/** Model files of a package, each read when it is first asked for. */
class Documents {
  readonly root: string;
  readonly #archive: ZipArchive;
  readonly #read = new Map<string, ModelDocument>();

  constructor(archive: ZipArchive) {
    this.#archive = archive;
    this.root = rootModel(archive);
  }

  document(path: string): ModelDocument {
    const known = this.#read.get(path);
    if (known !== undefined) return known;
    const name = this.#archive.find(path);
    if (name === null) throw new MeshError(`The package lacks the model file ${path}.`, AGAIN);
    const reader = new ModelDocumentReader(name);
    readText(this.#archive, name, (text) => reader.write(text));
    const document = reader.end();
    if (path !== this.root && document.unit !== this.document(this.root).unit) {
      throw new MeshError('The model files of the package state different units.', AGAIN);
    }
    this.#read.set(path, document);
    return document;
  }

  object(path: string, id: string): ModelObject {
    const object = this.document(path).objects.get(id);
    if (object === undefined) {
      throw new MeshError(`The file uses object ${id} and does not hold it.`, AGAIN);
    }
    return object;
  }
}

/** Puts the uses of objects together to one mesh. */
class Assembly {
  leftOut = 0;
  readonly #documents: Documents;
  readonly #pieces: Mesh[] = [];
  /** Triangles, and uses of objects, that a use of an object leads to. */
  readonly #sizes = new Map<string, number>();
  readonly #scale: number;

  constructor(documents: Documents) {
    this.#documents = documents;
    this.#scale = documentScale(documents.document(documents.root));
  }

  /** Counts what the item leads to before anything is made of it; a few lines of a file can ask for very much. */
  refuseBeyondLimits(path: string, item: ObjectUse): void {
    refuseTooMany(this.#size(path, item, []), 'triangles');
  }

  add(path: string, use: ObjectUse): void {
    this.#add(path, use, null);
  }

  mesh(): Mesh {
    let corners = 0;
    let coordinates = 0;
    for (const piece of this.#pieces) {
      corners += piece.triangles.length;
      coordinates += piece.positions.length;
    }
    refuseTooMany(corners / 3, 'triangles');
    const positions = new Float64Array(coordinates);
    const triangles = new Uint32Array(corners);
    corners = 0;
    coordinates = 0;
    for (const piece of this.#pieces) {
      positions.set(piece.positions, coordinates);
      for (const vertex of piece.triangles) triangles[corners++] = coordinates / 3 + vertex;
      coordinates += piece.positions.length;
    }
    return { positions, triangles };
  }

  #size(path: string, use: ObjectUse, above: readonly string[]): number {
    const place = use.path ?? path;
    const key = `${use.id} in ${place}`;
    if (above.includes(key)) {
      throw new MeshError(`Object ${use.id} contains itself.`, AGAIN);
    }
    if (above.length >= READ_LIMITS.componentDepth) {
      throw new MeshError(
        `Components are nested more than ${READ_LIMITS.componentDepth} deep.`,
        'Join the bodies of the part and export it again.',
      );
    }
    const known = this.#sizes.get(key);
    if (known !== undefined) return known;
    const object = this.#documents.object(place, use.id);
    let size = 1 + object.triangles.length / 3;
    for (const component of object.components) size += this.#size(place, component, [...above, key]);
    this.#sizes.set(key, size);
    return size;
  }

  #add(path: string, use: ObjectUse, outer: Transform | null): void {
    const place = use.path ?? path;
    const object = this.#documents.object(place, use.id);
    const transform = outer === null ? use.transform : composed(use.transform, outer);
    if (object.type !== 'model') {
      this.leftOut++;
      return;
    }
    if (object.triangles.length > 0) this.#pieces.push(placed(object, transform, this.#scale));
    for (const component of object.components) this.#add(place, component, transform);
  }
}

/** The mesh of an object where a use of it puts it, in mm, equal vertices joined. */
function placed(object: ModelObject, transform: Transform, scale: number): Mesh {
  const { positions } = object;
  const table = new VertexTable();
  const numbers = new Uint32Array(positions.length / 3);
  const [xx, xy, xz, yx, yy, yz, zx, zy, zz, dx, dy, dz] = transform as number[];
  for (let vertex = 0; vertex < numbers.length; vertex++) {
    const px = positions[3 * vertex];
    const py = positions[3 * vertex + 1];
    const pz = positions[3 * vertex + 2];
    const x = (px * xx + py * yx + pz * zx + dx) * scale;
    const y = (px * xy + py * yy + pz * zy + dy) * scale;
    const z = (px * xz + py * yz + pz * zz + dz) * scale;
    if (!isPlace(x, y, z)) refusePlace(x, y, z, `Object ${object.id}`);
    numbers[vertex] = table.add(x, y, z);
  }
  const triangles = object.triangles.map((vertex) => numbers[vertex]);
  if (determinant(transform) < 0) {
    for (let at = 0; at < triangles.length; at += 3) {
      const second = triangles[at + 1];
      triangles[at + 1] = triangles[at + 2];
      triangles[at + 2] = second;
    }
  }
  return { positions: table.positions(), triangles };
}

/** Name of the model file with which the package begins (Open Packaging Conventions, package relationships). */
function rootModel(archive: ZipArchive): string {
  let target: string | null = null;
  const name = archive.find('_rels/.rels');
  if (name !== null) {
    const parser = new SaxesParser();
    parser.on('opentag', ({ name: element, attributes }) => {
      const isModel = element.endsWith('Relationship') && attributes.Type === MODEL_RELATIONSHIP;
      if (isModel && target === null) target = attributes.Target ?? null;
    });
    parser.on('error', (error) => {
      throw new MeshError(`${name} cannot be read: ${error.message}.`, AGAIN);
    });
    readText(archive, name, (text) => parser.write(text));
    parser.close();
  }
  if (target === null) {
    throw new MeshError(
      'The file is a ZIP archive and no 3MF package: it names no model.',
      'Give a 3MF or an STL file; unpack an archive of several files first.',
    );
  }
  return (target as string).replace(/^\//, '');
}

function readText(archive: ZipArchive, name: string, take: (text: string) => void): void {
  const decoder = new DecodeUTF8((text) => take(text));
  const decode = (piece: Uint8Array, final: boolean): void => {
    try {
      decoder.push(piece, final);
    } catch (error) {
      if (error instanceof MeshError) throw error;
      throw new MeshError(`${name} is no text in UTF-8.`, AGAIN);
    }
  };
  archive.unpack(name, (piece) => decode(piece, false));
  decode(new Uint8Array(0), true);
}
