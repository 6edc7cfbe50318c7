import { SaxesParser, type SaxesTagPlain } from 'saxes';
import { type LengthUnit, MILLIMETRES_IN } from './length-unit.ts';
import { MeshError } from './mesh-error.ts';
import { refuseTooMany } from './read-limits.ts';
import { parseTransform, type Transform } from './transform.ts';

/** A use of an object: a component of another one, or an item of the build. */
export interface ObjectUse {
  readonly id: string;
  /** File of the package that holds the object; null: the one that uses it. (3MF Production Extension.) */
  readonly path: string | null;
  readonly transform: Transform;
}

/** An object as the file states it: a mesh in the unit of the file, or components. */
export interface ModelObject {
  readonly id: string;
  /** 3MF: model, support, solidsupport, surface or other. */
  readonly type: string;
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
  readonly components: readonly ObjectUse[];
}

/** One model file of a 3MF package. */
export interface ModelDocument {
  readonly unit: LengthUnit;
  readonly objects: ReadonlyMap<string, ModelObject>;
  readonly items: readonly ObjectUse[];
}

const CORE = 'http://schemas.microsoft.com/3dmanufacturing/core/2015/02';
const PRODUCTION = 'http://schemas.microsoft.com/3dmanufacturing/production/2015/06';
const MATERIALS = 'http://schemas.microsoft.com/3dmanufacturing/material/2015/02';
/** Extensions that may be required without a change of the shape that is read here. */
const HARMLESS = new Set([
  PRODUCTION,
  MATERIALS,
  'http://schemas.microsoft.com/3dmanufacturing/slice/2015/07',
]);
const UNITS: Readonly<Record<string, LengthUnit>> = {
  micron: 'micron',
  millimeter: 'mm',
  centimeter: 'cm',
  inch: 'inch',
  foot: 'foot',
  meter: 'm',
};
const AGAIN = 'The file breaks the 3MF specification: export the part again.';

/** Reads one model file (3MF Core Specification 1.4.0) from pieces of its text, without keeping the text. */
export class ModelDocumentReader {
  readonly #parser = new SaxesParser();
  readonly #name: string;
  #unit: LengthUnit | null = null;
  /** What stands before the names of elements of the core specification, and of the production extension. */
  #prefix = '';
  #pathAttribute = 'p:path';
  readonly #objects = new Map<string, ModelObject>();
  readonly #items: ObjectUse[] = [];
  #object: ObjectDraft | null = null;
  #inBuild = false;

  constructor(name: string) {
    this.#name = name;
    this.#parser.on('opentag', (tag) => this.#open(tag));
    this.#parser.on('closetag', (tag) => this.#close(tag));
    this.#parser.on('doctype', () => this.#refuse('it has a document type, which 3MF forbids'));
    this.#parser.on('error', (error) => this.#refuse(`its XML is broken: ${error.message}`));
  }

  /** Takes the next piece of the text. */
  write(text: string): void {
    this.#parser.write(text);
  }

  /** @throws MeshError when the text ends too early or was no model. */
  end(): ModelDocument {
    this.#parser.close();
    if (this.#unit === null) this.#refuse('it holds no model element');
    return { unit: this.#unit, objects: this.#objects, items: this.#items };
  }

  #open(tag: SaxesTagPlain): void {
    const attributes = tag.attributes;
    if (this.#unit === null) {
      this.#openModel(tag);
      return;
    }
    switch (this.#core(tag.name)) {
      case 'vertex':
        this.#object?.addVertex(
          this.#coordinate(attributes.x),
          this.#coordinate(attributes.y),
          this.#coordinate(attributes.z),
        );
        break;
      case 'triangle':
        this.#object?.addTriangle(
          this.#index(attributes.v1),
          this.#index(attributes.v2),
          this.#index(attributes.v3),
        );
        break;
      case 'object':
        this.#object = new ObjectDraft(this.#id(attributes.id, 'An object'), attributes.type ?? 'model');
        break;
      case 'component':
        this.#object?.components.push(this.#use(attributes, 'A component'));
        break;
      case 'build':
        this.#inBuild = true;
        break;
      case 'item':
        if (this.#inBuild) this.#items.push(this.#use(attributes, 'An item of the build'));
        break;
    }
  }

