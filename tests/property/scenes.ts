import type { Vec3 } from '../../src/base/vector.ts';
import type { Passage } from '../../src/model/passage.ts';
import type { Solid } from '../../src/model/solid.ts';
import type { Camera } from '../../src/optics/camera.ts';
import type { Chance } from '../house/seeded.ts';
import { boxSolid } from '../sight/boxSolid.ts';
import { wideCamera } from '../sight/wideCamera.ts';

/** A closed solid over a ring (counter-clockwise, each corner in sight of the first) from a level up to a height a corner. */
function prism(
  id: string,
  ring: readonly (readonly [number, number])[],
  bottom: number,
  tops: readonly number[],
  passage: Passage = 'solid',
): Solid {
  const n = ring.length;
  const triangles: number[] = [];
  for (let at = 1; at + 1 < n; at += 1) {
    triangles.push(0, at + 1, at);
    triangles.push(n, n + at, n + at + 1);
  }
  for (let at = 0; at < n; at += 1) {
    const next = (at + 1) % n;
    triangles.push(at, next, n + next, at, n + next, n + at);
  }
  return {
    id,
    structure: id,
    name: id,
    passage,
    positions: Float64Array.from([
      ...ring.flatMap(([x, y]) => [x, y, bottom]),
      ...ring.flatMap(([x, y], at) => [x, y, tops[at] ?? bottom + 1]),
    ]),
    triangles: Uint32Array.from(triangles),
  };
}

/** An L with sloping top, its inner corner first. */
function bent(chance: Chance, id: string, passage: Passage): Solid {
  const [x, y] = [chance.between(-12, 12), chance.between(-12, 12)];
  const [w, d] = [chance.between(1, 5), chance.between(1, 5)];
  const ring = [
    [x, y],
    [x, y + d],
    [x - w, y + d],
    [x - w, y - d],
    [x + w, y - d],
    [x + w, y],
  ] as const;
  const [low, slope] = [chance.between(1, 3), chance.pick([0, 0, chance.between(0, 0.4)])];
  return prism(
    id,
    ring,
    0,
    ring.map(([, b]) => low + slope * (b - y + d)),
    passage,
  );
}

/** A house with a gable: a five-sided front drawn out along y. */
function gable(chance: Chance, id: string): Solid {
  const [x, y] = [chance.between(-12, 12), chance.between(-12, 12)];
  const [w, d, eaves] = [chance.between(1, 4), chance.between(2, 7), chance.between(1.5, 3)];
  const front = [
    [-w, 0],
    [w, 0],
    [w, eaves],
    [0, eaves + chance.between(0.3, 2)],
    [-w, eaves],
  ] as const;
  const side = (b: number) => front.flatMap(([a, z]) => [x + a, y + b, z]);
  const triangles: number[] = [];
  for (let at = 1; at < 4; at += 1) triangles.push(0, at, at + 1, 5, 6 + at, 5 + at);
  for (let at = 0; at < 5; at += 1) {
    const next = (at + 1) % 5;
    triangles.push(next, at, 5 + at, next, 5 + at, 5 + next);
  }
  return {
    id,
    structure: id,
    name: id,
    passage: 'solid',
    positions: Float64Array.from([...side(0), ...side(d)]),
    triangles: Uint32Array.from(triangles),
  };
}

/** Four random corners in space: faces that lie in no usual direction. */
function shard(chance: Chance, id: string): Solid {
  const [x, y] = [chance.between(-12, 12), chance.between(-12, 12)];
  const corner = () =>
    [x + chance.between(-2, 2), y + chance.between(-2, 2), chance.between(0.1, 4)] as const;
  const [a, b, c, d] = [corner(), corner(), corner(), corner()];
  const [u, v, w] = [b, c, d].map((to) => to.map((n, axis) => n - (a[axis] ?? 0)));
  const turn = (i: number, j: number, k: number) => (u?.[i] ?? 0) * (v?.[j] ?? 0) * (w?.[k] ?? 0);
  const volume =
    turn(0, 1, 2) - turn(0, 2, 1) + turn(1, 2, 0) - turn(1, 0, 2) + turn(2, 0, 1) - turn(2, 1, 0);
  const faces = [0, 2, 1, 0, 1, 3, 1, 2, 3, 2, 0, 3];
  const mirrored = [0, 1, 2, 0, 3, 1, 1, 3, 2, 2, 3, 0];
  return {
    id,
    structure: id,
    name: id,
    passage: 'solid',
    positions: Float64Array.from([...a, ...b, ...c, ...d]),
    triangles: Uint32Array.from(volume > 0 ? faces : mirrored),
  };
}

/** A yard of all kinds of solids; the first `screens` let the view through in part. */
export function randomScene(chance: Chance, count: number, screens = 0): Solid[] {
  return Array.from({ length: count }, (_, at) => {
    const id = `solid-${at}`;
    const kind = chance.whole(0, 5);
    const passage = at < screens ? 'screen' : 'solid';
    if (kind === 0 && at >= screens) return gable(chance, id);
    if (kind === 1 && at >= screens) return shard(chance, id);
    if (kind === 2) return bent(chance, id, passage);
    return boxSolid(
      id,
      [chance.between(-15, 15), chance.between(-15, 15), chance.next() < 0.2 ? chance.between(0, 2) : 0],
      [chance.between(0.05, 5), chance.between(0.05, 5), chance.between(0.2, 4)],
      chance.next() < 0.4 ? 0 : chance.between(0, 360),
      passage,
    );
  });
}

export const WINDOW = { left: -15, bottom: -15, right: 15, top: 15 } as const;

