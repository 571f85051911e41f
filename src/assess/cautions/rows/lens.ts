import { gap } from '../closest.ts';
import { cautionId, placeOfCamera, type About } from '../about.ts';
import type { Found } from '../caution.ts';

/** Between which distances a lens is sharp, m; `far` null where to infinity. */
export interface Sharp {
  readonly near: number;
  readonly far: number | null;
}

/**
 * Depth of field of a lens focused on a distance.
 * @param focalLength mm
 * @param circle      of confusion, mm
 * @param focus       m
 * Source: facts O18 and O19 (near s(H − f)/(H + s − 2f), far s(H − f)/(H − s), H = f²/(Nc) + f; Greenleaf, Photographic
 * Optics, 1950, from memory).
 */
export function depthOfField(focalLength: number, fNumber: number, circle: number, focus: number): Sharp {
  const f = focalLength / 1000;
  const h = (f * f) / (fNumber * (circle / 1000)) + f;
  const near = (focus * (h - f)) / (h + focus - 2 * f);
  return { near, far: focus >= h ? null : (focus * (h - f)) / (h - focus) };
}

/** Row 7: what must be seen lies out of the depth of field. */
export function outOfFocus(about: About): readonly Found[] {
  const { set, camera } = about;
  const { fNumber } = set.device.lens;
  const focus = set.sheet.focusDistance;
  if (fNumber === null || focus === null) return [];
  const circle = Math.max(camera.sensor.width / camera.frame.width, about.limit('focus.circle'));
  const { near, far } = depthOfField(camera.focalLength, fNumber, circle, focus);
  return about.asked.flatMap(({ requirement, served }): Found[] => {
    const soft = served
      .map((spot) => ({ spot, distance: gap(camera.eye, spot.at) }))
      .map((one) => ({ ...one, off: Math.max(near / one.distance, far === null ? 0 : one.distance / far) }))
      .sort((one, two) => two.off - one.off);
    // Of a walk one sharp place is enough.
    const worst = requirement.shape === 'approach' ? soft.at(-1) : soft[0];
    if (worst === undefined || worst.off <= 1) return [];
    return [
      {
        id: cautionId(7, requirement.id),
        severity: 'tight',
        weight: worst.off,
        figures: { row: 7, requirement: requirement.name, focus, distance: worst.distance, near, far },
        places: [{ at: worst.spot.at, thing: null }],
        thresholds: ['focus.circle'],
      },
    ];
  });
}

/** Row 8: a varifocal lens that is set near an end of its range. */
export function endOfRange(about: About): readonly Found[] {
  const { shortest, longest, focalLength } = about.set.device.lens;
  if (!(longest > shortest)) return [];
  const limit = about.limit('range.end');
  const share = (focalLength - shortest) / (longest - shortest);
  const off = Math.min(share, 1 - share);
  if (off > limit) return [];
  return [
    {
      id: cautionId(8),
      severity: 'tell',
      weight: 1,
      figures: { row: 8, end: share < 0.5 ? 'shortest' : 'longest', focalLength, limit },
      places: [placeOfCamera(about, about.camera.eye)],
      thresholds: ['range.end'],
    },
  ];
}
