import type { Vec2 } from '../base/vector.ts';
import type { Camera } from '../optics/camera.ts';
import { polygonRings, type ArcRings } from '../sight/arcRings.ts';
import { footingOf } from '../sight/footing.ts';
import { areasByCount } from '../sight/overlaid.ts';
import { horizontalPlane } from '../base/plane.ts';
import type { Region, Window } from '../sight/sight.ts';
import type { Area } from './area.ts';
import { bandOutlines } from './bandOutlines.ts';
import { conditionSets } from './conditions.ts';
import type { BandRule } from './rule.ts';

/** More cameras than this are put together from cells. */
export const MOST_OVERLAID = 30;

/**
 * What an area may be off by, m², and as a share of it; the share is larger where a lens is at or near the orthographic end
 * of the law, whose picture turns over within what it sees. See tests/coverage/bandOutlines and siteAreas.
 */
const SLACK = { square: 3e-4, share: 3e-5, turned: 2e-4 };
const TURNED = -0.6;

/** One camera as the site's areas need it. */
export interface Seer {
  readonly camera: Camera;
  readonly seen: Region;
  readonly rule: BandRule;
  /** From `outlinesOf`, where they are at hand: they stay as long as the camera, its sight and the ground do. */
  readonly outlines?: readonly ArcRings[];
}

/** The site's ground by the best of several cameras and by how many. */
export interface SiteAreas {
  /** One a band: at that band or better. */
  readonly atLeast: readonly Area[];
  /** One a camera: covered, at any band, by at least 1, 2, … of them. */
  readonly byCount: readonly Area[];
}

/**
 * Areas that reach each band or better by the best of several cameras, and areas by how many of them cover.
 * @param ground ring of the ground that counts
 * @param height of the plane above z = 0, m
 */
export const siteAreas = (ground: Window, seers: readonly Seer[], height: number, bands: number): SiteAreas =>
  areasOver(
    seers.map((seer) => seer.outlines ?? outlinesOf(ground, seer, height)),
    bands,
    slackOf(seers),
  );

/** The share of an area by which the curves of these cameras may put it off. */
export const slackOf = (seers: readonly Pick<Seer, 'camera'>[]): number =>
  seers.some(({ camera }) => camera.k < TURNED) ? SLACK.turned : SLACK.share;

/** The outlines of what a camera covers of the ground, one a band, at that band or better. */
export function outlinesOf(
  ground: Window,
  { camera, seen, rule }: Seer,
  height: number,
): readonly ArcRings[] {
  const footing = footingOf(camera.eye, horizontalPlane(height));
  const sets = conditionSets(camera, footing, rule);
  const counted = holdsAll(ground, seen.rings) ? null : polygonRings(ground);
  return bandOutlines(seen.rings, sets, footing.foot, footing.delta, counted);
}

/**
 * The areas of outlines laid over one another, exactly but for the curves.
 * @param outlines one list a camera, in it one outline a band
 * @param share    of an area by which curves may put it off
 */
export function areasOver(
  outlines: readonly (readonly ArcRings[])[],
  bands: number,
  share = SLACK.share,
): SiteAreas {
  const counts = Array.from({ length: bands }, (_, band) =>
    areasByCount(outlines.flatMap((one) => one[band] ?? [])),
  );
  const exact = (area: number): Area => {
    const value = Math.max(0, area);
    return { value, bound: SLACK.square + share * value, how: 'exact' };
  };
  return {
    atLeast: counts.map((areas) => exact(areas[0] ?? 0)),
    byCount: Array.from(counts[0] ?? [], exact),
  };
}

/** Whether a ring is convex, counter-clockwise, and holds all corners of some rings. */
function holdsAll(ground: Window, rings: readonly Float64Array[]): boolean {
  return ground.every((from, at) => {
    const to = ground[(at + 1) % ground.length] ?? from;
    const after = ground[(at + 2) % ground.length] ?? from;
    return leftOf(from, to, after[0], after[1]) && rings.every((ring) => allLeft(from, to, ring));
  });
}

function allLeft(from: Vec2, to: Vec2, ring: Float64Array): boolean {
  for (let at = 0; at < ring.length; at += 2)
    if (!leftOf(from, to, ring[at] ?? 0, ring[at + 1] ?? 0)) return false;
  return true;
}

/** A corner within a nanometre of the line counts as on it. */
const leftOf = ([a0, b0]: Vec2, [a1, b1]: Vec2, a: number, b: number): boolean =>
  (a1 - a0) * (b - b0) - (b1 - b0) * (a - a0) >= -1e-9 * Math.hypot(a1 - a0, b1 - b0);