/** A rectilinear camera anywhere over the yard. */
export const randomCamera = (chance: Chance): Camera => ({
  ...wideCamera,
  eye: [chance.between(-14, 14), chance.between(-14, 14), chance.between(0.6, 6)],
  pan: chance.between(0, 360),
  tilt: chance.between(-10, 90),
  roll: chance.pick([0, 0, 90, chance.between(-180, 180)]),
  focalLength: chance.between(2, 6),
  range: chance.between(8, 40),
});

/** A lens law, and a focal length that goes with it: up to 180° across and more. */
export const bentLens = (chance: Chance, k: number): { k: number; focalLength: number } => ({
  k,
  focalLength: k <= 0 ? chance.pick([1.2, 1.709, 2.8]) : chance.between(1.6, 3),
});

/**
 * A yard on which cameras sit exactly: a house, a bay that overlaps its front, an annex that touches it face to face and one
 * that stands on it, fences that cross with one top, a raised board, a step of half a millimetre.
 */
export const awkwardScene = (x: number, y: number): Solid[] => [
  boxSolid('house', [x, y, 0], [8, 6, 3]),
  boxSolid('bay', [x - 1, y - 2, 0], [3, 2, 3]),
  boxSolid('annex', [x + 6, y - 1, 0], [4, 4, 3]),
  boxSolid('loft', [x + 1, y + 1, 3], [3, 3, 1]),
  boxSolid('fence', [x - 8, y, 0], [0.05, 14, 1.8]),
  boxSolid('gate', [x - 8, y + 7, 0], [3, 0.05, 1.8]),
  boxSolid('turned', [x + 3, y - 8, 0], [5, 0.05, 1.8], 33),
  boxSolid('board', [x + 1, y - 4, 2.4], [3, 1.5, 0.15]),
  boxSolid('step', [x + 2, y - 3.3, 0], [1.4, 0.6, 0.0005]),
  boxSolid('mesh', [x + 1, y - 6, 0], [6, 0.04, 1.8], 0, 'screen'),
];

/** Places and aims that sit exactly on something; 2 mm is what a mount keeps off its wall. */
export function awkwardCamera(chance: Chance, x: number, y: number): Camera {
  const eyes: readonly Vec3[] = [
    [x - 4.002, y - 2, 2.4], // 2 mm off a wall, and in the plane of the bay's side
    [x, y - 3.002, 2.7], // flush on the south wall, above the bay's back
    [x - 4.002, y - 3.002, 2.4], // 2 mm off a corner
    [x - 4, y - 4, 2.4], // in the plane of the west wall
    [x - 8.025, y - 9, 2.2], // in the plane of the fence's side, above its top
    [x - 8, y - 9, 1.2], // in the middle plane of the fence
    [x + 1, y - 4, 2.398], // just under the board
    [x + 1, y - 4, 2.552], // just over the board
    [x + 4, y - 7, 1.85], // a hand above the fences' tops
    [x - 8.025, y + 6.975, 3], // straight above a vertex
    [x + 8, y + 1, 3.002], // over the annex's corner, 2 mm up
    [x + 10, y - 10, 0.4], // below the face plane
    [x + 3, y + 9, 3], // in the plane of the roofs
    [x + 3, y + 9, 5],
  ];
  const k = chance.pick([1, 1, 1, 0.6, 0, -0.5, -1]);
  return {
    ...wideCamera,
    eye: chance.pick(eyes),
    pan: chance.pick([0, 45, 90, 180, 225, 270, 33.3]),
    tilt: chance.pick([0, 20, 45, 90, -15]),
    roll: chance.pick([0, 90, 180, 12]),
    ...(k === 1 ? { k, focalLength: 2.8 } : bentLens(chance, k)),
    range: chance.pick([12, 25, 60]),
  };
}

/** Boxes and a lens on a lattice of half metres, turned by quarters, 90° across: nearly everything lies in line. */
export function latticeScene(chance: Chance, x: number, y: number, count: number, screens = 0): Solid[] {
  const half = (low: number, high: number) => chance.whole(low * 2, high * 2) / 2;
  return Array.from({ length: count }, (_, at) =>
    boxSolid(
      `box-${at}`,
      [x + half(-12, 12), y + half(-12, 12), chance.pick([0, 0, 0, half(0, 2)])],
      [half(1, 6), half(1, 6), half(0.5, 4)],
      0,
      at < screens ? 'screen' : 'solid',
    ),
  );
}

/** A camera on the same lattice. */
export const latticeCamera = (chance: Chance, x: number, y: number): Camera => ({
  ...wideCamera,
  eye: [
    x + chance.whole(-26, 26) / 2,
    y + chance.whole(-26, 26) / 2,
    chance.pick([0.5, 1, 1.5, 2, 2.5, 3, 4, 6]),
  ],
  pan: chance.whole(0, 7) * 45,
  tilt: chance.pick([0, 45, 90]),
  roll: chance.pick([0, 90, 180]),
  sensor: { width: 5.6, height: chance.pick([5.6, 3.15]) },
  focalLength: 2.8,
  range: chance.pick([12, 25, 60]),
});

/** Whether a lens keeps more than a millimetre off the box around each solid. */
export const isClear = (solids: readonly Solid[], eye: readonly number[]): boolean =>
  solids.every(({ positions }) =>
    [0, 1, 2].some((axis) => {
      let [low, high] = [Infinity, -Infinity];
      for (let at = axis; at < positions.length; at += 3) {
        low = Math.min(low, positions[at] ?? 0);
        high = Math.max(high, positions[at] ?? 0);
      }
      const here = eye[axis] ?? 0;
      return here < low - 0.0015 || here > high + 0.0015;
    }),
  );
