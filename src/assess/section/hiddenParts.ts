import { degreesFromRad } from '../../base/angle.ts';
import type { Vec2 } from '../../base/vector.ts';
import { directionOf } from '../../optics/frameEdges.ts';
import type { CutSolid, HiddenPart } from './section.ts';
import type { FrameEdges } from '../../optics/frameEdges.ts';

/** A side that faces the lens, from the lens: it begins at the one depression and ends at the other, °. */
interface Front {
  readonly solid: number;
  readonly a: Vec2;
  readonly b: Vec2;
  readonly from: number;
  readonly to: number;
}

/** Depressions nearer than this are one, °. */
const SAME_RAY = 1e-9;

/**
 * What solids hide of the plane within the frame, one part for each stretch of neighbouring rays that meet the same solid
 * first. For the picture: whoever prints numbers reads the lines.
 * @param far how far parts go on, m
 */
export function hiddenParts(
  cuts: readonly CutSolid[],
  lens: number,
  { top, bottom }: FrameEdges,
  far: number,
): HiddenPart[] {
  const fronts = cuts
    .filter(({ passage }) => passage === 'solid')
    .flatMap((cut) => frontsOf(cut, lens, top))
    .toSorted((a, b) => a.from - b.from);
  const ends = fronts.flatMap(({ from, to }) => [from, to]).filter((ray) => ray > top && ray < bottom);
  const rays = [top, ...ends.toSorted((a, b) => a - b), bottom];
  const parts: { solid: number; until: number; near: Vec2[]; away: Vec2[] }[] = [];
  for (let at = 1; at < rays.length; at += 1) {
    const [from, to] = [rays[at - 1] ?? 0, rays[at] ?? 0];
    if (to - from < SAME_RAY) continue;
    const middle = (from + to) / 2;
    const first = nearest(fronts, middle);
    if (first === null) continue;
    const near = [from, to].map((ray): Vec2 => scaled(ray, reach(first, ray), lens));
    const away = [from, middle, to].map((ray): Vec2 => scaled(ray, far, lens));
    const last = parts.at(-1);
    if (last?.solid === first.solid && from - last.until < SAME_RAY) {
      last.near.push(...near);
      last.away.push(...away);
      last.until = to;
    } else parts.push({ solid: first.solid, until: to, near, away });
  }
  return parts.map(({ solid, near, away }) => ({ solid, outline: [...near, ...away.toReversed()] }));
}

const scaled = (ray: number, length: number, lens: number): Vec2 => {
  const [dt, dh] = directionOf(ray);
  return [dt * length, lens + dh * length];
};

/** The sides of a cut that face the lens, with depressions that are within a turn above the frame's top. */
function frontsOf({ solid, sides }: CutSolid, lens: number, top: number): Front[] {
  const fronts: Front[] = [];
  for (let at = 0; at < sides.length; at += 4) {
    const a: Vec2 = [sides[at] ?? 0, (sides[at + 1] ?? 0) - lens];
    const b: Vec2 = [sides[at + 2] ?? 0, (sides[at + 3] ?? 0) - lens];
    // With the solid on its left, a side faces a lens on its right: seen from there it runs clockwise, downwards.
    const turns = a[0] * b[1] - a[1] * b[0];
    if (!(turns < 0)) continue;
    const from = depressionOf(a);
    const span = degreesFromRad(Math.atan2(-turns, a[0] * b[0] + a[1] * b[1]));
    const begin = top + ((((from - top) % 360) + 360) % 360);
    fronts.push({ solid, a, b, from: begin, to: begin + span });
    // One that is across the frame's top begins before it.
    if (begin + span > top + 360) fronts.push({ solid, a, b, from: begin - 360, to: begin + span - 360 });
  }
  return fronts;
}

const depressionOf = ([t, h]: Vec2): number => degreesFromRad(Math.atan2(-h, t));

function nearest(fronts: readonly Front[], ray: number): Front | null {
  let [best, least]: [Front | null, number] = [null, Infinity];
  for (const front of fronts) {
    if (front.from > ray) break;
    if (front.to < ray) continue;
    const far = reach(front, ray);
    if (far < least) [best, least] = [front, far];
  }
  return best;
}

/** How far along a ray a side is met, m. */
function reach({ a, b }: Front, ray: number): number {
  const [dt, dh] = directionOf(ray);
  const across = dt * (b[1] - a[1]) - dh * (b[0] - a[0]);
  return across === 0 ? Math.hypot(...a) : (a[0] * (b[1] - a[1]) - a[1] * (b[0] - a[0])) / across;
}
