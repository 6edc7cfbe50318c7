import { type HalfEdges, halfEdges, nextSide, visitEdges } from './half-edges.ts';
import { withLids } from './lids.ts';
import type { Mesh } from './mesh.ts';
import { nearVerticesJoined } from './near-vertices.ts';
import { solidOf } from './solid.ts';
import { insideOut, triangleArea, turnedAlike } from './turned-triangles.ts';
import { VertexTable } from './vertex-table.ts';

/**
 * What keeps a mesh from being the skin of a solid: in a closed mesh every edge lies on two triangles, which run
 * along it in opposite directions.
 */
export interface MeshDefects {
  /** Edges of one triangle only. */
  readonly openEdges: number;
  /** Edges of two triangles that face opposite ways. */
  readonly inconsistentEdges: number;
  /** Edges of three or more triangles. */
  readonly nonManifoldEdges: number;
  readonly zeroAreaTriangles: number;
  /** Triangles that are there once more. */
  readonly duplicateTriangles: number;
  /** All triangles faced inwards. */
  readonly inverted: boolean;
}

/** A mesh made fit for measuring, with what was wrong and what was done about it. */
export interface MeshInspection {
  /** Closed, consistent and facing outwards as far as it could be mended. */
  readonly mesh: Mesh;
  /** Of the mesh as it was given. */
  readonly vertices: number;
  readonly edges: number;
  readonly triangles: number;
  readonly defects: MeshDefects;
  /** One whole sentence for every defect that touches what is measured. */
  readonly warnings: readonly string[];
  /** Whole sentences on what was mended without an effect on what is measured. */
  readonly notes: readonly string[];
}

/**
 * Looks for defects of a mesh whose equal vertices are joined, and mends what can be mended for measuring: corners of
 * open edges that nearly meet are joined, doubled triangles are taken out, flipped ones turned, holes closed by lids,
 * and a mesh that faces inwards is turned inside out. The mesh that is given stays as it is.
 */
export function inspectMesh(given: Mesh): MeshInspection {
  const warnings: string[] = [];
  const notes: string[] = [];
  const whole = withoutCollapsed(given);
  let mesh = whole.mesh;
  let edges = edgesOf(mesh);
  let counts = countEdges(edges);
  if (counts.open > 0) {
    const near = nearVerticesJoined(mesh, verticesOfOpenEdges(mesh, edges));
    if (near.joined > 0) {
      mesh = withoutCollapsed(near.mesh).mesh;
      edges = edgesOf(mesh);
      counts = countEdges(edges);
      notes.push(
        `${plural(near.joined, 'corner')} on open edges within ${Number(near.distance.toPrecision(2))} mm of another one ${near.joined === 1 ? 'was' : 'were'} joined with it.`,
      );
    }
  }
  const found = counts;
  if (whole.zeroArea > 0) {
    notes.push(`${plural(whole.zeroArea, 'triangle')} without area: no measure changes.`);
  }
  let duplicateTriangles = 0;
  if (counts.nonManifold > 0 || counts.inconsistent > 0) {
    const single = withoutDuplicates(mesh, edges);
    duplicateTriangles = single.duplicates;
    if (duplicateTriangles > 0) {
      mesh = single.mesh;
      edges = edgesOf(mesh);
      counts = countEdges(edges);
      warnings.push(
        `${plural(duplicateTriangles, 'triangle')} ${duplicateTriangles === 1 ? 'is' : 'are'} there more than once (${plural(found.nonManifold, 'edge')} on three or more triangles): each was measured once.`,
      );
    }
  }
  if (counts.inconsistent > 0) {
    const alike = turnedAlike(mesh, edges);
    mesh = { positions: mesh.positions, triangles: alike.triangles };
    edges = edgesOf(mesh);
    const left = countEdges(edges).inconsistent;
    warnings.push(
      `${plural(counts.inconsistent, 'edge')} between flipped triangles: ${plural(alike.turned, 'triangle')} faced against ${alike.turned === 1 ? 'its' : 'their'} neighbours and ${alike.turned === 1 ? 'was' : 'were'} turned for measuring.${left > 0 ? ` ${plural(left, 'edge')} could not be mended: volume and supports are uncertain.` : ''}`,
    );
  }
  if (counts.nonManifold > 0) {
    warnings.push(
      counts.unbalanced > 0
        ? `${plural(counts.nonManifold, 'edge')} on three or more triangles: inside and outside are not clear there, volume and supports may be wrong.`
        : `${plural(counts.nonManifold, 'edge')} where surfaces touch (four or more triangles): the volume holds, the part may be weak there.`,
    );
  }
  const lidded = withLids(mesh, edges);
  mesh = lidded.mesh;
  if (counts.open > 0) {
    warnings.push(
      `${plural(counts.open, 'open edge')}: the surface has ${plural(lidded.holes, 'hole')}, measured as if closed by a lid across the rim. Volume, surface and supports are estimates.`,
    );
  }
  const inverted = solidOf(mesh).volume < 0;
  if (inverted) {
    mesh = { positions: mesh.positions, triangles: insideOut(mesh.triangles) };
    notes.push('All triangles faced inwards: the mesh was turned inside out for measuring.');
  }
  return {
    mesh,
    vertices: usedVertices(given),
    edges: found.edges,
    triangles: given.triangles.length / 3,
    defects: {
      openEdges: found.open,
      inconsistentEdges: found.inconsistent,
      nonManifoldEdges: found.nonManifold,
      zeroAreaTriangles: whole.zeroArea,
      duplicateTriangles,
      inverted,
    },
    warnings,
    notes,
  };
}

