import { cos, sin } from '../base/angle.ts';
import { LEAST_SIZE } from '../base/tolerance.ts';
import type { Vec2, Vec3 } from '../base/vector.ts';
import { coordinateFaults } from './footprint.ts';
import { joinMade, madeOf, unmade, type Made } from './made.ts';
import { modelFault } from './modelFault.ts';
import { prism } from './prism.ts';
import { Shell, type Mesh } from './shell.ts';
import { numberFaults, sizeFaults } from './size.ts';
import type { Ring, Tree } from './structure.ts';

const SIDES = 8;

/** A regular polygon whose mean width is the diameter of the round thing that it stands for. */
export function roundRing(at: Vec2, diameter: number): Ring {
  const reach = roundReach(diameter);
  return Array.from({ length: SIDES }, (_, k) => {
    const angle = (360 / SIDES) * (k + 0.5);
    return [at[0] + reach * cos(angle), at[1] + reach * sin(angle)] as const;
  });
}

/** How far the corners of `roundRing` are from its centre. Source: the mean width of a convex ring is its perimeter / π. */
export const roundReach = (diameter: number): number => (Math.PI * diameter) / (2 * SIDES * sin(180 / SIDES));

/** A tree: trunk from the ground to the middle of its crown, and a crown between `clear` and `height` above its base. */
export function treeSolids(tree: Tree): Made {
  const wrong = [
    ...coordinateFaults([tree.at], ['at'], tree.name).map((fault) => ({ ...fault, path: ['at'] })),
    ...numberFaults(tree.base, ['base'], tree.name),
    ...sizeFaults(tree.height, ['height'], tree.name),
    ...sizeFaults(tree.crownRadius, ['crownRadius'], tree.name),
    ...sizeFaults(tree.trunkDiameter, ['trunkDiameter'], tree.name),
    ...numberFaults(tree.clear, ['clear'], tree.name),
  ];
  if (wrong.length > 0) return unmade(wrong);
  if (tree.clear < 0 || tree.clear > tree.height - LEAST_SIZE) {
    const about = { given: tree.clear, allowed: `from 0 m to below the tree's height of ${tree.height} m` };
    return unmade([modelFault('tree.clear', tree.name, ['clear'], about)]);
  }
  const middle = tree.base + (tree.clear + tree.height) / 2;
  const trunk = prism([roundRing(tree.at, tree.trunkDiameter)], tree.base, middle);
  const halfHeight = (tree.height - tree.clear) / 2;
  const crown = crownMesh([tree.at[0], tree.at[1], middle], tree.crownRadius, halfHeight);
  return joinMade([
    madeOf(tree, trunk, 'solid', [], { id: 'trunk', name: 'trunk' }),
    madeOf(tree, crown, tree.inLeaf ? 'solid' : 'screen', [], { id: 'crown', name: 'crown' }),
  ]);
}

/** An icosahedron with a corner at either pole. */
const icosahedron = (): { corners: Vec3[]; faces: [number, number, number][] } => {
  const z = 1 / Math.sqrt(5);
  const r = 2 / Math.sqrt(5);
  const belt = (height: number, turned: number): Vec3[] =>
    [0, 1, 2, 3, 4].map((k) => [r * cos(72 * k + turned), r * sin(72 * k + turned), height]);
  const corners: Vec3[] = [[0, 0, 1], ...belt(z, 0), ...belt(-z, 36), [0, 0, -1]];
  const faces: [number, number, number][] = [];
  for (let k = 0; k < 5; k++) {
    const next = (k + 1) % 5;
    faces.push(
      [0, 1 + k, 1 + next],
      [1 + k, 6 + k, 1 + next],
      [1 + next, 6 + k, 6 + next],
      [11, 6 + next, 6 + k],
    );
  }
  return { corners, faces };
};

/** An ellipsoid of 80 triangles with its corners on the true surface: the icosahedron, each face cut in four. */
function crownMesh(centre: Vec3, radius: number, halfHeight: number): Mesh | null {
  const shell = new Shell();
  const { corners, faces } = icosahedron();
  const id = ([x, y, z]: Vec3): number =>
    shell.corner(centre[0] + radius * x, centre[1] + radius * y, centre[2] + halfHeight * z);
  const between = (a: Vec3, b: Vec3): Vec3 => {
    const [x, y, z] = [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
    const size = Math.hypot(x, y, z);
    return [x / size, y / size, z / size];
  };
  for (const face of faces) {
    const [a, b, c] = face.map((k) => corners[k] ?? centre);
    if (!a || !b || !c) continue;
    const [ab, bc, ca] = [between(a, b), between(b, c), between(c, a)];
    for (const part of [
      [a, ab, ca],
      [b, bc, ab],
      [c, ca, bc],
      [ab, bc, ca],
    ]) {
      shell.face(part.map(id));
    }
  }
  return shell.mesh();
}
