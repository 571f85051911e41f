import type { PersonSeen } from '../../assess/person/personAt.ts';
import type { Edition } from '../../coverage/band.ts';
import { faceOf } from '../../draw/person/personWords.ts';
import type { PersonChoice } from './personChoice.ts';

/** A card to show: through which lens, mm; null for the camera's own. */
export interface Lens {
  readonly key: string;
  readonly title: string;
  readonly focalLength: number | null;
}

/** A lens to compare with, until one is chosen: half as long again, to a tenth. */
export const otherLens = (focalLength: number): number => Math.round(15 * focalLength) / 10;

/** The cards that stand side by side: here, then another lens, or one a band of the edition. */
export function lensesOf(
  { compare, focalLength }: PersonChoice,
  here: PersonSeen,
  { bands }: Edition,
): readonly Lens[] {
  const own = here.camera.focalLength;
  const first: Lens = { key: 'here', title: `Here, ${text(own)} mm`, focalLength: null };
  const density = faceOf(here)?.density?.horizontal;
  if (compare === 'lens') {
    const other = focalLength ?? otherLens(own);
    return [first, { key: 'lens', title: `With ${text(other)} mm`, focalLength: other }];
  }
  if (compare === 'nothing' || density === undefined) return [first];
  return [
    first,
    ...bands.map((band) => ({
      key: band.key,
      title: `${band.name} begins, ${band.density} px/m`,
      // Px/m are in proportion to the focal length.
      focalLength: (own * band.density) / density,
    })),
  ];
}

const text = (millimetres: number): string => String(Number(millimetres.toFixed(2)));
