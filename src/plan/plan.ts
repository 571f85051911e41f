import type { Vec2, Vec3 } from '../base/vector.ts';
import type { Ground } from '../model/ground.ts';
import type { Got, Leaf, Ring, Structure } from '../model/structure.ts';
import type { DataSheet, Device, Housing } from '../optics/device.ts';
import type { Infrared, LampLight } from '../optics/light.ts';
import type { Mount } from '../optics/mount.ts';

/** The version that this program writes; older ones are brought up by `plan/migrations`. */
export const PLAN_VERSION = 4;

/** How long a picture is exposed, ms. */
export interface Exposure {
  readonly day: number;
  readonly night: number;
}

/** What a person did with a camera's drill card. */
interface CardNotes {
  /** Ids of the cautions marked stop that a person has looked at. */
  readonly ticked: readonly string[];
  /** What stands in the fields for how it was built, by id. */
  readonly asBuilt: Readonly<Record<string, string>>;
}

/** A camera as the person set it. Angles °, range m. */
export interface PlanCamera {
  readonly id: string;
  readonly name: string;
  readonly mount: Mount;
  readonly pan: number;
  readonly tilt: number;
  readonly roll: number;
  readonly device: Device;
  /** Null: not known. */
  readonly housing: Housing | null;
  readonly sheet: DataSheet;
  readonly range: number;
  /** Null: it has none of its own. */
  readonly infrared: Infrared | null;
  /** Null: not known. */
  readonly exposure: Exposure | null;
  readonly card: CardNotes;
  readonly hidden: boolean;
  readonly locked: boolean;
}

/** What must be seen; kept and carried by the file from the first version, judged by a later page. */
interface Requirement {
  readonly id: string;
  readonly name: string;
  readonly shape: 'point' | 'line' | 'area' | 'approach';
  readonly at: readonly Vec2[];
  readonly targetHeight: number;
  readonly target: 'ground' | 'plate' | 'face' | 'height';
  readonly band: string;
  /** Which way the face looks: along a bearing (°), to a place, or along the line that is walked; null: any way. */
  readonly looks:
    | { readonly kind: 'bearing'; readonly bearing: number }
    | { readonly kind: 'place'; readonly at: Vec2 }
    | { readonly kind: 'along' }
    | null;
}

/** A named sloped patch of ground, such as a drive: the plane over its outline, ° and m. */
export interface Patch {
  readonly id: string;
  readonly name: string;
  readonly outline: Ring;
  /** Height of the plane at the first corner, m above z = 0. */
  readonly base: number;
  readonly pitch: number;
  /** Bearing towards which it rises, °. */
  readonly rises: number;
  readonly got: Got;
}

/** A lamp that lights the site at night. `height` is above the ground, m. */
export interface Lamp {
  readonly id: string;
  readonly name: string;
  readonly at: Vec2;
  readonly height: number;
  readonly light: LampLight;
  readonly got: Got;
}

export interface Situation {
  readonly id: string;
  readonly name: string;
  readonly night: boolean;
  /** Structures that are away, and leaves of openings that differ from the drawing. */
  readonly away: readonly string[];
  readonly leaves: Readonly<Record<string, Leaf>>;
  /** Trees and hedges in leaf, or bare; null: each as it is drawn. */
  readonly treesInLeaf: boolean | null;
}

/** Things that are selected and moved together; a thing is in one group at most. */
export interface Group {
  readonly id: string;
  readonly name: string;
  /** Ids of structures, cameras and lamps. */
  readonly members: readonly string[];
}

/** The file of a picture. Its bytes are never in the plan: they are kept under their hash. */
export interface PictureFile {
  /** SHA-256 of the bytes, 64 small hexadecimal digits. */
  readonly sha: string;
  readonly type: 'image/png' | 'image/jpeg' | 'image/webp';
  /** Pixels. */
  readonly width: number;
  readonly height: number;
}

/** A point of a picture, pixels right of and below its top left outer corner. */
export type PicturePoint = readonly [u: number, v: number];

