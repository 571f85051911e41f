import { subtract, type Vec3 } from '../../base/vector.ts';
import type { Assessment } from '../../assess/assessment.ts';
import type { Edition } from '../../coverage/band.ts';
import type { CameraCoverage } from '../../coverage/coverage.ts';
import type { Sight } from '../../sight/sight.ts';
import { contoursOf } from './coverageContours.ts';
import { frameEdge } from './frameEdge.ts';
import { pointOn } from '../planeFrame.ts';
import { sideCurves } from './sideCurves.ts';
import { limitCircles } from './limitCircles.ts';
import { LIMIT, OUTLINE } from './WashLines.ts';

export interface WashSegments {
  readonly count: number;
  readonly from: Float32Array;
  readonly to: Float32Array;
  readonly kind: Float32Array;
}

/** Outlines and contours of the cameras that count, relative to the origin. Each camera's are made once. */
export function washSegments(
  cameras: readonly CameraCoverage[],
  assessment: Assessment,
  origin: Vec3,
  dragged: boolean,
): WashSegments {
  const parts = cameras.map((coverage) => segmentsOf(coverage, assessment, origin, dragged));
  const count = parts.reduce((sum, part) => sum + part.count, 0);
  const all = {
    count,
    from: new Float32Array(count * 3),
    to: new Float32Array(count * 3),
    kind: new Float32Array(count),
  };
  let at = 0;
  for (const part of parts) {
    all.from.set(part.from, at * 3);
    all.to.set(part.to, at * 3);
    all.kind.set(part.kind, at);
    at += part.count;
  }
  return all;
}

const made = new WeakMap<
  Sight,
  { origin: Vec3; edition: Edition; caps: string; dragged: boolean; segments: WashSegments }
>();

function segmentsOf(
  coverage: CameraCoverage,
  { edition, faceCaps, scene, question: { target } }: Assessment,
  origin: Vec3,
  dragged: boolean,
): WashSegments {
  const looks = target.kind === 'face' ? target.looks : undefined;
  const infrared = scene.night?.infrared.get(coverage.camera.id)?.range ?? 0;
  const caps = JSON.stringify([faceCaps, looks, infrared]);
  const kept = made.get(coverage.sight);
  if (
    kept &&
    sameOrigin(kept.origin, origin) &&
    kept.edition === edition &&
    kept.caps === caps &&
    (dragged || !kept.dragged)
  )
    return kept.segments;
  const [from, to, kind]: [number[], number[], number[]] = [[], [], []];
  const { plane, seen, beyondScreens } = coverage.sight;
  const add = (a: readonly [number, number], b: readonly [number, number], what: number): void => {
    from.push(...subtract(pointOn(plane, a[0], a[1]), origin));
    to.push(...subtract(pointOn(plane, b[0], b[1]), origin));
    kind.push(what);
  };
  for (const piece of seen.pieces) add(piece.from, piece.to, OUTLINE);
  if (beyondScreens !== seen) for (const piece of beyondScreens.pieces) add(piece.from, piece.to, OUTLINE);
  if (!coverage.sight.framed) {
    for (const line of frameEdge(coverage.sight))
      line.forEach((point, i) => {
        const before = line[i - 1];
        if (before) add(before, point, OUTLINE);
      });
  }
  const limits = [
    ...limitCircles(coverage.sight, faceCaps, infrared),
    ...sideCurves(coverage.sight, faceCaps, looks),
  ];
  for (const line of limits)
    line.forEach((point, i) => {
      const before = line[i - 1];
      if (before) add(before, point, LIMIT);
    });
  for (const { band, points } of contoursOf(coverage, edition, dragged)) {
    for (let i = 2; i + 1 < points.length; i += 2)
      add([points[i - 2] ?? 0, points[i - 1] ?? 0], [points[i] ?? 0, points[i + 1] ?? 0], band + 1);
  }
  const segments = {
    count: kind.length,
    from: Float32Array.from(from),
    to: Float32Array.from(to),
    kind: Float32Array.from(kind),
  };
  made.set(coverage.sight, { origin, edition, caps, dragged, segments });
  return segments;
}

/** Two windows on one site have origins of their own that agree. */
const sameOrigin = (one: Vec3, two: Vec3): boolean => one.every((value, axis) => value === two[axis]);
