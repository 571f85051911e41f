import type { Fault } from '../base/fault.ts';
import type { Ground } from '../model/ground.ts';
import { GROUND_CELLS } from './limits.ts';
import type { Lamp, Plan } from './plan.ts';

/**
 * What of a ground cannot be read; paths run from the ground. Spot heights in one line and cells without a height can:
 * the ground is then made plainer, with a note.
 */
export function groundFaults(ground: Ground): readonly Fault[] {
  if (ground.kind !== 'grid') return [];
  const { columns, rows, heights } = ground;
  const cells = columns * rows;
  if (cells > GROUND_CELLS)
    return [{ code: 'ground.cells', path: ['heights'], given: cells, allowed: String(GROUND_CELLS) }];
  if (heights.length !== cells)
    return [{ code: 'ground.heights', path: ['heights'], given: heights.length, allowed: String(cells) }];
  return [];
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
