import type { Vec2, Vec3 } from '../../base/vector.ts';
import type { Opening, Structure } from '../../model/structure.ts';
import { windNames } from '../../model/wind.ts';
import type { Landmark } from './picture.ts';

/** A fixed place of a plan before any camera looks at it. */
export interface FixedPlace {
  readonly id: string;
  readonly name: string;
  readonly kind: Landmark['kind'];
  readonly structure: string;
  readonly place: Vec3;
}

/**
 * The places of structures that stay where they are and that an installer finds in a picture: jambs, corners of buildings,
 * ends of walls and fences, trunks. Vehicles move.
 * @param eye a wall's jambs and ends are those of its side that is turned to it
 */
export function fixedPlaces(structures: readonly Structure[], eye: Vec3): FixedPlace[] {
  return structures.flatMap((structure): FixedPlace[] => {
    switch (structure.kind) {
      case 'building':
        return [
          ...openingsOf(structure, structure.outline, true, 0, eye),
          ...cornersOf(structure, structure.outline, structure.base, [
            ['at the ground', 0],
            ['at the top of the wall', structure.height],
          ]),
        ];
      case 'block':
        return cornersOf(structure, structure.outline, structure.base, [
          ['at the ground', 0],
          ['at its top', structure.height],
        ]);
      case 'canopy':
        return cornersOf(structure, structure.outline, structure.top, [['at its top', 0]]);
      case 'barrier':
        return [
          ...openingsOf(structure, structure.line, structure.closed, structure.thickness / 2, eye),
          ...endsOf(structure, eye),
        ];
      case 'tree':
        return [
          {
            id: `${structure.id} trunk`,
            name: `${structure.name}, foot of the trunk`,
            kind: 'trunk',
            structure: structure.id,
            place: towards(
              [structure.at[0], structure.at[1], structure.base],
              eye,
              structure.trunkDiameter / 2,
            ),
          },
        ];
      case 'vehicle':
        return [];
    }
  });
}

type Host = Extract<Structure, { readonly openings: readonly Opening[] }>;

/** Both jambs of each opening, foot and head; left and right as one stands before them on the side of the lens. */
function openingsOf(
  host: Host,
  corners: readonly Vec2[],
  closed: boolean,
  half: number,
  eye: Vec3,
): FixedPlace[] {
  return host.openings.flatMap((opening): FixedPlace[] => {
    const a = corners[opening.face];
    const b = corners[closed ? (opening.face + 1) % corners.length : opening.face + 1];
    if (!a || !b) return [];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length === 0) return [];
    const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
    // Right of the edge is outside; of a wall that stands free the side of the lens.
    const isRight = (eye[0] - a[0]) * uy - (eye[1] - a[1]) * ux > 0;
    const off = isRight ? half : -half;
    const at = (s: number, z: number): Vec3 => [a[0] + s * ux + off * uy, a[1] + s * uy - off * ux, z];
    const foot = host.base + opening.sill;
    const leaf = opening.kind === 'gate' ? 'post' : 'jamb';
    return ([0, 1] as const).flatMap((end) => {
      const s = opening.along + end * opening.width;
      // Seen from outside a building's edge runs from left to right; from inside the other way.
      const side = (end === 0) === isRight ? 'left' : 'right';
      return (['foot', 'head'] as const).map((which): FixedPlace => ({
        id: `${opening.id} ${end} ${which}`,
        name: `${opening.name}, ${side} ${leaf}, ${which === 'foot' ? 'foot' : 'top'}`,
        kind: leaf,
        structure: host.id,
        place: at(s, which === 'foot' ? foot : foot + opening.height),
      }));
    });
  });
}

function cornersOf(
  { id, name }: Structure,
  outline: readonly Vec2[],
  base: number,
  levels: readonly (readonly [words: string, above: number])[],
): FixedPlace[] {
  const middle = middleOf(outline);
  const winds = windNames(outline.map(([x, y]): Vec2 => [x - middle[0], y - middle[1]]));
  return outline.flatMap(([x, y], k) =>
    levels.map(([words, above]): FixedPlace => ({
      id: `${id} ${k} ${above}`,
      name: `${name}, ${winds[k] ?? ''} corner ${words}`,
      kind: 'corner',
      structure: id,
      place: [x, y, base + above],
    })),
  );
}

/** The two ends of a wall or fence, foot and top; where it runs round there are none. */
function endsOf(barrier: Extract<Structure, { readonly kind: 'barrier' }>, eye: Vec3): FixedPlace[] {
  const { id, name, line, closed, base, height, thickness } = barrier;
  const [first, last] = [line[0], line.at(-1)];
  if (closed || !first || !last || line.length < 2) return [];
  const middle: Vec2 = [(first[0] + last[0]) / 2, (first[1] + last[1]) / 2];
  const winds = windNames([first, last].map(([x, y]): Vec2 => [x - middle[0], y - middle[1]]));
  return [first, last].flatMap((end, k) => {
    const next = (k === 0 ? line[1] : line.at(-2)) ?? end;
    const [dx, dy] = [next[0] - end[0], next[1] - end[1]];
    const length = Math.hypot(dx, dy);
    if (length === 0) return [];
    // The corner of its end on the side of the lens.
    const isLeft = dx * (eye[1] - end[1]) - dy * (eye[0] - end[0]) > 0;
    const off = ((isLeft ? 1 : -1) * thickness) / 2 / length;
    const [x, y] = [end[0] - dy * off, end[1] + dx * off];
    return (['foot', 'top'] as const).map((which): FixedPlace => ({
      id: `${id} end ${k} ${which}`,
      name: `${name}, ${winds[k] ?? ''} end, ${which}`,
      kind: 'corner',
      structure: id,
      place: [x, y, base + (which === 'top' ? height : 0)],
    }));
  });
}

function middleOf(outline: readonly Vec2[]): Vec2 {
  const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)];
  return [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
}

/** The place moved over ground towards another. */
function towards([x, y, z]: Vec3, eye: Vec3, by: number): Vec3 {
  const [dx, dy] = [eye[0] - x, eye[1] - y];
  const far = Math.hypot(dx, dy);
  return far === 0 ? [x, y, z] : [x + (dx / far) * by, y + (dy / far) * by, z];
}

/** Nearer to the picture's edge than this, per cent, a landmark may be cut off by a small error of aim. */
const EDGE = 3;

/**
 * The few landmarks to aim by: seen, off the edges, and spread over the picture, since two that lie close together fix
 * neither roll nor lens. The first is the one that is found most easily, each next the one farthest from those taken.
 */
export function chosenLandmarks(landmarks: readonly Landmark[], count: number): readonly Landmark[] {
  const fit = landmarks.filter(
    ({ seen, left, top }) => seen && left > EDGE && left < 100 - EDGE && top > EDGE && top < 100 - EDGE,
  );
  const taken: Landmark[] = [];
  const worth = ({ kind }: Landmark): number =>
    kind === 'jamb' || kind === 'post' ? 1 : kind === 'corner' ? 0.8 : 0.6;
  while (taken.length < count) {
    let [best, most]: [Landmark | null, number] = [null, 0];
    for (const one of fit) {
      const apart = taken.reduce(
        (least, other) => Math.min(least, Math.hypot(one.left - other.left, one.top - other.top)),
        taken.length === 0 ? 100 : Infinity,
      );
      const value = apart * worth(one);
      if (value > most) [best, most] = [one, value];
    }
    if (best === null) break;
    taken.push(best);
  }
  return taken;
}
