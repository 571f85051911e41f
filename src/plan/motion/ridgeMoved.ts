import { turn } from '../../base/angle.ts';
import { validFootprint } from '../../model/footprint.ts';
import { bearingOf, fallOf } from '../../model/monopitchRoof.ts';
import { isRectangle, longer } from '../../model/rectangle.ts';
import { cornerAt } from '../../model/ring.ts';
import { heading } from '../../model/segment.ts';
import { straightened } from '../../model/straightRun.ts';
import type { Building, Ring } from '../../model/structure.ts';
import type { Motion } from './motion.ts';

/** Bearings nearer than this are the same, °. */
const SAME_BEARING = 1e-6;

/**
 * The bearing of a roof's ridge, or of its fall, on a building that is moved to another outline. A roof left to decide by
 * itself goes on doing so where that comes to the same roof; else it gets the bearing that it had, moved.
 */
export function ridgeMoved({ outline, roof }: Building, moved: Ring, motion: Motion): number | null {
  if (roof.ridge !== null) return motion.bearing(roof.ridge);
  if (motion.slides) return null;
  const [was, is] = [ownBearing(outline, roof.kind), ownBearing(moved, roof.kind)];
  if (was === null || is === null) return null;
  const wanted = motion.bearing(was);
  const off = Math.abs(turn(is, wanted));
  const isSame = off < SAME_BEARING || (roof.kind === 'gable' && Math.abs(off - 180) < SAME_BEARING);
  return isSame ? null : wanted;
}

/** What a roof of a kind decides on by itself; null for those that do not, and on what cannot be built. */
function ownBearing(outline: Ring, kind: Building['roof']['kind']): number | null {
  if (kind !== 'monopitch' && kind !== 'gable') return null;
  const valid = validFootprint(outline, [], '');
  if (!valid.ok) return null;
  const { ring } = straightened(valid.value.outline);
  if (kind === 'monopitch') return bearingOf(fallOf(ring, null));
  if (!isRectangle(ring)) return null;
  const edge = longer(ring);
  return bearingOf(heading(cornerAt(ring, edge), cornerAt(ring, edge + 1)));
}
