import { pointOn } from '../../base/plane.ts';
import type { Vec2, Vec3 } from '../../base/vector.ts';
import { bandOutlines } from '../../coverage/bandOutlines.ts';
import { conditionSets } from '../../coverage/conditions.ts';
import type { CameraCoverage } from '../../coverage/coverage.ts';
import { pointState } from '../../coverage/point.ts';
import { ruleOf } from '../../coverage/rule.ts';
import { densityAt } from '../../optics/density.ts';
import { ARC, type ArcRings } from '../../sight/arcRings.ts';
import { footingOf } from '../../sight/footing.ts';
import type { Segments } from '../../sight/segment.ts';
import type { Assessment } from '../assessment.ts';
import type { LensPicture } from './lensPicture.ts';
import { BENT, type BandLine } from './picture.ts';

/** A line on which density equals a band's is one of density, to this share. */
const SAME_DENSITY = 1e-3;
/** A line nearer to the picture's edge than this is that edge, px. */
const AT_EDGE = 0.75;

/**
 * The lines at which bands begin on what is asked for, as the outlines of what is covered have them: where density falls below
 * a band's, and where a limit from above, from the side, or of the range ends it. None over uneven ground.
 */
export function bandLines(
  coverage: CameraCoverage,
  { edition, faceCaps, scene, question }: Assessment,
  segments: Segments,
  lens: LensPicture,
): BandLine[] {
  const { camera, sight } = coverage;
  const { plane, seen } = sight;
  if (seen.rings.length === 0) return [];
  const rule = ruleOf(camera, question.target, edition.bands, faceCaps);
  const footing = footingOf(camera.eye, plane);
  const sets = conditionSets(camera, footing, rule);
  const outlines = bandOutlines(seen.rings, sets, footing.foot, footing.delta, null);
  const isLit = (point: Vec3): boolean =>
    scene.night === null ||
    pointState(camera, point, [], segments, rule, null, plane.normal, scene.night).state !== 'too dark';
  return outlines.flatMap((rings, at) => {
    const wanted = edition.bands[at]?.density ?? 0;
    return curvesOf(rings, wanted).flatMap((curve): BandLine[] => {
      const points = curve.map(([a, b]) => pointOn(plane, a, b));
      const middle = points[Math.floor(points.length / 2)];
      if (middle === undefined || !isLit(middle)) return [];
      const density = densityAt(camera, middle)?.horizontal ?? 0;
      const isDensity = Math.abs(density / wanted - 1) < SAME_DENSITY;
      return lens
        .path(points)
        .filter((line) => !liesAtEdge(line, lens))
        .map((line) => ({ band: at + 1, limit: !isDensity, at: line }));
    });
  });
}

/** The bent edges of rings, those that follow one another as one line; straight ones are shadows and sides of the frame. */
function curvesOf({ corners, starts, arcs }: ArcRings, density: number): Vec2[][] {
  if (arcs === null) return [];
  const found: Vec2[][] = [];
  for (let ring = 0; ring + 1 < starts.length; ring += 1) {
    const [first, end] = [starts[ring] ?? 0, starts[ring + 1] ?? 0];
    let open: Vec2[] | null = null;
    for (let at = first; at < end; at += 1) {
      const next = at + 1 < end ? at + 1 : first;
      const bulge = arcs[at * ARC] ?? 0;
      if (bulge === 0) {
        open = null;
        continue;
      }
      const from: Vec2 = [corners[at * 2] ?? 0, corners[at * 2 + 1] ?? 0];
      const to: Vec2 = [corners[next * 2] ?? 0, corners[next * 2 + 1] ?? 0];
      if (open === null) {
        open = [from];
        found.push(open);
      }
      open.push(...bent(from, to, bulge, arcs[at * ARC + 1] ?? 0, arcs[at * ARC + 2] ?? 1, density));
    }
  }
  return found;
}

/** Places along a bit of an arc after its beginning: a parabola over the whole arc's chord (sight/arcRings.ts). */
function bent(from: Vec2, to: Vec2, bulge: number, low: number, high: number, density: number): Vec2[] {
  const span = high - low;
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy);
  if (length === 0 || !(span > 0)) return [to];
  // Area ⅔ · sagitta · chord; the region lies on the left, so that it bulges to the right.
  const sagitta = (1.5 * bulge * span) / length;
  const parts = Math.max(1, Math.ceil(Math.sqrt((Math.abs(sagitta) * density) / (BENT / 4))));
  const rise = (share: number): number => 4 * sagitta * share * (1 - share);
  const [foot, head] = [rise(low), rise(high)];
  return Array.from({ length: parts }, (_, k): Vec2 => {
    const t = (k + 1) / parts;
    const off = rise(low + t * span) - foot - (head - foot) * t;
    return [from[0] + dx * t + (dy / length) * off, from[1] + dy * t - (dx / length) * off];
  });
}

/** Whether a line runs along the picture's edge, where the frame ends what is seen. */
function liesAtEdge(line: Float64Array, { width, height }: LensPicture): boolean {
  const half = 2 * Math.floor(line.length / 4);
  return [0, half, line.length - 2].every((at) => {
    const [x, y] = [line[at] ?? 0, line[at + 1] ?? 0];
    return Math.min(x, y, width - x, height - y) < AT_EDGE;
  });
}
