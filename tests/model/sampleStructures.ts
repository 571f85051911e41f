import type { Vec2 } from '../../src/base/vector.ts';
import type {
  Barrier,
  Block,
  Building,
  Canopy,
  Opening,
  Roof,
  Tree,
  Vehicle,
} from '../../src/model/structure.ts';

export const rectangle = (width: number, depth: number, at: Vec2 = [0, 0]): Vec2[] => [
  at,
  [at[0] + width, at[1]],
  [at[0] + width, at[1] + depth],
  [at[0], at[1] + depth],
];

/** A ring turned about the origin by an angle in degrees, counter-clockwise, then moved. */
export const turned = (ring: readonly Vec2[], degrees: number, by: Vec2 = [0, 0]): Vec2[] => {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return ring.map(([x, y]) => [c * x - s * y + by[0], s * x + c * y + by[1]]);
};

export const flat: Roof = { kind: 'flat', pitch: 35, overhang: 0, ridge: null, parapet: 0 };

const named = (id: string, name: string) => ({ id, name, hidden: false, locked: false });

export const buildingWith = (change: Partial<Building> = {}): Building => ({
  ...named('house', 'House'),
  kind: 'building',
  outline: rectangle(10, 6),
  holes: [],
  base: 0,
  height: 3,
  roof: flat,
  wallThickness: null,
  openings: [],
  services: [],
  floors: [],
  yearBuilt: null,
  got: { outline: 'measured', base: 'measured', height: 'measured', roof: 'measured' },
  ...change,
});

export const openingWith = (change: Partial<Opening> = {}): Opening => ({
  id: 'door',
  name: 'Door',
  kind: 'door',
  face: 0,
  along: 2,
  width: 1,
  height: 2,
  sill: 0,
  setBack: 0.1,
  leaf: 'closed',
  passage: 'solid',
  got: 'measured',
  ...change,
});

export const barrierWith = (change: Partial<Barrier> = {}): Barrier => ({
  ...named('fence', 'Fence'),
  kind: 'barrier',
  sort: 'fence',
  line: [
    [0, 0],
    [8, 0],
    [8, 5],
  ],
  closed: false,
  base: 0,
  height: 1.8,
  thickness: 0.2,
  passage: 'solid',
  openings: [],
  got: { line: 'measured', height: 'measured', thickness: 'measured' },
  ...change,
});

export const canopyWith = (change: Partial<Canopy> = {}): Canopy => ({
  ...named('canopy', 'Carport'),
  kind: 'canopy',
  outline: rectangle(3, 5),
  top: 2.6,
  thickness: 0.15,
  posts: 4,
  got: { outline: 'measured', top: 'measured', thickness: 'measured' },
  ...change,
});

export const treeWith = (change: Partial<Tree> = {}): Tree => ({
  ...named('tree', 'Lime'),
  kind: 'tree',
  at: [3, 4],
  base: 0,
  height: 7,
  crownRadius: 2,
  clear: 2,
  trunkDiameter: 0.3,
  inLeaf: true,
  got: { at: 'mapped', height: 'guessed', crown: 'guessed' },
  ...change,
});

export const vehicleWith = (change: Partial<Vehicle> = {}): Vehicle => ({
  ...named('car', 'Car'),
  kind: 'vehicle',
  sort: 'car',
  at: [1, 2],
  heading: 30,
  base: 0,
  length: 4.4,
  width: 1.8,
  height: 1.5,
  got: { at: 'guessed', size: 'guessed' },
  ...change,
});

export const blockWith = (change: Partial<Block> = {}): Block => ({
  ...named('bins', 'Bin store'),
  kind: 'block',
  outline: rectangle(2, 1),
  base: 0,
  height: 1.2,
  passage: 'solid',
  got: { outline: 'measured', base: 'measured', height: 'measured' },
  ...change,
});
