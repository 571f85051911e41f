import type { Vec2 } from '../../src/base/vector.ts';
import type {
  Barrier,
  Building,
  Canopy,
  Opening,
  OpeningKind,
  Roof,
  Structure,
  Tree,
  Vehicle,
} from '../../src/model/structure.ts';
import type { Chance } from '../house/seeded.ts';
import {
  barrierWith,
  blockWith,
  buildingWith,
  canopyWith,
  openingWith,
  rectangle,
  treeWith,
  turned,
  vehicleWith,
} from './sampleStructures.ts';

/** A star around a middle: simple whatever its radii, with corners that turn either way. */
export const star = (chance: Chance, corners: number, least: number, greatest: number): Vec2[] =>
  Array.from({ length: corners }, (_, k) => {
    const angle = ((k + chance.between(-0.3, 0.3)) * 2 * Math.PI) / corners;
    const radius = chance.between(least, greatest);
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });

const letters: readonly (readonly Vec2[])[] = [
  // L, U, T and a staircase, in units of a bay.
  [
    [0, 0],
    [3, 0],
    [3, 1],
    [1, 1],
    [1, 3],
    [0, 3],
  ],
  [
    [0, 0],
    [3, 0],
    [3, 3],
    [2, 3],
    [2, 1],
    [1, 1],
    [1, 3],
    [0, 3],
  ],
  [
    [0, 0],
    [1, 0],
    [1, 2],
    [2, 2],
    [2, 3],
    [-1, 3],
    [-1, 2],
    [0, 2],
  ],
  [
    [0, 0],
    [3, 0],
    [3, 1],
    [2, 1],
    [2, 2],
    [1, 2],
    [1, 3],
    [0, 3],
  ],
];

/** The ring with corners added on its edges, which change nothing but the count of its faces. */
const withStraightCorners = (chance: Chance, ring: readonly Vec2[]): Vec2[] =>
  ring.flatMap((a, k) => {
    const b = ring[(k + 1) % ring.length] ?? a;
    const share = chance.next() < 0.3 ? [0.25, 0.5] : [];
    return [a, ...share.map((t): Vec2 => [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])])];
  });

const outlineOf = (chance: Chance): { outline: Vec2[]; holes: Vec2[][] } => {
  const { outline, holes } = plainOutlineOf(chance);
  return { outline: chance.next() < 0.3 ? withStraightCorners(chance, outline) : outline, holes };
};

const plainOutlineOf = (chance: Chance): { outline: Vec2[]; holes: Vec2[][] } => {
  const at: Vec2 = [chance.between(-5000, 5000), chance.between(-5000, 5000)];
  const angle = chance.pick([0, 0, chance.between(0, 360)]);
  const place = (ring: readonly Vec2[]): Vec2[] => turned(ring, angle, at);
  const sort = chance.whole(0, 4);
  if (sort <= 1)
    return { outline: place(rectangle(chance.between(2, 20), chance.between(2, 20))), holes: [] };
  if (sort === 2) {
    const bay = chance.between(1, 6);
    const letter = chance.pick(letters).map(([x, y]): Vec2 => [x * bay, y * bay]);
    return { outline: place(letter), holes: [] };
  }
  if (sort === 3) return { outline: place(star(chance, chance.whole(3, 24), 3, 12)), holes: [] };
  const hole = star(chance, chance.whole(3, 9), 0.5, 2.5).reverse();
  return { outline: place(star(chance, chance.whole(9, 24), 6, 12)), holes: [place(hole)] };
};

const openingsOf = (chance: Chance, edges: number): Opening[] =>
  Array.from({ length: chance.whole(0, 5) }, (_, k) =>
    openingWith({
      id: `opening${k}`,
      name: `Opening ${k}`,
      kind: chance.pick<OpeningKind>(['door', 'window', 'gate', 'archway']),
      face: chance.whole(0, edges - 1),
      along: chance.between(0, 6),
      width: chance.between(0.3, 2.5),
      height: chance.between(0.3, 2.2),
      sill: chance.pick([0, chance.between(0, 1.2)]),
      setBack: chance.pick([0, 0.1, chance.between(0, 0.6)]),
      leaf: chance.pick(['closed', 'open', 'glazed']),
    }),
  );

export const randomBuilding = (chance: Chance): Building => {
  const { outline, holes } = outlineOf(chance);
  const roof: Roof = {
    kind: chance.pick(['flat', 'parapet', 'monopitch', 'gable', 'hip']),
    pitch: chance.between(5, 60),
    overhang: chance.pick([0, chance.between(0.05, 1)]),
    ridge: chance.pick([null, chance.between(0, 360)]),
    parapet: chance.between(0.1, 1),
  };
  return buildingWith({
    outline,
    holes,
    roof,
    base: chance.pick([0, chance.between(-2, 2)]),
    height: chance.between(2.2, 9),
    wallThickness: chance.pick([null, null, chance.between(0.1, 0.5)]),
    openings: openingsOf(chance, outline.length),
  });
};

/** A walk that turns by up to `turn` degrees at each step; many meet themselves, and are refused. */
const walk = (chance: Chance, turn: number): Vec2[] => {
  let [x, y, angle] = [chance.between(-500, 500), chance.between(-500, 500), chance.between(0, 360)];
  const line: Vec2[] = [[x, y]];
  for (let k = chance.whole(1, 8); k > 0; k--) {
    const step = chance.between(0.2, 8);
    angle += chance.between(-turn, turn);
    x += step * Math.cos((angle * Math.PI) / 180);
    y += step * Math.sin((angle * Math.PI) / 180);
    line.push([x, y]);
  }
  return line;
};

export const randomBarrier = (chance: Chance): Barrier => {
  const closed = chance.next() < 0.4;
  const line = closed ? star(chance, chance.whole(3, 9), 4, 15) : walk(chance, chance.pick([60, 120, 175]));
  return barrierWith({
    line: closed && chance.next() < 0.5 ? [...line].reverse() : line,
    closed,
    thickness: chance.between(0.05, 1),
    height: chance.between(0.6, 3),
    base: chance.between(-1, 1),
    openings: openingsOf(chance, line.length - (closed ? 0 : 1)),
  });
};

const randomCanopy = (chance: Chance): Canopy => {
  const outline = star(chance, chance.whole(3, 9), 1.5, 4);
  return canopyWith({ outline, posts: chance.whole(0, outline.length), top: chance.between(2, 4) });
};

const randomTree = (chance: Chance): Tree => {
  const height = chance.between(2, 20);
  return treeWith({
    height,
    clear: chance.between(0, height * 0.9),
    crownRadius: chance.between(0.5, 6),
    trunkDiameter: chance.between(0.05, 1),
    at: [chance.between(-9000, 9000), chance.between(-9000, 9000)],
    inLeaf: chance.next() < 0.5,
  });
};

const randomVehicle = (chance: Chance): Vehicle =>
  vehicleWith({
    sort: chance.pick(['car', 'van']),
    heading: chance.between(-400, 400),
    length: chance.between(2, 8),
    width: chance.between(1, 3),
    height: chance.between(1, 3.5),
  });

export const randomStructure = (chance: Chance): Structure => {
  const make = chance.pick([
    randomBuilding,
    randomBuilding,
    randomBuilding,
    randomBarrier,
    randomBarrier,
    randomCanopy,
    randomTree,
    randomVehicle,
    (c: Chance) => blockWith({ outline: outlineOf(c).outline, height: c.between(0.1, 3) }),
  ]);
  return make(chance);
};
