import { cos, sin, tan } from '../../base/angle.ts';
import type { Vec2 } from '../../base/vector.ts';
import type { FaceCap, Looks } from '../../coverage/target.ts';
import type { Sight } from '../../sight/sight.ts';
import { circle } from './limitCircles.ts';

/**
 * Where faces are seen just at a limit from the side, on a level plane: for a bearing two rays from the foot of the lens; for
 * a place the two circles through it and the foot on which both are seen under the limit's angle (inscribed angles are
 * equal). Plane coordinates.
 */
export function sideCurves(
  { camera: { eye, range } }: Pick<Sight, 'camera'>,
  caps: readonly FaceCap[],
  looks: Looks | undefined,
): Vec2[][] {
  if (looks === undefined) return [];
  const foot: Vec2 = [eye[0], eye[1]];
  return caps
    .filter(({ side }) => side > 0 && side < 180)
    .flatMap(({ side }) =>
      looks.kind === 'bearing'
        ? [-side, side].map((turn): Vec2[] => {
            const way = looks.bearing + 180 + turn;
            return [foot, [foot[0] + range * sin(way), foot[1] + range * cos(way)]];
          })
        : circlesThrough(foot, looks.at, side),
    );
}

function circlesThrough([x, y]: Vec2, [px, py]: Vec2, angle: number): Vec2[][] {
  const apart = Math.hypot(px - x, py - y);
  if (apart < 1e-6) return [];
  const radius = apart / (2 * sin(angle));
  const aside = angle === 90 ? 0 : 1 / (2 * tan(angle));
  return [-1, 1].map((side) =>
    circle([(x + px) / 2 - side * aside * (py - y), (y + py) / 2 + side * aside * (px - x)], radius),
  );
}
