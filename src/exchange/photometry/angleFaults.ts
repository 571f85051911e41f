import type { Fault } from '../../base/fault.ts';
import type { Photometry } from '../../optics/light.ts';

/** Ends of horizontal angles that say how the rest of the circle is: all round, quarters, halves (two ways), in full. */
const ENDS = [
  [0, 0],
  [0, 90],
  [0, 180],
  [90, 270],
  [0, 360],
] as const;

/** What is wrong with the angles of photometry of type C. */
export function angleFaults({
  verticals,
  horizontals,
}: Pick<Photometry, 'verticals' | 'horizontals'>): readonly Fault[] {
  const faults: Fault[] = [];
  for (const [word, angles] of [
    ['vertical', verticals],
    ['horizontal', horizontals],
  ] as const) {
    const at = angles.findIndex((angle, index) => index > 0 && !(angle > (angles[index - 1] ?? angle)));
    if (at >= 0) faults.push({ code: 'ies.rising', path: [word, at], given: angles[at] });
  }
  const [low, high] = [verticals[0] ?? 0, verticals.at(-1) ?? 0];
  if (low < 0 || high > 180)
    faults.push({
      code: 'ies.vertical',
      path: ['vertical'],
      given: `${low}° to ${high}°`,
      allowed: '0° to 180°',
    });
  const [first, last] = [horizontals[0] ?? 0, horizontals.at(-1) ?? 0];
  if (!ENDS.some(([from, to]) => from === first && to === last))
    faults.push({
      code: 'ies.horizontal',
      path: ['horizontal'],
      given: `${first}° to ${last}°`,
      allowed: '0° alone, or 0° to 90°, 180° or 360°',
    });
  return faults;
}
