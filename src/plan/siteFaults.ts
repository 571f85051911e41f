import type { Fault } from '../base/fault.ts';
import { LEAST_SIZE } from '../base/tolerance.ts';
import type { Vec2 } from '../base/vector.ts';
import type { Ground, Spot } from '../model/ground.ts';
import { GROUND_CELLS } from './limits.ts';
import type { Lamp, Plan } from './plan.ts';

/** Why no ground can be made of what is given, if so; paths run from the ground. */
export function groundFaults(ground: Ground): readonly Fault[] {
  switch (ground.kind) {
    case 'flat':
      return [];
    case 'spots':
      return spotFaults(ground.spots);
    case 'grid': {
      const { columns, rows, heights } = ground;
      const cells = columns * rows;
      if (cells > GROUND_CELLS)
        return [{ code: 'ground.cells', path: ['heights'], given: cells, allowed: String(GROUND_CELLS) }];
      if (heights.length !== cells)
        return [{ code: 'ground.heights', path: ['heights'], given: heights.length, allowed: String(cells) }];
      return heights.every((height) => height === null)
        ? [{ code: 'ground.unknown', path: ['heights'] }]
        : [];
    }
  }
}

/** Too few, two at one place, or all in one line: no surface lies through them. */
function spotFaults(spots: readonly Spot[]): readonly Fault[] {
  if (spots.length < 3)
    return [{ code: 'spots.few', path: ['spots'], given: spots.length, allowed: '3 or more' }];
  const places = new Map<string, number>();
  for (const [index, { at }] of spots.entries()) {
    const key = at.join(' ');
    const other = places.get(key);
    if (other !== undefined)
      return [
        { code: 'spots.twice', path: ['spots', index, 'at'], given: `spots ${other + 1} and ${index + 1}` },
      ];
    places.set(key, index);
  }
  return widthOf(spots.map(({ at }) => at)) < LEAST_SIZE ? [{ code: 'spots.line', path: ['spots'] }] : [];
}

/** How far places lie from the line through the first and the one farthest from it, m. */
function widthOf([first, ...others]: readonly Vec2[]): number {
  if (!first) return 0;
  const away = others.map(([x, y]): Vec2 => [x - first[0], y - first[1]]);
  const far = away.reduce<Vec2>((one, two) => (Math.hypot(...two) > Math.hypot(...one) ? two : one), [0, 0]);
  const size = Math.hypot(...far);
  if (size === 0) return 0;
  return away.reduce((most, [x, y]) => Math.max(most, Math.abs(far[0] * y - far[1] * x) / size), 0);
}

/** What of a lamp's photometry does not hold together: angles that do not rise, or candela for other angles. */
export function lampFaults({ id, name, light }: Lamp): readonly Fault[] {
  if (light.kind === 'range') return [];
  const { verticals, horizontals, candela } = light.photometry;
  const path = ['lamps', id, 'light', 'photometry'];
  const faults: Fault[] = [];
  for (const [key, angles] of Object.entries({ verticals, horizontals })) {
    const at = angles.findIndex((angle, index) => index > 0 && !(angle > (angles[index - 1] ?? angle)));
    if (at >= 0)
      faults.push({ code: 'photometry.rising', path: [...path, key, at], given: angles[at], subject: name });
  }
  const wrong =
    candela.length !== horizontals.length || candela.some((row) => row.length !== verticals.length);
  if (wrong)
    faults.push({
      code: 'photometry.count',
      path: [...path, 'candela'],
      given: candela.reduce((sum, row) => sum + row.length, 0),
      allowed: `${horizontals.length} × ${verticals.length}`,
      subject: name,
    });
  return faults;
}

/** A face that looks along a line that the requirement does not have. */
export const looksFaults = ({ id, name, shape, looks }: Plan['requirements'][string]): readonly Fault[] =>
  looks?.kind === 'along' && (shape === 'point' || shape === 'area')
    ? [{ code: 'looks.along', path: ['requirements', id, 'looks'], given: shape, subject: name }]
    : [];
