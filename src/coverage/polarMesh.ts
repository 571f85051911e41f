import type { ArcRings } from '../sight/arcRings.ts';
import type { Conditions } from './curve.ts';
import { FieldMesh } from './fieldMesh.ts';

/** Bearings of a whole turn. */
const BEARINGS = 52;
/** Where the first one lies, rad: off all bearings at which people put walls. */
const PHASE_RAD = 0.0123;
/** How far out each circle lies from the one before, as a share of the distance from the lens. */
const STEP = 0.12;
/**
 * The first circle where spokes go all around, as a share of the lens's distance: density has no one value at the foot
 * itself, but another on each bearing.
 */
const INNERMOST = 1e-4;
/** So few bearings that nothing lies at are no gap. */
const LEAST_GAP = 3;

/** A mesh around the foot of a lens: corner (circle, spoke) has number circle · spokes + spoke. */
export interface PolarMesh {
  readonly mesh: FieldMesh;
  readonly circles: number;
  readonly spokes: number;
  /** Whether the spokes go all around; then the first circle is hardly wider than the foot itself. */
  readonly around: boolean;
}

/** Edges that begin at a corner: outwards, around, and across to the next of both. */
export const [OUTWARDS, AROUND, ACROSS] = [0, 1, 2];
/** The edge of a kind that begins at a corner. */
export const edgeOf = (corner: number, kind: number): number => corner * 3 + kind;

/**
 * A mesh around the foot of a lens, as fine at each place as its distance from the lens asks.
 * @param rings what the mesh is to hold, relative to the foot
 * @param delta of the lens from the plane, m
 */
export function polarMesh(conditions: Conditions, count: number, rings: ArcRings, delta: number): PolarMesh {
  const { near, far, first, slots } = reach(rings);
  const around = slots >= BEARINGS;
  const spokes = around ? BEARINGS : slots + 1;
  const scale = Math.max(Math.abs(delta), far * 1e-3);
  const turn = (2 * Math.PI) / BEARINGS;
  const from = around ? INNERMOST : Math.asinh((near * 0.999) / scale);
  const till = Math.asinh((far * 1.001) / Math.cos(turn / 2) / scale);
  const steps = Math.max(2, Math.ceil((till - from) / STEP));
  const mesh = new FieldMesh(conditions, count);
  for (let circle = 0; circle <= steps; circle += 1) {
    const over = scale * Math.sinh(from + ((till - from) * circle) / steps);
    for (let spoke = 0; spoke < spokes; spoke += 1) {
      const rad = PHASE_RAD + (first + spoke) * turn;
      mesh.addCorner(over * Math.cos(rad), over * Math.sin(rad));
    }
  }
  const made = { mesh, circles: steps + 1, spokes, around };
  join(made);
  return made;
}

/** Lays edges, triangles (two a square, by square) and bounds over the corners. */
function join({ mesh, circles, spokes, around }: PolarMesh): void {
  const beside = (corner: number, spoke: number) => corner - spoke + ((spoke + 1) % spokes);
  for (let corner = 0; corner < mesh.corners; corner += 1) {
    const next = beside(corner, corner % spokes);
    mesh.addEdge(corner, corner + spokes);
    mesh.addEdge(corner, next);
    mesh.addEdge(corner, next + spokes);
  }
  const last = (circles - 1) * spokes;
  const slots = around ? spokes : spokes - 1;
  for (let circle = 0; circle + 1 < circles; circle += 1)
    for (let spoke = 0; spoke < slots; spoke += 1) {
      const a = circle * spokes + spoke;
      const b = beside(a, spoke);
      const [c, d] = [b + spokes, a + spokes];
      const across = edgeOf(a, ACROSS);
      mesh.triangles.push(a, d, c, edgeOf(a, OUTWARDS), edgeOf(d, AROUND), across);
      mesh.triangles.push(a, c, b, across, edgeOf(b, OUTWARDS), edgeOf(a, AROUND));
    }
  for (let spoke = 0; spoke < slots; spoke += 1) {
    mesh.bounds.push(last + spoke, beside(last + spoke, spoke), edgeOf(last + spoke, AROUND));
    mesh.bounds.push(beside(spoke, spoke), spoke, edgeOf(spoke, AROUND));
  }
  if (around) return;
  for (let inner = 0; inner < last; inner += spokes) {
    mesh.bounds.push(inner, inner + spokes, edgeOf(inner, OUTWARDS));
    const end = inner + spokes - 1;
    mesh.bounds.push(end + spokes, end, edgeOf(end, OUTWARDS));
  }
}

/** How near and far rings come to the foot, and at which of the BEARINGS: the first one, and how many from it on. */
function reach({ corners, starts }: ArcRings): {
  readonly near: number;
  readonly far: number;
  readonly first: number;
  readonly slots: number;
} {
  let [near, far] = [Infinity, 0];
  const met = new Uint8Array(BEARINGS);
  const perRad = BEARINGS / (2 * Math.PI);
  for (let ring = 0; ring + 1 < starts.length; ring += 1) {
    const [begin, end] = [(starts[ring] ?? 0) * 2, (starts[ring + 1] ?? 0) * 2];
    for (let at = begin; at < end; at += 2) {
      const next = at + 2 < end ? at + 2 : begin;
      const [p0, q0, p1, q1] = [
        corners[at] ?? 0,
        corners[at + 1] ?? 0,
        corners[next] ?? 0,
        corners[next + 1] ?? 0,
      ];
      far = Math.max(far, Math.hypot(p0, q0));
      const away = fromFoot(p0, q0, p1, q1);
      near = Math.min(near, away);
      if (away < 1e-6) {
        met.fill(1);
        continue;
      }
      const from = (Math.atan2(q0, p0) - PHASE_RAD) * perRad;
      const swept = Math.atan2(p0 * q1 - q0 * p1, p0 * p1 + q0 * q1) * perRad;
      const [low, high] = [
        Math.floor(Math.min(from, from + swept)),
        Math.floor(Math.max(from, from + swept)),
      ];
      for (let slot = low; slot <= high; slot += 1) met[(slot + 2 * BEARINGS) % BEARINGS] = 1;
    }
  }
  const { first, gap } = longestGap(met);
  if (gap < LEAST_GAP) return { near: 0, far, first: 0, slots: BEARINGS };
  return { near, far, first: (first + gap) % BEARINGS, slots: BEARINGS - gap };
}

function fromFoot(p0: number, q0: number, p1: number, q1: number): number {
  const [ep, eq] = [p1 - p0, q1 - q0];
  const size2 = ep * ep + eq * eq;
  const share = size2 === 0 ? 0 : Math.min(1, Math.max(0, -(p0 * ep + q0 * eq) / size2));
  return Math.hypot(p0 + share * ep, q0 + share * eq);
}

/** The longest run of bearings at which nothing lies, around the turn. */
function longestGap(met: Uint8Array): { readonly first: number; readonly gap: number } {
  let [first, gap, run] = [0, 0, 0];
  for (let at = 0; at < met.length * 2; at += 1) {
    run = met[at % met.length] === 0 ? run + 1 : 0;
    if (run <= gap) continue;
    gap = run;
    first = (at - run + 1) % met.length;
  }
  return { first, gap: Math.min(gap, met.length) };
}
