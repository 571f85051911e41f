import { cos, sin } from '../../base/angle.ts';
import type { Vec2, Vec3 } from '../../base/vector.ts';
import type { Edition } from '../../coverage/band.ts';
import { pointState, type PointState } from '../../coverage/point.ts';
import { ruleOf } from '../../coverage/rule.ts';
import { inRing, signedArea } from '../../model/ring.ts';
import { span } from '../../model/segment.ts';
import type { Camera } from '../../optics/camera.ts';
import type { Plan } from '../../plan/plan.ts';
import { lensInside } from '../../sight/lensInside.ts';
import type { Obstacles } from '../ground.ts';

type Requirement = Plan['requirements'][string];

/** A place of what must be seen, as one camera sees it by day: in its frame, with nothing in the way, or not. */
export interface Spot {
  readonly at: Vec3;
  /** Over ground, unit: where the face or plate looks; null where that is not said. */
  readonly looks: Vec2 | null;
  /** And the way somebody walks there. */
  readonly walks: Vec2 | null;
  readonly state: PointState;
}

/** Something that must be seen, and what one camera makes of it. */
export interface Asked {
  readonly requirement: Requirement;
  /** px/m of the band that is asked for; Infinity where the edition has no such band. */
  readonly density: number;
  readonly spots: readonly Spot[];
  /** Those in the frame with nothing in the way. */
  readonly seen: readonly Spot[];
  /** Of them, those with enough pixels: the camera may be counted on for these, if nothing else is against it. */
  readonly served: readonly Spot[];
}

/** Spots along a line and over an area are so far apart, m, but no more than MOST. */
const ALONG = 0.25;
const OVER = 0.5;
const MOST = 300;

/** What must be seen, as a camera sees it: by pixels and what is in the way alone, without limits of faces. */
export function* askedOf(
  plan: Plan,
  camera: Camera,
  { facets, segments }: Obstacles,
  edition: Edition,
  groundAt: (place: Vec2) => number,
): Generator<void, readonly Asked[], void> {
  const rule = ruleOf(camera, { kind: 'ground', height: 0 }, edition.bands, []);
  const inside = lensInside(camera.eye, facets);
  const found: Asked[] = [];
  for (const id of plan.requirementOrder) {
    const requirement = plan.requirements[id];
    if (requirement === undefined) continue;
    const spots: Spot[] = [];
    for (const { place, walks } of placesOf(requirement)) {
      const at: Vec3 = [place[0], place[1], groundAt(place) + requirement.targetHeight];
      const state = pointState(camera, at, facets.solids, segments, rule, inside);
      spots.push({ at, looks: looksAt(requirement, place, walks), walks, state });
    }
    const density = edition.bands.find(({ key }) => key === requirement.band)?.density ?? Infinity;
    const seen = spots.filter(({ state }) => state.state === 'covered' || state.state === 'too coarse');
    const served = seen.filter(
      ({ state }) => state.state === 'covered' && state.density !== null && state.density >= density,
    );
    found.push({ requirement, density, spots, seen, served });
    yield;
  }
  return found;
}

interface Placed {
  readonly place: Vec2;
  readonly walks: Vec2 | null;
}

/** The places of a requirement at which it is asked. */
function placesOf({ shape, at }: Requirement): readonly Placed[] {
  const [first] = at;
  if (first === undefined) return [];
  if (shape === 'point' || at.length === 1) return [{ place: first, walks: null }];
  return shape === 'area' && at.length > 2 ? placesOver(at) : placesAlong(at, shape === 'approach');
}

function placesAlong(at: readonly Vec2[], walked: boolean): readonly Placed[] {
  const length = at.slice(1).reduce((sum, b, k) => sum + span(at[k] ?? b, b), 0);
  const step = Math.max(ALONG, length / MOST);
  return at.slice(1).flatMap((b, k): Placed[] => {
    const a = at[k] ?? b;
    const far = span(a, b);
    if (far === 0) return [];
    const way: Vec2 = [(b[0] - a[0]) / far, (b[1] - a[1]) / far];
    const many = Math.max(1, Math.ceil(far / step - 1e-9));
    const last = k === at.length - 2 ? many : many - 1;
    return Array.from({ length: last + 1 }, (_, n): Placed => {
      const s = (far * n) / many;
      return { place: [a[0] + way[0] * s, a[1] + way[1] * s], walks: walked ? way : null };
    });
  });
}

function placesOver(ring: readonly Vec2[]): readonly Placed[] {
  const step = Math.max(OVER, Math.sqrt(Math.abs(signedArea(ring)) / MOST));
  const [xs, ys] = [ring.map(([x]) => x), ring.map(([, y]) => y)];
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [bottom, top] = [Math.min(...ys), Math.max(...ys)];
  const places: Placed[] = [];
  for (let y = bottom + step / 2; y < top; y += step)
    for (let x = left + step / 2; x < right; x += step)
      if (inRing([x, y], ring)) places.push({ place: [x, y], walks: null });
  return places.length > 0 ? places : ring.map((place) => ({ place, walks: null }));
}

function looksAt({ looks }: Requirement, place: Vec2, walks: Vec2 | null): Vec2 | null {
  if (looks === null) return walks;
  if (looks.kind === 'along') return walks;
  if (looks.kind === 'bearing') return [sin(looks.bearing), cos(looks.bearing)];
  const far = span(place, looks.at);
  return far < 1e-6 ? null : [(looks.at[0] - place[0]) / far, (looks.at[1] - place[1]) / far];
}

/** How far off, in plan, a camera stands from where a face or plate looks, °; null where that is not said, or straight above. */
export function angleFromLooks(camera: Camera, { at, looks }: Spot): number | null {
  if (looks === null) return null;
  const [x, y] = [camera.eye[0] - at[0], camera.eye[1] - at[1]];
  if (x * x + y * y < 1e-12) return null;
  const across = looks[0] * y - looks[1] * x;
  return (Math.abs(Math.atan2(across, looks[0] * x + looks[1] * y)) * 180) / Math.PI;
}
