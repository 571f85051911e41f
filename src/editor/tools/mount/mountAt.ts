import { NO_LIMITS, type Mount, type Plate } from '../../../optics/mount.ts';
import type { Structure } from '../../../model/structure.ts';
import type { HostSpot } from './hostSpot.ts';

const plate = (width: number, height: number): Plate => ({ width, height, right: 0, up: 0 });

/** Sizes of the brackets that a new camera gets, m; common practice, no source. */
const FLUSH = { standOff: 0.08, plate: plate(0.12, 0.12), limits: NO_LIMITS } as const;
const ARM = { reach: 0.3, drop: 0.1, plate: plate(0.1, 0.13), limits: NO_LIMITS } as const;
const SOFFIT = { drop: 0.1, plate: plate(0.12, 0.12), limits: NO_LIMITS } as const;
const CORNER = { reach: 0.3, plate: plate(0.16, 0.2), limits: NO_LIMITS } as const;
const POLE = { reach: 0.15, diameter: 0.1, limits: NO_LIMITS } as const;
const POLE_HEIGHT = 3;
const LEAST_HEIGHT = 0.1;

export type WallKind = 'flush' | 'arm' | 'corner';
export const WALL_KINDS: readonly WallKind[] = ['flush', 'arm', 'corner'];

/** The face that begins at an end of a face: a corner mount is told by it. */
export function cornerFace(structure: Structure | undefined, face: number, end: 'start' | 'end'): number {
  if (end === 'start') return face;
  if (structure?.kind !== 'barrier') {
    const corners = structure && 'outline' in structure ? structure.outline.length : 1;
    return (face + 1) % corners;
  }
  const edges = structure.line.length - (structure.closed ? 0 : 1);
  return face < edges ? (face + 1) % edges : edges + ((face - edges + 1) % edges);
}

/** A mount of a kind at a spot on a wall of a structure. */
export function wallMount(
  { face, along, height }: HostSpot,
  kind: WallKind,
  structure: Structure | undefined,
): Mount {
  const corner = along <= face.width / 2 ? 'start' : 'end';
  const hosted = {
    host: face.structure,
    face: face.face,
    corner,
    distance: rounded(corner === 'start' ? along : face.width - along),
  } as const;
  const up = Math.max(LEAST_HEIGHT, rounded(height));
  if (kind === 'flush') return { kind, ...hosted, height: up, ...FLUSH };
  if (kind === 'arm') return { kind, ...hosted, height: up, ...ARM };
  const at = cornerFace(structure, face.face, corner);
  return { kind, host: face.structure, face: at, height: up, ...CORNER };
}

/** A mount under a soffit. */
export function soffitMount({ face, along, out }: HostSpot): Mount {
  const corner = along <= face.width / 2 ? 'start' : 'end';
  return {
    kind: 'soffit',
    host: face.structure,
    face: face.face,
    corner,
    distance: rounded(corner === 'start' ? along : face.width - along),
    inset: rounded(Math.min(Math.max(0.02, out), Math.max(0.02, face.depth - 0.02))),
    ...SOFFIT,
  };
}

/** A post standing at a place on the ground, its bracket towards a bearing. */
export const poleMount = (
  at: readonly [x: number, y: number],
  facing: number,
  height = POLE_HEIGHT,
): Mount => ({
  kind: 'pole',
  at: [rounded(at[0]), rounded(at[1])],
  height,
  facing,
  ...POLE,
});

/** A drag stores millimetres at the finest. */
const rounded = (metres: number): number => Math.round(metres * 1000) / 1000;
