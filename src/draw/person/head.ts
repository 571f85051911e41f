import { crossings, normalOf, type Ellipsoid } from './bodies.ts';
import { CAP, COAT, EYE, FACE, HAIR, NECK, PEAK, SKIN } from './faceArt.ts';
import { tintAt, type Tint } from './shapes.ts';
import type { Met, Subject } from './subject.ts';

/** Half the width and height of the picture of a head, m: shoulders begin in it. */
const HALF = 0.2;

const HEAD: Ellipsoid = { at: [0, 0, 0], half: [0.08, 0.098, 0.118] };
/** The peak of the cap: a sheet that droops forward from the forehead. */
const PEAK_ROOT = { y: 0.09, z: 0.066, droop: 1 / 6 };
const PEAK_HALF = [0.076, 0.095] as const;

/** A part of the figure: a body, where of it there is something, and what it is tinted with. */
interface Part {
  readonly body: Ellipsoid;
  has(x: number, y: number, z: number): boolean;
  tint(x: number, y: number, z: number): Tint;
}

const all = (): boolean => true;

const HEAD_PART: Part = {
  body: HEAD,
  has: all,
  // The drawing is laid on from the front, as a face is seen.
  tint: (x, y, z) => (y > 0 ? tintAt(FACE, x, z) : null) ?? SKIN,
};

const PLAIN: readonly Part[] = [
  { body: { at: [0, -0.03, -0.43], half: [0.235, 0.13, 0.27] }, has: all, tint: () => COAT },
  { body: { at: [0, -0.025, -0.13], half: [0.056, 0.06, 0.1] }, has: all, tint: () => NECK },
  { body: { at: [0.08, -0.012, -0.004], half: [0.012, 0.022, 0.032] }, has: all, tint: () => SKIN },
  { body: { at: [-0.08, -0.012, -0.004], half: [0.012, 0.022, 0.032] }, has: all, tint: () => SKIN },
  { body: { at: [0, 0.094, -0.018], half: [0.0165, 0.022, 0.028] }, has: all, tint: () => SKIN },
  HEAD_PART,
];

const HAIR_PART: Part = {
  body: { at: [0, -0.012, 0.016], half: [0.087, 0.1, 0.117] },
  // Parted on one side; behind it falls to the neck.
  has: (x, y, z) =>
    z > 0.07 - 0.22 * Math.abs(x + 0.025) - Math.max(0, -y - 0.005) * 2.4 - 0.3 * Math.max(0, 0.03 - y),
  tint: () => HAIR,
};

const CAP_PART: Part = {
  body: { at: [0, -0.006, 0.026], half: [0.092, 0.109, 0.114] },
  has: (_, y, z) => z > 0.058 - 0.06 * Math.max(0, -y),
  tint: () => CAP,
};

/**
 * A head with shoulders, at the height of a face, that looks along y.
 * @param cap with a peaked cap on it
 */
export function headSubject(cap: boolean): Subject {
  const parts = [...PLAIN, HAIR_PART, ...(cap ? [CAP_PART] : [])];
  const both = new Float64Array(2);
  return {
    half: [HALF, HALF],
    flat: false,
    retroreflects: false,
    meet: (from, along, met) => {
      const [fx = 0, fy = 0, fz = 0] = from;
      const [dx = 0, dy = 0, dz = 0] = along;
      let nearest = Infinity;
      let hit: Part | null = null;
      for (const part of parts) {
        crossings(part.body, from, along, both);
        // Of hair and cap the far side shows where the near one is cut away.
        for (const s of both) {
          if (!(s > 0 && s < nearest)) continue;
          if (!part.has(fx + s * dx, fy + s * dy, fz + s * dz)) continue;
          nearest = s;
          hit = part;
        }
      }
      const peak = cap ? peakOn(from, along) : Infinity;
      if (peak < nearest) return setPeak(met, along);
      if (hit === null) return false;
      const place = [fx + nearest * dx, fy + nearest * dy, fz + nearest * dz];
      const [x = 0, y = 0, z = 0] = place;
      met.tint = hit.tint(x, y, z);
      const { up, facing } = normalOf(hit.body, place, along);
      met.up = up;
      met.facing = facing;
      met.shaded = cap && hit !== CAP_PART && peakOn(place, UP) < Infinity;
      return true;
    },
  };
}

const UP = [0, 0, 1];

function setPeak(met: Met, along: readonly number[]): boolean {
  const [dx = 0, dy = 0, dz = 0] = along;
  const lean = Math.hypot(1, PEAK_ROOT.droop);
  const cosine = (PEAK_ROOT.droop * dy + dz) / (lean * Math.hypot(dx, dy, dz));
  met.tint = PEAK;
  met.up = cosine < 0 ? 1 / lean : -1 / lean;
  met.facing = Math.abs(cosine);
  met.shaded = false;
  return true;
}

/** s at which a ray meets the peak of the cap, from above or below; Infinity where it misses. */
function peakOn(from: readonly number[], along: readonly number[]): number {
  const { y: rootY, z: rootZ, droop } = PEAK_ROOT;
  const fall = (along[2] ?? 0) + droop * (along[1] ?? 0);
  if (fall === 0) return Infinity;
  const s = (rootZ - (from[2] ?? 0) - droop * ((from[1] ?? 0) - rootY)) / fall;
  if (!(s > 1e-9)) return Infinity;
  const x = (from[0] ?? 0) + s * (along[0] ?? 0);
  const y = (from[1] ?? 0) + s * (along[1] ?? 0);
  const [across, ahead] = [x / PEAK_HALF[0], (y - 0.085) / PEAK_HALF[1]];
  return y > 0.06 && across * across + ahead * ahead <= 1 ? s : Infinity;
}

/**
 * Whether the peak of the cap is in the way between an eye and a camera.
 * @param along from the eye to the camera, in the head's own directions: right, ahead, up
 */
export const peakHides = (along: readonly number[]): boolean =>
  [1, -1].every((side) => peakOn(eyeAt(side), along) < Infinity);

/** The middle of an eye on the head. */
function eyeAt(side: number): readonly number[] {
  const [x, z] = [side * EYE[0], EYE[1]];
  const [a, b, c] = HEAD.half;
  return [x, b * Math.sqrt(1 - (x / a) ** 2 - (z / c) ** 2), z];
}
