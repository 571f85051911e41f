import type { Lens } from '../../optics/device.ts';
import type { Plan } from '../plan.ts';
import { changed } from './changed.ts';
import { withCamera } from './withCamera.ts';

/**
 * Changes a camera's lens. On a fixed lens a new focal length is another lens: the angles printed for the former no
 * longer hold and go, unless new ones are given too. A stated angle replaces a law that was known itself.
 * @param change focal lengths in mm, angles in °; `hfov` states the angle of a fixed lens, null that none is printed
 * @throws       RangeError on an unknown camera, a number that is not finite and above 0, or a setting outside the range
 */
export function setLens(
  plan: Plan,
  id: string,
  change: Partial<Lens> & { readonly hfov?: number | null },
): Plan {
  return withCamera(plan, id, (camera) => {
    const lens = lensWith(camera.device.lens, change);
    return lens === camera.device.lens ? camera : { ...camera, device: { ...camera.device, lens } };
  });
}

function lensWith(lens: Lens, { hfov, ...change }: Parameters<typeof setLens>[2]): Lens {
  const { focalLength, shortest, longest } = change;
  for (const [key, value] of Object.entries({ hfov, focalLength, shortest, longest }))
    if (typeof value === 'number' && !(value > 0 && Number.isFinite(value)))
      throw new RangeError(`${key} must be above 0, got ${value}`);
  const fixed = lens.shortest === lens.longest && shortest === undefined && longest === undefined;
  let wanted: Partial<Lens> = change;
  if (fixed && focalLength !== undefined && focalLength !== lens.focalLength)
    wanted = { statedHfov: null, statedVfov: null, ...wanted, shortest: focalLength, longest: focalLength };
  if (hfov !== undefined)
    wanted = { ...wanted, statedHfov: hfov === null ? null : { atShortest: hfov, atLongest: hfov } };
  const stated = wanted.statedHfov;
  if (
    stated &&
    lens.statedHfov &&
    stated.atShortest === lens.statedHfov.atShortest &&
    stated.atLongest === lens.statedHfov.atLongest
  )
    wanted = { ...wanted, statedHfov: lens.statedHfov };
  const next = changed(lens, wanted);
  if (next.shortest > next.focalLength || next.focalLength > next.longest)
    throw new RangeError(
      `focal length ${next.focalLength} lies outside ${next.shortest} to ${next.longest} mm`,
    );
  if (next === lens || wanted.statedHfov === undefined || wanted.law !== undefined || next.law === undefined)
    return next;
  const { law: _, ...withoutLaw } = next;
  return withoutLaw;
}
