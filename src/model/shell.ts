import type { Vec2, Vec3 } from '../base/vector.ts';
import { inRing, signedArea } from './ring.ts';
import type { Ring } from './structure.ts';
import { triangulate } from './triangulate.ts';

/** Corners and triangles of a closed mesh, as in `Solid`. */
export interface Mesh {
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
  /** Of a mesh made of sheets, as in `Solid`. */
  readonly sheets?: Float64Array;
}

/**
 * A closed surface while it is being put together from flat faces. Equal coordinates are one corner, so faces that
 * are given the same corners share their edges; `cap` closes what is still open at a height.
 */
export class Shell {
  readonly #positions: number[] = [];
  readonly #triangles: number[] = [];
  /** Corner ids by a whole number made from their coordinates; few share one. */
  readonly #byHash = new Map<number, number[]>();
  /** Directed face edges whose other side has no face yet: for each corner, where they lead. */
  readonly #open: number[][] = [];
  #broken = false;
  /** Goes with each triangle of the faces that follow; `marks` tells. */
  mark = 0;
  readonly #marks: number[] = [];

  /** The id of a corner. */
  corner(x: number, y: number, z: number): number {
    const hash = hashOf(x, y, z);
    const there = this.#byHash.get(hash);
    const known = there?.find((id) => this.x(id) === x && this.y(id) === y && this.z(id) === z);
    if (known !== undefined) return known;
    const id = this.#positions.length / 3;
    this.#positions.push(x, y, z);
    this.#open.push([]);
    if (there) there.push(id);
    else this.#byHash.set(hash, [id]);
    return id;
  }

  readonly x = (id: number): number => this.#positions[3 * id] ?? 0;
  readonly y = (id: number): number => this.#positions[3 * id + 1] ?? 0;
  readonly z = (id: number): number => this.#positions[3 * id + 2] ?? 0;

  /**
   * Adds a flat face: corner ids of its outer loop, counter-clockwise seen from outside, then of its holes, clockwise.
   */
  face(...loops: readonly (readonly number[])[]): void {
    for (const loop of loops) {
      let from = loop[loop.length - 1] ?? 0;
      for (const to of loop) {
        this.#addEdge(from, to);
        from = to;
      }
    }
    const [outer = []] = loops;
    const normal = this.#normal(outer);
    if (loops.length > 1 || !this.#addPlain(outer, normal)) {
      const [u, v] = this.#flat(normal);
      const triangles = triangulate(loops, u, v);
      if (!triangles) this.#broken = true;
      else for (const id of triangles) this.#triangles.push(id);
    }
    while (this.#marks.length < this.#triangles.length / 3) this.#marks.push(this.mark);
  }

  /** The mark of each triangle. */
  marks(): readonly number[] {
    return this.#marks;
  }

  /** Closes everything that is open at height `z` with level faces whose outside is up or down. */
  cap(z: number, outside: 'up' | 'down'): void {
    const next = new Map<number, number>();
    this.#open.forEach((ends, from) => {
      if (this.z(from) !== z) return;
      for (const to of ends) {
        if (this.z(to) !== z) continue;
        if (next.has(to)) this.#broken = true;
        next.set(to, from);
      }
    });
    const loops = loopsOf(next);
    if (!loops) {
      this.#broken = true;
      return;
    }
    for (const loopsOfFace of this.#nested(loops, outside)) this.face(...loopsOfFace);
  }

  /** The finished mesh; null when the surface did not close, which no valid input should bring about. */
  mesh(): Mesh | null {
    if (this.#broken || this.#open.some((ends) => ends.length > 0) || !this.#matches()) return null;
    return { positions: Float64Array.from(this.#positions), triangles: Uint32Array.from(this.#triangles) };
  }

  /** Adds a triangle or a quad that turns left at each corner; most faces are one. */
  #addPlain(loop: readonly number[], normal: Vec3): boolean {
    const [a, b, c, d] = loop;
    if (a === undefined || b === undefined || c === undefined) return false;
    if (loop.length === 3) {
      this.#triangles.push(a, b, c);
      return true;
    }
    if (d === undefined || loop.length !== 4) return false;
    const isConvex =
      this.#turnsLeft(a, b, c, normal) &&
      this.#turnsLeft(b, c, d, normal) &&
      this.#turnsLeft(c, d, a, normal) &&
      this.#turnsLeft(d, a, b, normal);
    if (isConvex) this.#triangles.push(a, b, c, a, c, d);
    return isConvex;
  }

  #turnsLeft(a: number, b: number, c: number, [nx, ny, nz]: Vec3): boolean {
    const [px, py, pz] = [this.x(b) - this.x(a), this.y(b) - this.y(a), this.z(b) - this.z(a)];
    const [qx, qy, qz] = [this.x(c) - this.x(b), this.y(c) - this.y(b), this.z(c) - this.z(b)];
    return (py * qz - pz * qy) * nx + (pz * qx - px * qz) * ny + (px * qy - py * qx) * nz > 0;
  }

  #addEdge(from: number, to: number): void {
    const back = this.#open[to];
    const ends = this.#open[from];
    if (!back || !ends)
      throw new RangeError(`a face with corners ${from} and ${to}, which are not both there`);
    const at = back.indexOf(from);
    if (at >= 0) {
      back.splice(at, 1);
      return;
    }
    if (ends.includes(to)) this.#broken = true;
    ends.push(to);
  }

