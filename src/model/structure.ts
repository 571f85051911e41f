import type { Vec2 } from '../base/vector.ts';
import type { Passage } from './passage.ts';

/** How a size was got: taped on site (± 0.05 m), read from a map (± 0.5 in plan, ± 1.0 in height), or guessed (± 20 %). */
export type Got = 'measured' | 'mapped' | 'guessed';

/** A closed ring of corners, the first not repeated. Outer rings run counter-clockwise, holes clockwise. */
export type Ring = readonly Vec2[];

export type RoofKind = 'flat' | 'parapet' | 'monopitch' | 'gable' | 'hip';

/**
 * A roof. `pitch` in degrees and `overhang` in metres count for the pitched kinds (a flat roof may overhang too);
 * the soffit is level, at wall height. `ridge` is the bearing of the ridge of a gable (or, for a mono-pitch,
 * the bearing towards which the roof falls); null lets the longer side decide. `parapet` is the upstand in metres.
 */
export interface Roof {
  readonly kind: RoofKind;
  readonly pitch: number;
  readonly overhang: number;
  readonly ridge: number | null;
  readonly parapet: number;
}

export type OpeningKind = 'door' | 'window' | 'gate' | 'archway';
export type Leaf = 'closed' | 'open' | 'glazed';

/**
 * An opening on face `face` of its structure: the edge from corner `face` to the next.
 * `along` is the distance of its nearer jamb from that first corner, `sill` its foot above the structure's base.
 * On a block (no wall thickness) it is a recess of depth `setBack`; a gate or archway interrupts a barrier.
 */
export interface Opening {
  readonly id: string;
  readonly name: string;
  readonly kind: OpeningKind;
  readonly face: number;
  readonly along: number;
  readonly width: number;
  readonly height: number;
  readonly sill: number;
  readonly setBack: number;
  readonly leaf: Leaf;
  /** Of the closed leaf. */
  readonly passage: Passage;
  readonly got: Got;
}

/** A floor of a building: its upper side `level` above the building's base, its ceiling `ceiling` above that, m. */
export interface Floor {
  readonly name: string;
  readonly level: number;
  readonly ceiling: number;
}

export type ServiceKind = 'socket' | 'switch' | 'light' | 'tap' | 'meter' | 'flue';

/**
 * A point on a wall that whoever drills must know of, on face `face` as openings count them: `along` from the face's
 * first corner, `height` above the building's base, m; `inside` on the inner side of the wall.
 */
export interface Service {
  readonly id: string;
  readonly name: string;
  readonly kind: ServiceKind;
  readonly face: number;
  readonly along: number;
  readonly height: number;
  readonly inside: boolean;
  readonly got: Got;
}

interface Named {
  readonly id: string;
  readonly name: string;
  readonly hidden: boolean;
  readonly locked: boolean;
}

/** A building. `base` and `height` (wall top, that is the soffit) in metres, height above base. */
export interface Building extends Named {
  readonly kind: 'building';
  readonly outline: Ring;
  readonly holes: readonly Ring[];
  readonly base: number;
  readonly height: number;
  readonly roof: Roof;
  /** Null: one block; else hollow, walls of this thickness (m). */
  readonly wallThickness: number | null;
  readonly openings: readonly Opening[];
  readonly services: readonly Service[];
  readonly floors: readonly Floor[];
  readonly yearBuilt: number | null;
  readonly got: { readonly outline: Got; readonly base: Got; readonly height: Got; readonly roof: Got };
}

/** A free-standing wall, fence or hedge along a line of corners; faces are its edges from the first drawn. */
export interface Barrier extends Named {
  readonly kind: 'barrier';
  readonly sort: 'wall' | 'fence' | 'hedge';
  readonly line: readonly Vec2[];
  readonly closed: boolean;
  readonly base: number;
  readonly height: number;
  readonly thickness: number;
  readonly passage: Passage;
  readonly openings: readonly Opening[];
  readonly got: { readonly line: Got; readonly height: Got; readonly thickness: Got };
}

/** A roof on posts. `top` is the height of its upper side, `thickness` the board's, posts at its corners. */
export interface Canopy extends Named {
  readonly kind: 'canopy';
  readonly outline: Ring;
  readonly top: number;
  readonly thickness: number;
  /** 0: hung on a wall; else one post at each of the first so many corners. */
  readonly posts: number;
  readonly got: { readonly outline: Got; readonly top: Got; readonly thickness: Got };
}

/** A tree: a solid trunk and a crown that is solid in leaf and a screen when bare. */
export interface Tree extends Named {
  readonly kind: 'tree';
  readonly at: Vec2;
  readonly base: number;
  readonly height: number;
  readonly crownRadius: number;
  /** Height at which the crown begins. */
  readonly clear: number;
  readonly trunkDiameter: number;
  readonly inLeaf: boolean;
  readonly got: { readonly at: Got; readonly height: Got; readonly crown: Got };
}

/** A vehicle standing with its front towards `heading` (bearing). */
export interface Vehicle extends Named {
  readonly kind: 'vehicle';
  readonly sort: 'car' | 'van';
  readonly at: Vec2;
  readonly heading: number;
  readonly base: number;
  readonly length: number;
  readonly width: number;
  readonly height: number;
  readonly got: { readonly at: Got; readonly size: Got };
}

/** Any plain prism: a bin store, a step, a shed. */
export interface Block extends Named {
  readonly kind: 'block';
  readonly outline: Ring;
  readonly base: number;
  readonly height: number;
  readonly passage: Passage;
  readonly got: { readonly outline: Got; readonly base: Got; readonly height: Got };
}

export type Structure = Building | Barrier | Canopy | Tree | Vehicle | Block;
export type StructureKind = Structure['kind'];
