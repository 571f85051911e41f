import type { Camera } from '../optics/camera.ts';
import { footingOf } from '../sight/footing.ts';
import { horizontalPlane } from '../sight/plane.ts';
import { overlay, type Overlaid } from '../sight/overlay.ts';
import type { Region, Window } from '../sight/sight.ts';
import { NO_AREA, plus, type Area } from './area.ts';
import { areasWhere } from './areaWhere.ts';
import { conditionSets, type ConditionSets } from './conditions.ts';
import type { BandRule } from './rule.ts';

/** More cameras than this are put together from cells: the parts of an overlay may double with each. */
export const MOST_OVERLAID = 8;

/** One camera as the site's areas need it. */
export interface Seer {
  readonly camera: Camera;
  readonly seen: Region;
  readonly rule: BandRule;
}

/**
 * Areas that reach each band or better by the best of several cameras, exactly: the ground is cut into the parts that the
 * same cameras see, and in each a place counts where one of them reaches the band.
 * @param ground ring of the ground that counts
 * @param height of the plane above z = 0, m
 */
export function siteAreas(
  ground: Window,
  seers: readonly Seer[],
  height: number,
  bands: number,
): readonly Area[] {
  const sets = seers.map(({ camera, rule }) =>
    conditionSets(camera, footingOf(camera.eye, horizontalPlane(height)), rule),
  );
  const parts = overlay(
    ground,
    seers.map(({ seen }) => seen.rings),
  );
  return parts.reduce<readonly Area[]>(
    (sums, part) => {
      const areas = partAreas(part, seers, sets, height, bands);
      return sums.map((sum, band) => plus(sum, areas[band] ?? NO_AREA));
    },
    Array.from({ length: bands }, () => NO_AREA),
  );
}

function partAreas(
  { triangles, members }: Overlaid,
  seers: readonly Seer[],
  sets: readonly ConditionSets[],
  height: number,
  bands: number,
): readonly Area[] {
  const room = new Float64Array(Math.max(...sets.map(({ count }) => count)));
  const reached = (p: number, q: number, values: Float64Array, at: number) => {
    values.fill(-Infinity, at, at + bands);
    for (const member of members) {
      const [seer, set] = [seers[member], sets[member]];
      if (seer === undefined || set === undefined) continue;
      set.of(p - seer.camera.eye[0], q - seer.camera.eye[1], room, 0);
      for (let band = 0; band < bands; band += 1) {
        let least = Infinity;
        for (const i of set.atLeast[band] ?? []) least = Math.min(least, room[i] ?? 0);
        if (least > (values[at + band] ?? 0)) values[at + band] = least;
      }
    }
  };
  const lenses = members.flatMap((member) => {
    const eye = seers[member]?.camera.eye;
    return eye === undefined ? [] : [{ p: eye[0], q: eye[1], delta: height - eye[2] }];
  });
  const alone = Array.from({ length: bands }, (_, band) => [band]);
  return areasWhere(triangles, reached, bands, alone, lenses).map(({ value, bound }): Area => ({
    value,
    bound,
    how: 'exact',
  }));
}