  /** Whether each directed edge of a triangle is there once, and once the other way. */
  #matches(): boolean {
    const all = this.#triangles;
    const ends: number[][] = this.#open.map(() => []);
    const add = (from: number, to: number): boolean => {
      const list = ends[from];
      if (!list || list.includes(to)) return false;
      list.push(to);
      return true;
    };
    for (let t = 0; t < all.length; t += 3) {
      const [a, b, c] = [all[t] ?? 0, all[t + 1] ?? 0, all[t + 2] ?? 0];
      if (!add(a, b) || !add(b, c) || !add(c, a)) return false;
    }
    return ends.every((list, from) => list.every((to) => ends[to]?.includes(from)));
  }

  /** The direction that a loop's area faces, not of length 1. */
  #normal(loop: readonly number[]): Vec3 {
    let [nx, ny, nz] = [0, 0, 0];
    const origin = loop[0] ?? 0;
    for (let k = 1; k + 1 < loop.length; k++) {
      const [b, c] = [loop[k] ?? 0, loop[k + 1] ?? 0];
      const [bx, by, bz] = [
        this.x(b) - this.x(origin),
        this.y(b) - this.y(origin),
        this.z(b) - this.z(origin),
      ];
      const [cx, cy, cz] = [
        this.x(c) - this.x(origin),
        this.y(c) - this.y(origin),
        this.z(c) - this.z(origin),
      ];
      nx += by * cz - bz * cy;
      ny += bz * cx - bx * cz;
      nz += bx * cy - by * cx;
    }
    return [nx, ny, nz];
  }

  /** Two of the three coordinates in which a face with this normal runs counter-clockwise and is widest. */
  #flat(normal: Vec3): [u: (id: number) => number, v: (id: number) => number] {
    const [nx, ny, nz] = normal;
    const [ax, ay, az] = [Math.abs(nx), Math.abs(ny), Math.abs(nz)];
    const [u, v, n] =
      az >= ax && az >= ay
        ? ([this.x, this.y, nz] as const)
        : ax >= ay
          ? ([this.y, this.z, nx] as const)
          : ([this.z, this.x, ny] as const);
    return n >= 0 ? [u, v] : [v, u];
  }

  /** Sorts loops into faces: each hole goes to the smallest outer loop around it. */
  #nested(loops: readonly (readonly number[])[], outside: 'up' | 'down'): (readonly number[])[][] {
    const sign = outside === 'up' ? 1 : -1;
    const point = (id: number): Vec2 => [this.x(id), this.y(id)];
    const rings = loops.map((ids) => {
      const ring: Ring = ids.map(point);
      return { ids, ring, area: sign * signedArea(ring) };
    });
    const faces = rings.filter(({ area }) => area > 0).map((outer) => ({ outer, loops: [outer.ids] }));
    for (const hole of rings.filter(({ area }) => !(area > 0))) {
      const [corner] = hole.ring;
      const around = faces
        .filter(({ outer }) => corner && outer.area > -hole.area && inRing(corner, outer.ring))
        .sort((a, b) => a.outer.area - b.outer.area)[0];
      if (around) around.loops.push(hole.ids);
      else this.#broken = true;
    }
    return faces.map((face) => face.loops);
  }
}

/** A whole number that equal places share. */
const hashOf = (x: number, y: number, z: number): number =>
  (Math.imul(x * 1024, 73_856_093) ^ Math.imul(y * 1024, 19_349_663) ^ Math.imul(z * 1024, 83_492_791)) &
  0x3fffffff;

/** Closed loops from a map of each corner to the next; null when one runs into nothing. */
function loopsOf(next: Map<number, number>): number[][] | null {
  const loops: number[][] = [];
  for (const start of next.keys()) {
    if (!next.has(start)) continue;
    const loop: number[] = [];
    let id: number | undefined = start;
    while (id !== undefined && next.has(id)) {
      loop.push(id);
      const following = next.get(id);
      next.delete(id);
      id = following;
    }
    if (id !== start) return null;
    loops.push(loop);
  }
  return loops;
}

/** Several closed meshes as one, corners not shared. */
export function joinMeshes(meshes: readonly Mesh[]): Mesh {
  const [only] = meshes;
  if (only && meshes.length === 1) return only;
  const positions: number[] = [];
  const triangles: number[] = [];
  const sheets: number[] = [];
  for (const mesh of meshes) {
    const start = positions.length / 3;
    for (const value of mesh.positions) positions.push(value);
    for (const id of mesh.triangles) triangles.push(id + start);
    for (const value of mesh.sheets ?? []) sheets.push(value);
  }
  const joined = { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
  return sheets.length === triangles.length ? { ...joined, sheets: Float64Array.from(sheets) } : joined;
}
