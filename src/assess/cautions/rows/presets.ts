import { densityAt } from '../../../optics/density.ts';
import { inFrame } from '../../../optics/projection.ts';
import { cautionId, type About } from '../about.ts';
import type { Found } from '../caution.ts';

/** Row 21: only cameras that turn serve what must be seen, and they look one way at a time. */
export function oneWay(about: About): readonly Found[] {
  const { plan, set, scene, asked, obstacles } = about;
  if (set.housing !== 'panTiltZoom') return [];
  const fixed = scene.cameras.filter(({ id }) => {
    const other = plan.cameras[id];
    return other !== undefined && !other.hidden && other.housing !== 'panTiltZoom';
  });
  return asked.flatMap(({ requirement, density, spots, served }): Found[] => {
    const [spot] = served;
    if (spot === undefined) return [];
    const isServed = fixed.some((camera) =>
      spots.some(
        ({ at }) =>
          inFrame(camera, at) &&
          (densityAt(camera, at)?.horizontal ?? 0) >= density &&
          obstacles.segments.firstHit(camera.eye, at, 'solid') === null,
      ),
    );
    if (isServed) return [];
    return [
      {
        id: cautionId(21, requirement.id),
        severity: 'tight',
        weight: 1,
        figures: { row: 21, requirement: requirement.name },
        places: [{ at: spot.at, thing: null }],
        thresholds: [],
      },
    ];
  });
}
