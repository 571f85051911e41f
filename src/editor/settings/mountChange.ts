import type { LengthUnit } from '../../base/length.ts';
import { distance, dot, subtract } from '../../base/vector.ts';
import { groundHeight } from '../../model/ground.ts';
import { placeMount, type Placed } from '../../model/mounting.ts';
import { limitsOf, type Mount } from '../../optics/mount.ts';
import type { Plan } from '../../plan/plan.ts';
import { lengthWords } from '../tools/mount/mountWords.ts';

/** Nearer than this is the same place, m. */
const SAME = 0.0005;

/**
 * What another mount of a camera changes, in sentences: how high the lens is, how far out from the wall, and whether the hole
 * stays. Empty where one of the two leads nowhere.
 */
export function mountChange(plan: Plan, before: Mount, after: Mount): readonly string[] {
  const ground = groundHeight(plan.ground);
  const [was, is] = [placeMount(before, plan.structures, ground), placeMount(after, plan.structures, ground)];
  if (!was.ok || !is.ok) return [];
  const unit = plan.settings.units;
  const said = (what: string, now: number, then: number): string =>
    Math.abs(now - then) < SAME
      ? `Lens still ${words(now, unit)} ${what}.`
      : `Lens ${words(now, unit)} ${what}, was ${words(then, unit)}.`;
  const sentences = [said('up', is.value.eye[2] - ground, was.value.eye[2] - ground)];
  const [out, formerly] = [outOf(after, is.value), outOf(before, was.value)];
  if (out !== null && formerly !== null) sentences.push(said('out from the wall', out, formerly));
  const [hole, former] = [is.value.hole, was.value.hole];
  if (!hole || after.kind === 'pole') sentences.push('No hole in a wall any more.');
  else if (!former || before.kind === 'pole') sentences.push('Now there is a hole to drill.');
  else
    sentences.push(
      distance(hole, former) < SAME
        ? 'The hole stays where it was.'
        : `The hole moves by ${words(distance(hole, former), unit)}.`,
    );
  // What hangs turns otherwise than what sticks out: the bracket's own sheet may say less now.
  const isOtherWay = (before.kind === 'soffit') !== (after.kind === 'soffit');
  const { pan, tilt, roll } = limitsOf(after);
  if (isOtherWay && (pan ?? tilt ?? roll) !== null)
    sentences.push('How far it turns is as before: check that for this mount.');
  return sentences;
}

/** How far the lens stands out from the wall, m; what hangs has its hole as far out. Null where there is no wall. */
function outOf(mount: Mount, { eye, hole, outward }: Placed): number | null {
  if (mount.kind === 'soffit') return mount.inset;
  return hole && outward ? dot(subtract(eye, hole), outward) : null;
}

const words = (metres: number, unit: LengthUnit): string => {
  const text = lengthWords(metres, unit);
  return unit === 'metres' ? `${text} m` : text;
};
