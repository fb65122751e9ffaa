import type { Mesh } from './mesh.ts';
import { BOUNDARY, WALL, nextOf, previousOf } from './surface.ts';

const faceOf = (e: number): number => Math.floor(e / 3);

/** Which triangles lie within the boundary ring: coming from outside, every crossing of the ring changes the side. */
function withinBoundary(mesh: Mesh): Uint8Array {
  const count = mesh.triangles.length / 3;
  const side = new Uint8Array(count).fill(2);
  const waiting: number[] = [];
  const visit = (face: number, inside: number): void => {
    if (side[face] !== 2) return;
    side[face] = inside;
    waiting.push(face);
  };
  const crosses = (e: number): number => ((mesh.lines[e]! & BOUNDARY) !== 0 ? 1 : 0);
  for (let e = 0; e < mesh.twins.length; e += 1) {
    if (mesh.twins[e]! < 0) visit(faceOf(e), crosses(e));
  }
  for (let face = waiting.pop(); face !== undefined; face = waiting.pop()) {
    for (let e = 3 * face; e < 3 * face + 3; e += 1) {
      const twin = mesh.twins[e]!;
      if (twin >= 0) visit(faceOf(twin), side[face]! ^ crosses(e));
    }
  }
  return side;
}

/** Pieces of ground between the walls: the triangles of each, for the triangles that are kept. */
function pieces(mesh: Mesh, kept: Uint8Array): number[][] {
  const seen = new Uint8Array(kept.length);
  const found: number[][] = [];
  for (let start = 0; start < kept.length; start += 1) {
    if (seen[start] === 1 || kept[start] !== 1) continue;
    seen[start] = 1;
    const piece = [start];
    for (let k = 0; k < piece.length; k += 1) {
      for (let e = 3 * piece[k]!; e < 3 * piece[k]! + 3; e += 1) {
        const twin = mesh.twins[e]!;
        if (twin < 0 || (mesh.lines[e]! & WALL) !== 0) continue;
        const other = faceOf(twin);
        if (seen[other] === 1 || kept[other] !== 1) continue;
        seen[other] = 1;
        piece.push(other);
      }
    }
    found.push(piece);
  }
  return found;
}

/**
 * Which triangles are ground (1): within the boundary, and in a piece where something was measured. A ring of walls
 * with nothing measured inside it, other than on the walls themselves, is a building.
 *
 * @param level measured level of each vertex, null where none
 */
export function groundFaces(mesh: Mesh, level: readonly (number | null)[], hasBoundary: boolean): Uint8Array {
  const kept = hasBoundary ? withinBoundary(mesh) : new Uint8Array(mesh.triangles.length / 3).fill(1);
  const onWall = new Uint8Array(mesh.x.length);
  mesh.lines.forEach((lines, e) => {
    if ((lines & WALL) !== 0) onWall[mesh.triangles[e]!] = 1; // in a ring every corner begins a half-edge
  });
  for (const piece of pieces(mesh, kept)) {
    const edges = piece.flatMap((face) => [3 * face, 3 * face + 1, 3 * face + 2]);
    const measured = edges.filter((e) => level[mesh.triangles[e]!] !== null);
    const enclosed = edges.every((e) => (mesh.lines[e]! & WALL) !== 0 || (mesh.twins[e]! >= 0 && kept[faceOf(mesh.twins[e]!)] === 1));
    const surveyed = enclosed ? measured.some((e) => onWall[mesh.triangles[e]!] === 0) : measured.length > 0;
    if (!surveyed) for (const face of piece) kept[face] = 0;
  }
  return kept;
}

/** Whether water crosses an edge from a kept triangle into another. */
export function isOpen(mesh: Mesh, kept: Uint8Array, e: number): boolean {
  const twin = mesh.twins[e]!;
  return twin >= 0 && (mesh.lines[e]! & WALL) === 0 && kept[faceOf(twin)] === 1;
}

/**
 * Cuts the mesh along the walls: every fan of kept triangles around a vertex gets a vertex of its own.
 *
 * @returns for each half-edge of a kept triangle the number of its new vertex (else -1), and the old vertex of each new one
 */
export function cutVertices(mesh: Mesh, kept: Uint8Array): { readonly corner: Int32Array; readonly old: number[] } {
  const corner = new Int32Array(mesh.triangles.length).fill(-1);
  const old: number[] = [];
  for (let e = 0; e < corner.length; e += 1) {
    if (kept[faceOf(e)] !== 1 || corner[e] !== -1) continue;
    const vertex = old.length;
    old.push(mesh.triangles[e]!);
    for (let at = e; corner[at] === -1; at = mesh.twins[previousOf(at)]!) {
      corner[at] = vertex;
      if (!isOpen(mesh, kept, previousOf(at))) break;
    }
    for (let at = e; isOpen(mesh, kept, at); ) {
      at = nextOf(mesh.twins[at]!);
      if (corner[at] !== -1) break;
      corner[at] = vertex;
    }
  }
  return { corner, old };
}
