declare module '@jscad/3mf-serializer' {
  import type { Geom3 } from '@jscad/modeling/src/geometries/types';

  /** Pieces of a 3MF file. */
  export function serialize(options: { readonly unit: string }, ...objects: readonly Geom3[]): ArrayBuffer[];
}