interface EdgeCounts {
  readonly edges: number;
  readonly open: number;
  readonly inconsistent: number;
  readonly nonManifold: number;
  /** Of the edges of three or more triangles those that more triangles run along in one direction. */
  readonly unbalanced: number;
}

function countEdges(halfEdges: HalfEdges): EdgeCounts {
  let edges = 0;
  let open = 0;
  let inconsistent = 0;
  let nonManifold = 0;
  let unbalanced = 0;
  visitEdges(halfEdges, (from, to, forward) => {
    edges++;
    const uses = to - from;
    if (uses === 2) {
      if (forward !== 1) inconsistent++;
    } else if (uses === 1) {
      open++;
    } else {
      nonManifold++;
      if (2 * forward !== uses) unbalanced++;
    }
  });
  return { edges, open, inconsistent, nonManifold, unbalanced };
}

function edgesOf(mesh: Mesh): HalfEdges {
  return halfEdges(mesh.triangles, mesh.positions.length / 3);
}

/** Takes out triangles with two equal corners; those with corners on one line hold others together and stay. */
function withoutCollapsed(mesh: Mesh): { readonly mesh: Mesh; readonly zeroArea: number } {
  const { positions, triangles } = mesh;
  let zeroArea = 0;
  let collapsed = 0;
  const isCollapsed = (corner: number): boolean => {
    const a = triangles[corner];
    const b = triangles[corner + 1];
    const c = triangles[corner + 2];
    return a === b || b === c || c === a;
  };
  for (let corner = 0; corner < triangles.length; corner += 3) {
    if (isCollapsed(corner)) collapsed++;
    else if (triangleArea(mesh, corner / 3) === 0) zeroArea++;
  }
  if (collapsed === 0) return { mesh, zeroArea };
  const kept = new Uint32Array(triangles.length - 3 * collapsed);
  let at = 0;
  for (let corner = 0; corner < triangles.length; corner += 3) {
    if (isCollapsed(corner)) continue;
    kept.set(triangles.subarray(corner, corner + 3), at);
    at += 3;
  }
  return { mesh: { positions, triangles: kept }, zeroArea: zeroArea + collapsed };
}

/** Takes out triangles whose corners, in the same turn, are those of an earlier one; looks only where edges are bad. */
function withoutDuplicates(
  mesh: Mesh,
  edges: HalfEdges,
): { readonly mesh: Mesh; readonly duplicates: number } {
  const { positions, triangles } = mesh;
  const suspects = new Uint8Array(triangles.length / 3);
  visitEdges(edges, (from, to, forward) => {
    if (to - from < 2 || (to - from === 2 && forward === 1)) return;
    for (let at = from; at < to; at++) suspects[Math.floor(edges.sides[at] / 3)] = 1;
  });
  const known = new VertexTable();
  let distinct = 0;
  const kept: number[] = [];
  for (let triangle = 0; triangle < suspects.length; triangle++) {
    const corners = [
      triangles[3 * triangle],
      triangles[3 * triangle + 1],
      triangles[3 * triangle + 2],
    ] as const;
    if (suspects[triangle] === 1) {
      const lowest = Math.min(...corners);
      const first = corners.indexOf(lowest);
      if (known.add(lowest, corners[(first + 1) % 3], corners[(first + 2) % 3]) < distinct) continue;
      distinct++;
    }
    kept.push(...corners);
  }
  const duplicates = triangles.length / 3 - kept.length / 3;
  return { mesh: { positions, triangles: Uint32Array.from(kept) }, duplicates };
}

function verticesOfOpenEdges(mesh: Mesh, edges: HalfEdges): number[] {
  const vertices = new Set<number>();
  visitEdges(edges, (from, to) => {
    if (to - from !== 1) return;
    const side = edges.sides[from];
    vertices.add(mesh.triangles[side]);
    vertices.add(mesh.triangles[nextSide(side)]);
  });
  return [...vertices];
}

function usedVertices(mesh: Mesh): number {
  const used = new Uint8Array(mesh.positions.length / 3);
  for (const vertex of mesh.triangles) used[vertex] = 1;
  let count = 0;
  for (const flag of used) count += flag;
  return count;
}

function plural(count: number, noun: string): string {
  return `${count.toLocaleString('en-GB')} ${noun}${count === 1 ? '' : 's'}`;
}