/** Laid on the ground to be traced. */
export interface SitePicture {
  readonly kind: 'site';
  /** Place of the picture's top left outer corner. */
  readonly at: Vec2;
  /** Null: it has no scale yet. */
  readonly metresPerPixel: number | null;
  /** Bearing of the picture's up, °. */
  readonly turn: number;
  /** How strongly it shows, 0 to 1. */
  readonly strength: number;
}

/** Squared onto a wall: a rectangle of the wall, m, and where its corners are in the picture. */
export interface WallPicture {
  readonly kind: 'wall';
  readonly structure: string;
  readonly face: number;
  /** Lower left, lower right, upper right, upper left, seen from outside. */
  readonly corners: readonly [PicturePoint, PicturePoint, PicturePoint, PicturePoint];
  /** Nearer side of the rectangle from the first corner of the face, its foot above the structure's base, m. */
  readonly along: number;
  readonly sill: number;
  readonly width: number;
  readonly height: number;
  /** How strongly it shows, 0 to 1. */
  readonly strength: number;
}

/** A photo pinned to the place from which it was taken; `heading` is the way that it looks, °, null: not known. */
export interface PinnedPicture {
  readonly kind: 'photo';
  readonly at: Vec3;
  readonly heading: number | null;
}

/** A picture of the site. */
export interface Picture {
  readonly id: string;
  readonly name: string;
  readonly file: PictureFile;
  readonly hidden: boolean;
  readonly locked: boolean;
  readonly use: SitePicture | WallPicture | PinnedPicture;
}

/** Where the site frame's origin lies on Earth: degrees north and east, and the bearing of +y from true north. */
export interface Geographic {
  readonly latitude: number;
  readonly longitude: number;
  readonly trueNorth: number;
}

interface FaceLimit {
  /** Greatest depression from face to camera, °. */
  readonly above: number;
  /** Greatest angle in plan between where the face looks and the camera, °. */
  readonly side: number;
}

export interface PlanSettings {
  /** Key of the edition in `shared/tables/bands.json`. */
  readonly edition: string;
  readonly units: 'metres' | 'millimetres' | 'feet';
  readonly stature: number;
  readonly walkingSpeed: number;
  readonly faceHeight: number;
  readonly plateHeight: number;
  readonly faceLimits: { readonly identify: FaceLimit; readonly recognise: FaceLimit };
  readonly tolerances: {
    readonly pan: number;
    readonly tilt: number;
    readonly place: number;
    readonly focalLengthPercent: number;
  };
  /** Least light that counts as lit, lx. */
  readonly leastLux: number;
  /** A sheet of mesh or railings seen at less than this angle to its face closes up, °. */
  readonly screenClosing: number;
  /** Thresholds of cautions that differ from the default, by id. */
  readonly cautions: Readonly<Record<string, number>>;
}

/** The whole document. Records by id, with short lists for order. */
export interface Plan {
  readonly version: typeof PLAN_VERSION;
  readonly id: string;
  readonly name: string;
  readonly origin: Geographic | null;
  readonly ground: Ground;
  readonly boundary: Ring | null;
  readonly structures: Readonly<Record<string, Structure>>;
  readonly structureOrder: readonly string[];
  readonly cameras: Readonly<Record<string, PlanCamera>>;
  readonly cameraOrder: readonly string[];
  readonly patches: Readonly<Record<string, Patch>>;
  readonly patchOrder: readonly string[];
  readonly lamps: Readonly<Record<string, Lamp>>;
  readonly lampOrder: readonly string[];
  readonly requirements: Readonly<Record<string, Requirement>>;
  readonly requirementOrder: readonly string[];
  readonly situations: Readonly<Record<string, Situation>>;
  readonly situationOrder: readonly string[];
  readonly groups: Readonly<Record<string, Group>>;
  readonly groupOrder: readonly string[];
  readonly pictures: Readonly<Record<string, Picture>>;
  readonly pictureOrder: readonly string[];
  readonly settings: PlanSettings;
  /** Attribution lines of imported data, shown and printed with the plan. */
  readonly credits: readonly string[];
}
