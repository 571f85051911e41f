import type { Vec2 } from '../base/vector.ts';
import type { Ring, Structure } from '../model/structure.ts';
import type { Device } from '../optics/device.ts';
import type { Mount } from '../optics/mount.ts';

/** The version that this program writes; older ones are brought up by `plan/migrations`. */
export const PLAN_VERSION = 1;

/** A camera as the person set it. Angles °, range m. */
export interface PlanCamera {
  readonly id: string;
  readonly name: string;
  readonly mount: Mount;
  readonly pan: number;
  readonly tilt: number;
  readonly roll: number;
  readonly device: Device;
  readonly range: number;
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
}

export interface Situation {
  readonly id: string;
  readonly name: string;
  readonly night: boolean;
  /** Structures that are away, and leaves of openings that differ from the drawing. */
  readonly away: readonly string[];
  readonly leaves: Readonly<Record<string, 'closed' | 'open' | 'glazed'>>;
  readonly treesInLeaf: boolean;
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
}

/** The whole document. Records by id, with short lists for order. */
export interface Plan {
  readonly version: typeof PLAN_VERSION;
  readonly id: string;
  readonly name: string;
  readonly origin: Geographic | null;
  readonly ground: { readonly kind: 'flat'; readonly height: number };
  readonly boundary: Ring | null;
  readonly structures: Readonly<Record<string, Structure>>;
  readonly structureOrder: readonly string[];
  readonly cameras: Readonly<Record<string, PlanCamera>>;
  readonly cameraOrder: readonly string[];
  readonly requirements: Readonly<Record<string, Requirement>>;
  readonly requirementOrder: readonly string[];
  readonly situations: Readonly<Record<string, Situation>>;
  readonly situationOrder: readonly string[];
  readonly settings: PlanSettings;
  /** Attribution lines of imported data, shown and printed with the plan. */
  readonly credits: readonly string[];
}
