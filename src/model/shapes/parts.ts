import type { Vec2 } from '../../base/vector.ts';
import type {
  Barrier,
  Block,
  Building,
  Canopy,
  Opening,
  OpeningKind,
  Ring,
  Roof,
  Tree,
  Vehicle,
} from '../structure.ts';

const named = (id: string, name: string) => ({ id, name, hidden: false, locked: false }) as const;

/** A rectangle from its south-west corner. */
export const box = ([x, y]: Vec2, width: number, depth: number): Ring => [
  [x, y],
  [x + width, y],
  [x + width, y + depth],
  [x, y + depth],
];

export const FLAT: Roof = { kind: 'flat', pitch: 0, overhang: 0, ridge: null, parapet: 0 };

export const pitched = (
  kind: 'gable' | 'hip' | 'monopitch',
  pitch: number,
  overhang: number,
  ridge: number | null = null,
): Roof => ({ kind, pitch, overhang, ridge, parapet: 0 });

export const building = (
  id: string,
  name: string,
  outline: Ring,
  height: number,
  roof: Roof,
  openings: readonly Opening[] = [],
): Building => ({
  ...named(id, name),
  kind: 'building',
  outline,
  holes: [],
  base: 0,
  height,
  roof,
  wallThickness: null,
  openings,
  services: [],
  floors: [],
  yearBuilt: null,
  got: { outline: 'guessed', base: 'guessed', height: 'guessed', roof: 'guessed' },
});

/** Sizes of openings by kind, m: width, height, sill, set back. Common practice, no source. */
const OPENINGS = {
  door: [1, 2.1, 0, 0.1],
  window: [1.2, 1.2, 0.9, 0.1],
  gate: [1.2, 1.2, 0, 0],
  archway: [1.2, 2.1, 0, 0],
} as const;

/** An opening whose middle is `middle` metres along its face. */
export const opening = (
  id: string,
  name: string,
  kind: OpeningKind,
  face: number,
  middle: number,
  change: Partial<Pick<Opening, 'width' | 'height' | 'sill' | 'leaf'>> = {},
): Opening => {
  const [width, height, sill, setBack] = OPENINGS[kind];
  const made = { width, height, sill, ...change };
  const along = middle - made.width / 2;
  const leaf = kind === 'window' ? 'glazed' : 'closed';
  return { id, name, kind, face, along, setBack, leaf, passage: 'solid', got: 'guessed', ...made };
};

/** A fence, wall or hedge. Thickness by sort: common practice, no source. */
export const barrier = (
  id: string,
  name: string,
  sort: Barrier['sort'],
  line: readonly Vec2[],
  height: number,
  change: Partial<Pick<Barrier, 'closed' | 'passage' | 'openings'>> = {},
): Barrier => ({
  ...named(id, name),
  kind: 'barrier',
  sort,
  line,
  closed: false,
  base: 0,
  height,
  thickness: { wall: 0.2, fence: 0.05, hedge: 0.6 }[sort],
  passage: 'solid',
  openings: [],
  got: { line: 'guessed', height: 'guessed', thickness: 'guessed' },
  ...change,
});

export const canopy = (id: string, name: string, outline: Ring, top: number, posts: number): Canopy => ({
  ...named(id, name),
  kind: 'canopy',
  outline,
  top,
  thickness: 0.15,
  posts,
  got: { outline: 'guessed', top: 'guessed', thickness: 'guessed' },
});

export const tree = (id: string, name: string, at: Vec2, height: number, crownRadius: number): Tree => ({
  ...named(id, name),
  kind: 'tree',
  at,
  base: 0,
  height,
  crownRadius,
  clear: height / 3,
  trunkDiameter: Math.max(0.1, height / 30),
  inLeaf: true,
  got: { at: 'guessed', height: 'guessed', crown: 'guessed' },
});

/** Lengths, widths and heights of vehicles, m. Common practice, no source. */
const VEHICLES = { car: [4.4, 1.8, 1.5], van: [5.4, 2, 2.4] } as const;

export const vehicle = (
  id: string,
  name: string,
  sort: Vehicle['sort'],
  at: Vec2,
  heading: number,
): Vehicle => {
  const [length, width, height] = VEHICLES[sort];
  return {
    ...named(id, name),
    kind: 'vehicle',
    sort,
    at,
    heading,
    base: 0,
    length,
    width,
    height,
    got: { at: 'guessed', size: 'guessed' },
  };
};

export const block = (id: string, name: string, outline: Ring, height: number): Block => ({
  ...named(id, name),
  kind: 'block',
  outline,
  base: 0,
  height,
  passage: 'solid',
  got: { outline: 'guessed', base: 'guessed', height: 'guessed' },
});
