import { cos, sin } from '../../base/angle.ts';
import type { Vec2 } from '../../base/vector.ts';
import type { Structure } from '../../model/structure.ts';

/** A structure's corners as they were drawn, with the heights between which it stands, m above z = 0. */
export interface Shape {
  readonly corners: readonly Vec2[];
  /** Its last corner is joined to its first. */
  readonly closed: boolean;
  readonly base: number;
  readonly top: number;
}

/** The corners of what is drawn by corners; null for a tree and a vehicle, which stand at a place. */
export function shapeOf(structure: Structure): Shape | null {
  switch (structure.kind) {
    case 'building':
    case 'block': {
      const { outline, base, height } = structure;
      return { corners: outline, closed: true, base, top: base + height };
    }
    case 'barrier': {
      const { line, closed, base, height } = structure;
      return { corners: line, closed, base, top: base + height };
    }
    case 'canopy': {
      const { outline, top, thickness } = structure;
      return { corners: outline, closed: true, base: top - thickness, top };
    }
    case 'tree':
    case 'vehicle':
      return null;
  }
}

/** The edges of a shape, each by its two corners; those of an open line are one fewer than its corners. */
export function edgesOf({ corners, closed }: Pick<Shape, 'corners' | 'closed'>): (readonly [Vec2, Vec2])[] {
  return corners.flatMap((corner, index) => {
    const next = corners[index + 1] ?? (closed ? corners[0] : undefined);
    return next ? [[corner, next] as const] : [];
  });
}

/** Corners around what a structure covers of the ground: an outline, a line, or a rectangle about a place. */
export function groundCornersOf(structure: Structure): readonly Vec2[] {
  const shape = shapeOf(structure);
  if (shape) return shape.corners;
  if (structure.kind === 'tree') {
    const { at, crownRadius: r } = structure;
    return [
      [at[0] - r, at[1] - r],
      [at[0] + r, at[1] - r],
      [at[0] + r, at[1] + r],
      [at[0] - r, at[1] + r],
    ];
  }
  return structure.kind === 'vehicle' ? vehicleCorners(structure) : [];
}

/** Front left, front right, rear right, rear left. */
function vehicleCorners({
  at,
  heading,
  length,
  width,
}: Pick<Extract<Structure, { kind: 'vehicle' }>, 'at' | 'heading' | 'length' | 'width'>): Vec2[] {
  const [ahead, right]: [Vec2, Vec2] = [
    [sin(heading), cos(heading)],
    [cos(heading), 0 - sin(heading)],
  ];
  return (
    [
      [1, -1],
      [1, 1],
      [-1, 1],
      [-1, -1],
    ] as const
  ).map(([along, across]) => [
    at[0] + (ahead[0] * along * length) / 2 + (right[0] * across * width) / 2,
    at[1] + (ahead[1] * along * length) / 2 + (right[1] * across * width) / 2,
  ]);
}

/** The middle of the box around points; the origin where there are none. */
export function middleOf(points: readonly Vec2[]): Vec2 {
  if (points.length === 0) return [0, 0];
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
}
