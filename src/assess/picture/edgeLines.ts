import { subtract, type Vec3 } from '../../base/vector.ts';
import type { Camera } from '../../optics/camera.ts';
import { axesOf } from '../../optics/projection.ts';
import type { Facets } from '../../sight/facets.ts';
import { seenStretches, type HidingFaces } from './hidingFaces.ts';
import type { LensPicture } from './lensPicture.ts';
import type { PictureLine } from './picture.ts';
import type { SolidEdges } from './solidEdges.ts';

/** How many edges are drawn between two chances to stop. */
const AT_ONCE = 64;

/** Edges in the picture: those parts of them that are seen, and those that something hides. */
export interface EdgeLines {
  readonly visible: readonly PictureLine[];
  readonly covered: readonly PictureLine[];
}

/**
 * The edges of all solids as a lens sees them, cut exactly where other solids hide them. Yields now and then, so that it can
 * be left.
 */
export function* edgeLines(
  camera: Camera,
  facets: Facets,
  edges: SolidEdges,
  hiding: HidingFaces,
  lens: LensPicture,
): Generator<null, EdgeLines, void> {
  const visible: PictureLine[] = [];
  const covered: PictureLine[] = [];
  const { forward } = axesOf(camera);
  const end = (edge: number, which: 0 | 1): Vec3 => [
    edges.ends[edge * 6 + which * 3] ?? 0,
    edges.ends[edge * 6 + which * 3 + 1] ?? 0,
    edges.ends[edge * 6 + which * 3 + 2] ?? 0,
  ];
  const isFront = (facet: number): boolean => {
    const n = (axis: number) => facets.normals[facet * 3 + axis] ?? 0;
    const q = (axis: 0 | 1 | 2) => (facets.corners[facet * 9 + axis] ?? 0) - camera.eye[axis];
    return n(0) * q(0) + n(1) * q(1) + n(2) * q(2) < 0;
  };
  for (let edge = 0; edge < edges.count; edge += 1) {
    if (edge % AT_ONCE === AT_ONCE - 1) yield null;
    const one = isFront(edges.sides[edge * 2] ?? 0);
    const two = isFront(edges.sides[edge * 2 + 1] ?? 0);
    const kind = one === two ? 'crease' : 'outline';
    if (kind === 'crease' && edges.sharp[edge] !== 1) continue;
    const [from, to] = [end(edge, 0), end(edge, 1)];
    const [a, b] = [subtract(from, camera.eye), subtract(to, camera.eye)];
    const ahead = (v: Vec3) => v[0] * forward[0] + v[1] * forward[1] + v[2] * forward[2];
    if (camera.k === 1 && ahead(a) <= 0 && ahead(b) <= 0) continue;
    const whole = lens.segment(from, to);
    if (whole.length === 0) continue;
    const solid = edges.solid[edge] ?? 0;
    const draw = (into: PictureLine[], start: number, stop: number): void => {
      if (stop - start < 1e-9) return;
      const parts =
        start === 0 && stop === 1 ? whole : lens.segment(between(from, to, start), between(from, to, stop));
      for (const at of parts) into.push({ at, solid, kind });
    };
    // What both its faces turn away from is at the back of its own solid.
    const seen = one || two ? seenStretches(hiding, a, b) : [];
    let until = 0;
    for (let k = 0; k < seen.length; k += 2) {
      draw(covered, until, seen[k] ?? 0);
      draw(visible, seen[k] ?? 0, seen[k + 1] ?? 0);
      until = seen[k + 1] ?? 0;
    }
    draw(covered, until, 1);
  }
  return { visible, covered };
}

const between = (a: Vec3, b: Vec3, share: number): Vec3 =>
  share === 0
    ? a
    : share === 1
      ? b
      : [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share, a[2] + (b[2] - a[2]) * share];
