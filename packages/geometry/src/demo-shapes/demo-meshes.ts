import { writeAsciiStl } from '../ascii-stl.ts';
import { writeBinaryStl } from '../binary-stl.ts';
import { writeThreeMf } from '../three-mf-writer.ts';
import { bracket } from './bracket.ts';
import { duct } from './duct.ts';
import { gear } from './gear.ts';
import { housing } from './housing.ts';
import { jig } from './jig.ts';

/** The invented parts of the example scenarios: file names and contents, equal on every machine. */
export function demoMeshes(): ReadonlyMap<string, Uint8Array> {
  return new Map([
    ['bracket.stl', writeBinaryStl(bracket())],
    ['duct.stl', writeBinaryStl(duct())],
    ['gear.3mf', writeThreeMf(gear(), 'gear')],
    ['housing.3mf', writeThreeMf(housing(), 'housing')],
    ['jig.stl', writeAsciiStl(jig(), 'jig')],
  ]);
}