  #close(tag: SaxesTagPlain): void {
    const name = this.#core(tag.name);
    if (name === 'build') this.#inBuild = false;
    if (name !== 'object' || this.#object === null) return;
    const object = this.#object.finish();
    if (this.#objects.has(object.id)) this.#refuse(`it holds two objects with the number ${object.id}`);
    this.#objects.set(object.id, object);
    this.#object = null;
  }

  #openModel(tag: SaxesTagPlain): void {
    const attributes = tag.attributes;
    const spaces = new Map<string, string>();
    for (const [key, value] of Object.entries(attributes)) {
      if (key === 'xmlns') spaces.set('', value);
      if (key.startsWith('xmlns:')) spaces.set(key.slice(6), value);
    }
    for (const [prefix, space] of spaces) {
      if (space === CORE) this.#prefix = prefix === '' ? '' : `${prefix}:`;
      if (space === PRODUCTION) this.#pathAttribute = `${prefix}:path`;
    }
    if (this.#core(tag.name) !== 'model') this.#refuse(`it begins with ${tag.name} where model should be`);
    for (const prefix of (attributes.requiredextensions ?? '').split(/\s+/).filter((word) => word !== '')) {
      const space = spaces.get(prefix) ?? prefix;
      if (!HARMLESS.has(space)) {
        throw new MeshError(
          `The file needs the 3MF extension ${space}, which is not read here.`,
          'Export the part as a plain mesh, or as STL.',
        );
      }
    }
    const unit = UNITS[attributes.unit ?? 'millimeter'];
    if (unit === undefined) this.#refuse(`it states the unit "${attributes.unit}", which 3MF does not know`);
    this.#unit = unit;
  }

  /** Name of an element of the core specification without its prefix; empty for elements of extensions. */
  #core(name: string): string {
    if (this.#prefix === '') return name;
    return name.startsWith(this.#prefix) ? name.slice(this.#prefix.length) : '';
  }

  #use(attributes: Record<string, string>, what: string): ObjectUse {
    const id = this.#id(attributes.objectid, what);
    return {
      id,
      path: attributes[this.#pathAttribute]?.replace(/^\//, '') ?? null,
      transform: parseTransform(attributes.transform, `${what}, object ${id},`),
    };
  }

  #id(text: string | undefined, what: string): string {
    if (text === undefined || text.trim() === '') this.#refuse(`${what.toLowerCase()} has no number`);
    return text.trim();
  }

  #coordinate(text: string | undefined): number {
    const value = Number(text);
    if (text === undefined || text === '' || !Number.isFinite(value)) {
      this.#refuse(`on line ${this.#parser.line} a vertex has the coordinate "${text ?? ''}"`);
    }
    return value;
  }

  #index(text: string | undefined): number {
    const value = Number(text);
    if (text === undefined || text === '' || !Number.isInteger(value) || value < 0 || value > 0xffffffff) {
      this.#refuse(`on line ${this.#parser.line} a triangle has the vertex number "${text ?? ''}"`);
    }
    return value;
  }

  #refuse(what: string): never {
    throw new MeshError(`${this.#name} cannot be read: ${what}.`, AGAIN);
  }
}

/** An object while it is read. */
class ObjectDraft {
  readonly components: ObjectUse[] = [];
  readonly #id: string;
  readonly #type: string;
  #positions = new Float64Array(48);
  #positionCount = 0;
  #triangles = new Uint32Array(48);
  #cornerCount = 0;

  constructor(id: string, type: string) {
    this.#id = id;
    this.#type = type;
  }

  addVertex(x: number, y: number, z: number): void {
    const at = this.#positionCount;
    if (at + 3 > this.#positions.length) {
      refuseTooMany(at / 3 + 1, 'vertices');
      const longer = new Float64Array(2 * this.#positions.length);
      longer.set(this.#positions);
      this.#positions = longer;
    }
    this.#positions[at] = x;
    this.#positions[at + 1] = y;
    this.#positions[at + 2] = z;
    this.#positionCount += 3;
  }

  addTriangle(a: number, b: number, c: number): void {
    const at = this.#cornerCount;
    if (at + 3 > this.#triangles.length) {
      refuseTooMany(at / 3 + 1, 'triangles');
      const longer = new Uint32Array(2 * this.#triangles.length);
      longer.set(this.#triangles);
      this.#triangles = longer;
    }
    this.#triangles[at] = a;
    this.#triangles[at + 1] = b;
    this.#triangles[at + 2] = c;
    this.#cornerCount += 3;
  }

  /** @throws MeshError when a triangle names a vertex that is not there. */
  finish(): ModelObject {
    const triangles = this.#triangles.slice(0, this.#cornerCount);
    const vertices = this.#positionCount / 3;
    for (let corner = 0; corner < triangles.length; corner++) {
      if (triangles[corner] < vertices) continue;
      throw new MeshError(
        `Triangle ${Math.floor(corner / 3) + 1} of object ${this.#id} uses vertex ${triangles[corner]}, and there are ${vertices} (numbered from 0).`,
        AGAIN,
      );
    }
    const positions = this.#positions.slice(0, this.#positionCount);
    return { id: this.#id, type: this.#type, positions, triangles, components: this.components };
  }
}

/** mm in the unit of a model file. */
export function documentScale(document: ModelDocument): number {
  return MILLIMETRES_IN[document.unit];
}
