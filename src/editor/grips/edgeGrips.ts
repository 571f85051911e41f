import type { Vec2 } from '../../base/vector.ts';
import { signedArea } from '../../model/ring.ts';
import { heading, rightOf, span } from '../../model/segment.ts';
import type { PlacedGrip } from './placedGrip.ts';
import { edgesOf, type Shape } from './shapeOf.ts';

interface Owner {
  readonly id: string;
  readonly name: string;
  readonly locked: boolean;
}

/** The corners and edges of a shape, on its foot. */
export const edgeGrips = (of: Owner, shape: Shape): PlacedGrip[] => [
  ...shape.corners.map(([x, y], index): PlacedGrip => ({
    grip: { part: 'corner', structure: of.id, index },
    at: [x, y, shape.base],
    way: 'ground',
    facing: null,
    bar: null,
    cursor: 'move',
    words: `Corner ${index + 1} of ${of.name}`,
    locked: of.locked,
  })),
  ...edgesOf(shape).flatMap(([a, b], index): PlacedGrip[] => {
    if (!(span(a, b) > 0)) return [];
    const [x, y] = heading(a, b);
    const out = outOf(shape, [a, b]);
    return [
      {
        grip: { part: 'edge', structure: of.id, index },
        at: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, shape.base],
        way: { along: [out[0], out[1], 0] },
        facing: [out[0], out[1], 0],
        bar: [x, y, 0],
        cursor: 'resize',
        words: `Edge ${index + 1} of ${of.name}`,
        locked: of.locked,
      },
    ];
  }),
];

/** Which way is out at an edge: on the right of it where the ring runs counter-clockwise or the line is open. */
export function outOf(
  { corners, closed }: Pick<Shape, 'corners' | 'closed'>,
  [a, b]: readonly [Vec2, Vec2],
): Vec2 {
  const right = rightOf(heading(a, b));
  return closed && signedArea(corners) < 0 ? [0 - right[0], 0 - right[1]] : right;
}
