import type { Plane } from '../base/plane.ts';
import { SAME_POINT } from '../base/tolerance.ts';
import { dot, subtract, type Vec3 } from '../base/vector.ts';
import { windingNumber } from '../model/inside.ts';
import type { Solid } from '../model/solid.ts';
import type { TargetBox } from './casters.ts';
import { EVERYWHERE, PERHAPS } from './imageBounds.ts';
import { OUT, WITHIN, type Asked, type Judge, type Judged } from './judge.ts';

/**
 * How far above its plane a target is asked for, m: a face that it lies in is below it. Faces are met a little to either side,
 * since the sum of solid angles is not sure nearer.
 */
const ABOVE = SAME_POINT;
const HAIR = 1e-7;
/** Rounding of coordinates, m. */
const ROUNDING = 1e-9;

/** Which solids hold targets, box by box. Coordinates are those of a plane and the height above it, m. */
export class SolidsAt {
  readonly all: readonly number[];
  private readonly solids: readonly Solid[];
  /** Nine numbers a triangle, and its plane: normal and offset. */
  private readonly corners: Float64Array;
  private readonly planes: Float64Array;

  constructor(solids: readonly Solid[], plane: Plane) {
    const turned = (point: Vec3): Vec3 => {
      const away = subtract(point, plane.origin);
      return [dot(away, plane.u), dot(away, plane.v), dot(away, plane.normal)];
    };
    this.solids = solids.map((solid) => {
      const positions = new Float64Array(solid.positions.length);
      for (let at = 0; at < positions.length; at += 3)
        positions.set(
          turned([solid.positions[at] ?? 0, solid.positions[at + 1] ?? 0, solid.positions[at + 2] ?? 0]),
          at,
        );
      return { ...solid, positions };
    });
    const count = solids.reduce((sum, { triangles }) => sum + triangles.length / 3, 0);
    this.corners = new Float64Array(count * 9);
    this.planes = new Float64Array(count * 4);
    let to = 0;
    for (const { positions, triangles } of this.solids)
      for (const corner of triangles)
        for (let axis = 0; axis < 3; axis += 1) this.corners[to++] = positions[corner * 3 + axis] ?? 0;
    for (let face = 0; face < count; face += 1) this.layPlane(face);
    this.all = Array.from({ length: count }, (_, face) => face);
  }

  private layPlane(face: number): void {
    const c = (k: number): number => this.corners[face * 9 + k] ?? 0;
    const [ux, uy, uz, vx, vy, vz] = [
      c(3) - c(0),
      c(4) - c(1),
      c(5) - c(2),
      c(6) - c(0),
      c(7) - c(1),
      c(8) - c(2),
    ];
    const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    const size = Math.hypot(nx, ny, nz) || 1;
    this.planes.set([nx / size, ny / size, nz / size, -(nx * c(0) + ny * c(1) + nz * c(2)) / size], face * 4);
  }

  /** Those of some faces that can pass through a box of targets. */
  facesIn(asked: readonly number[], { x, y, z, hx, hy, hz }: TargetBox): readonly number[] {
    const { corners, planes } = this;
    const up = z + ABOVE;
    return asked.filter((face) => {
      for (let axis = 0; axis < 3; axis += 1) {
        const [a, b, c] = [
          corners[face * 9 + axis] ?? 0,
          corners[face * 9 + 3 + axis] ?? 0,
          corners[face * 9 + 6 + axis] ?? 0,
        ];
        const [middle, half] = axis === 0 ? [x, hx] : axis === 1 ? [y, hy] : [up, hz];
        const room = half + (axis === 2 ? HAIR : ROUNDING);
        if (Math.max(a, b, c) < middle - room || Math.min(a, b, c) > middle + room) return false;
      }
      const [a, b, c, k] = [
        planes[face * 4] ?? 0,
        planes[face * 4 + 1] ?? 0,
        planes[face * 4 + 2] ?? 0,
        planes[face * 4 + 3] ?? 0,
      ];
      const reach = Math.abs(a) * hx + Math.abs(b) * hy + Math.abs(c) * (hz + HAIR) + ROUNDING;
      return Math.abs(a * x + b * y + c * up + k) <= reach;
    });
  }

  /** Whether the middle of a box through which no face passes lies in a solid. */
  holds({ x, y, z }: TargetBox): boolean {
    return this.solids.some((solid) => {
      const { positions } = solid;
      const point: Vec3 = [x, y, z + ABOVE];
      return spans(positions, point) && windingNumber(solid, point) > 0.5;
    });
  }
}

/** Whether the box around some corners holds a point. */
function spans(positions: Float64Array, point: Vec3): boolean {
  for (let axis = 0; axis < 3; axis += 1) {
    const value = point[axis] ?? 0;
    let [isAbove, isBelow] = [false, false];
    for (let at = axis; at < positions.length && !(isAbove && isBelow); at += 3) {
      const corner = positions[at] ?? 0;
      if (corner <= value) isBelow = true;
      if (corner >= value) isAbove = true;
    }
    if (!isAbove || !isBelow) return false;
  }
  return true;
}

/** Judges boxes by what lies inside solids alone: OUT or WITHIN. */
export class InsideJudge implements Judge {
  readonly all: Asked;
  private readonly inside: SolidsAt;

  constructor(inside: SolidsAt) {
    this.inside = inside;
    this.all = {
      framed: EVERYWHERE,
      within: PERHAPS,
      faces: inside.all,
      solids: [],
      screens: [],
      sheets: [],
    };
  }

  judge(box: TargetBox, asked: Asked): Judged {
    const faces = this.inside.facesIn(asked.faces, box);
    if (faces.length > 0) return { labels: [OUT, WITHIN], left: { ...asked, faces } };
    return { labels: [this.inside.holds(box) ? WITHIN : OUT], left: asked };
  }
}
