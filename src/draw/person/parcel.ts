import { tint, tintAt, type Shape, type Tint } from './shapes.ts';
import type { Subject } from './subject.ts';

/** Half the width, depth and height of a parcel, m: a box for a pair of boots. */
const SIZE = [0.18, 0.13, 0.11] as const;
/** m */
export const PARCEL_WIDE = 2 * SIZE[0];
/** How high its middle stands above the ground, m. */
export const PARCEL_MIDDLE = SIZE[2];

const CARD = tint('#B98B5A', 0.5);
const TAPE = tint('#8C6238', 0.34);
const PAPER = tint('#F3F0E8', 0.72);
const PRINT = tint('#22242A', 0.06);

const FRONT: readonly Shape[] = [
  { kind: 'box', from: [-0.03, -1], to: [0.03, 1], tint: TAPE },
  { kind: 'box', from: [0.045, -0.07], to: [0.155, 0.03], tint: PAPER },
  ...[0, 1, 2].map((line): Shape => ({
    kind: 'box',
    from: [0.055, 0.008 - 0.026 * line],
    to: [0.13 - 0.02 * line, 0.016 - 0.026 * line],
    tint: PRINT,
  })),
];
const TOP: readonly Shape[] = [{ kind: 'box', from: [-0.03, -1], to: [0.03, 1], tint: TAPE }];

/** A parcel on the ground, its label to the front; it is not turned quite square, as parcels are not. */
export const parcelSubject: Subject = {
  half: [0.27, 0.24],
  flat: false,
  retroreflects: false,
  meet: (from, along, met) => {
    const [o, d] = [turned(from), turned(along)];
    let [enter, leave, face] = [0, Infinity, -1];
    for (let axis = 0; axis < 3; axis += 1) {
      const [at, way, half] = [o[axis] ?? 0, d[axis] ?? 0, SIZE[axis] ?? 0];
      if (way === 0 && Math.abs(at) > half) return false;
      if (way === 0) continue;
      const [one, two] = [(-half - at) / way, (half - at) / way];
      if (Math.min(one, two) > enter) {
        enter = Math.min(one, two);
        face = axis;
      }
      leave = Math.min(leave, Math.max(one, two));
    }
    if (face < 0 || enter >= leave) return false;
    const [x, y, z] = [0, 1, 2].map((axis) => (o[axis] ?? 0) + enter * (d[axis] ?? 0));
    met.tint = tintOf(face, (d[face] ?? 0) < 0, x ?? 0, y ?? 0, z ?? 0);
    met.up = face === 2 ? 1 : 0;
    met.facing = Math.abs(d[face] ?? 0) / Math.hypot(d[0] ?? 0, d[1] ?? 0, d[2] ?? 0);
    met.shaded = false;
    return true;
  },
};

function tintOf(face: number, isFront: boolean, x: number, y: number, z: number): Tint {
  if (face === 2) return tintAt(TOP, x, y) ?? CARD;
  return (face === 1 && isFront ? tintAt(FRONT, -x, z) : null) ?? CARD;
}

const [COS, SIN] = [Math.cos(0.4), Math.sin(0.4)];
const turned = ([x = 0, y = 0, z = 0]: readonly number[]): readonly number[] => [
  COS * x + SIN * y,
  COS * y - SIN * x,
  z,
];
