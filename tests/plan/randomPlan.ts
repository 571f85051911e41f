import type { Vec2, Vec3 } from '../../src/base/vector.ts';
import { hostFaces } from '../../src/model/faces.ts';
import { placeMount } from '../../src/model/mounting.ts';
import { solidsOf } from '../../src/model/solids.ts';
import type { Structure } from '../../src/model/structure.ts';
import type { Mount } from '../../src/optics/mount.ts';
import { emptyPlan } from '../../src/plan/emptyPlan.ts';
import type { Plan, PlanCamera } from '../../src/plan/plan.ts';
import type { Chance } from '../house/seeded.ts';
import { randomStructure } from '../model/randomStructures.ts';
import { bare, cameraOn } from './wholePlan.ts';

/** A mount of any kind somewhere on a structure; loose where nothing can be fixed to it. */
export function randomMount(chance: Chance, structure: Structure): Mount {
  const faces = hostFaces(structure);
  const eye: Vec3 = [chance.between(-20, 20), chance.between(-20, 20), chance.between(2, 4)];
  if (faces.length === 0 || chance.next() < 0.1) return { kind: 'loose', eye };
  const face = chance.pick(faces);
  const on = {
    host: structure.id,
    face: face.face,
    corner: chance.pick(['start', 'end'] as const),
    distance: chance.between(0, face.width),
  };
  const height = face.foot + chance.between(0.1, 0.95) * (face.top - face.foot);
  if (face.sort === 'soffit')
    return {
      kind: 'soffit',
      ...bare,
      ...on,
      inset: chance.between(0, face.depth),
      drop: chance.between(0, 0.2),
    };
  switch (chance.whole(0, 2)) {
    case 0:
      // Below the soffit: a corner's height is held against one of its two walls, which may be the gable.
      return {
        kind: 'corner',
        ...bare,
        host: structure.id,
        face: face.face,
        height: face.foot + 0.5,
        reach: 0.2,
      };
    case 1:
      return { kind: 'flush', ...bare, ...on, height, standOff: 0.05 };
    default:
      return { kind: 'arm', ...bare, ...on, height, reach: chance.between(0.1, 1), drop: 0.05 };
  }
}

/** A plan with one structure of any kind, its openings, points and a picture on its walls, and a few cameras on it. */
export function randomPlan(chance: Chance): Plan {
  const drawn = randomStructure(chance);
  const structure: Structure =
    drawn.kind === 'building'
      ? {
          ...drawn,
          services: Array.from({ length: chance.whole(0, 2) }, (_, k) => ({
            id: `service${k}`,
            name: `Service ${k}`,
            kind: chance.pick(['socket', 'flue'] as const),
            face: chance.whole(0, drawn.outline.length - 1),
            along: chance.between(0, 3),
            height: chance.between(0, 2),
            inside: chance.next() < 0.5,
            got: 'guessed',
          })),
        }
      : drawn.kind === 'vehicle'
        ? { ...drawn, heading: drawn.heading % 360 }
        : drawn;
  const cameras = Array.from({ length: 4 }, (_, k): PlanCamera => ({
    ...cameraOn(`C${k}`, randomMount(chance, structure)),
    pan: chance.between(0, 360),
    roll: chance.between(-90, 90),
  }));
  const hasWalls = structure.kind === 'building' || structure.kind === 'block';
  return {
    ...emptyPlan('random', 'Random'),
    structures: { [structure.id]: structure },
    structureOrder: [structure.id],
    cameras: Object.fromEntries(cameras.map((camera) => [camera.id, camera])),
    cameraOrder: cameras.map(({ id }) => id),
    ...(hasWalls
      ? {
          pictureOrder: ['wall'],
          pictures: {
            wall: {
              id: 'wall',
              name: 'Wall',
              file: { sha: 'a'.repeat(64), type: 'image/png', width: 100, height: 80 },
              hidden: false,
              locked: false,
              use: {
                kind: 'wall',
                structure: structure.id,
                face: chance.whole(0, structure.outline.length - 1),
                corners: [
                  [0, 80],
                  [100, 80],
                  [100, 0],
                  [0, 0],
                ],
                along: 0.5,
                sill: 0,
                width: 1,
                height: 2,
                strength: 0.8,
              },
            },
          },
        }
      : {}),
  };
}

/**
 * What the solids of a structure fill: volume, middle, and how far it reaches about that to each pair of axes (m³, m, m⁵),
 * summed over tetrahedra from a point, which do not tell how faces are cut into triangles.
 */
export function bodyOf(
  structure: Structure,
  move: (place: Vec2) => Vec2 = (place) => place,
): readonly number[] {
  const { solids } = solidsOf(structure);
  if (solids.length === 0) return [];
  const first = solids[0]?.positions ?? [0, 0];
  const [ox, oy] = move([first[0] ?? 0, first[1] ?? 0]);
  let volume = 0;
  const sums = [0, 0, 0];
  const pairs = [0, 0, 0, 0, 0, 0];
  for (const { positions, triangles } of solids) {
    const corner = (index: number): Vec3 => {
      const at = 3 * (triangles[index] ?? 0);
      const [x, y] = move([positions[at] ?? 0, positions[at + 1] ?? 0]);
      return [x - ox, y - oy, positions[at + 2] ?? 0];
    };
    for (let k = 0; k < triangles.length; k += 3) {
      const [a, b, c] = [corner(k), corner(k + 1), corner(k + 2)];
      const six =
        a[0] * (b[1] * c[2] - b[2] * c[1]) +
        a[1] * (b[2] * c[0] - b[0] * c[2]) +
        a[2] * (b[0] * c[1] - b[1] * c[0]);
      volume += six / 6;
      const axes = [0, 1, 2] as const;
      for (const i of axes) sums[i] = (sums[i] ?? 0) + (six / 24) * (a[i] + b[i] + c[i]);
      let pair = 0;
      for (const i of axes)
        for (const j of axes.slice(i)) {
          const sum = (a[i] + b[i] + c[i]) * (a[j] + b[j] + c[j]) + a[i] * a[j] + b[i] * b[j] + c[i] * c[j];
          pairs[pair] = (pairs[pair] ?? 0) + (six / 120) * sum;
          pair += 1;
        }
    }
  }
  // A mirror turns every triangle inside out.
  const sign = Math.sign(volume) || 1;
  const whole = Math.max(1e-12, Math.abs(volume));
  const [x = 0, y = 0, z = 0] = sums.map((sum) => (sign * sum) / whole);
  const middles = [x * x, x * y, x * z, y * y, y * z, z * z];
  return [whole, x + ox, y + oy, z, ...pairs.map((sum, pair) => (sign * sum) / whole - (middles[pair] ?? 0))];
}

/** The lens of every camera that has a place, by id. */
export const eyesOf = (plan: Plan): Readonly<Record<string, Vec3>> =>
  Object.fromEntries(
    Object.values(plan.cameras).flatMap(({ id, mount }) => {
      const placed = placeMount(mount, plan.structures);
      return placed.ok ? [[id, placed.value.eye]] : [];
    }),
  );

/** Codes and things of all that cannot be made in a plan, sorted. */
export const troubleOf = (plan: Plan): string[] =>
  Object.values(plan.structures)
    .flatMap((structure) => solidsOf(structure).faults.map(({ code, subject }) => `${code} ${subject}`))
    .toSorted();
