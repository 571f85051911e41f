import type { PersonSeen } from '../../assess/person/personAt.ts';
import type { Edition } from '../../coverage/band.ts';
import { faceOf } from '../../draw/person/personWords.ts';
import type { Camera } from '../../optics/camera.ts';
import { lawOf } from '../../optics/setting.ts';
import type { Plan, PlanCamera } from '../../plan/plan.ts';
import type { PersonChoice } from './personChoice.ts';

/** A card to show: which camera of the plan sees, and through which lens; null for its own. */
interface Shown {
  readonly key: string;
  readonly title: string;
  readonly camera: PlanCamera;
  readonly lens: Pick<Camera, 'focalLength' | 'k'> | null;
}

/** A lens to compare with, until one is chosen: half as long again, to a tenth. */
export const otherLens = (focalLength: number): number => Math.round(15 * focalLength) / 10;

/** A camera to compare with, until one is chosen: the first of the others; undefined where there is none. */
export const otherCamera = ({ cameraOrder, cameras }: Plan, { id }: PlanCamera): PlanCamera | undefined =>
  cameraOrder.flatMap((other) => (other === id ? [] : (cameras[other] ?? [])))[0];

/** The cards that stand side by side: here, then another lens, another camera, or one a band of the edition. */
export function cardsOf(
  choice: PersonChoice,
  plan: Plan,
  camera: PlanCamera,
  here: PersonSeen,
  { bands }: Edition,
): readonly Shown[] {
  const { focalLength: own, k } = here.camera;
  const first: Shown = { key: 'here', title: `${camera.name}, ${text(own)} mm`, camera, lens: null };
  const density = faceOf(here)?.density?.horizontal;
  switch (choice.compare) {
    case 'nothing':
      return [first];
    case 'lens': {
      const other = choice.focalLength ?? otherLens(own);
      return [
        first,
        { key: 'lens', title: `With ${text(other)} mm`, camera, lens: lensOf(camera, other, k) },
      ];
    }
    case 'camera': {
      const other = plan.cameras[choice.camera ?? ''] ?? otherCamera(plan, camera);
      if (other === undefined || other.id === camera.id) return [first];
      const title = `${other.name}, ${text(other.device.lens.focalLength)} mm`;
      return [first, { key: `camera ${other.id}`, title, camera: other, lens: null }];
    }
    case 'bands':
      if (density === undefined) return [first];
      return [
        first,
        ...bands.map((band) => ({
          key: band.key,
          title: `${band.name} begins, ${band.density} px/m`,
          camera,
          // Px/m are in proportion to the focal length of one law.
          lens: { focalLength: (own * band.density) / density, k },
        })),
      ];
  }
}

/** Within the range of a varifocal lens its law at that length; of another lens the law of the present one. */
function lensOf({ name, device }: PlanCamera, focalLength: number, k: number): Shown['lens'] {
  const { shortest, longest } = device.lens;
  if (shortest === longest || focalLength < shortest || focalLength > longest) return { focalLength, k };
  return { focalLength, k: lawOf({ ...device.lens, focalLength }, device.sensor.width, name).k };
}

const text = (millimetres: number): string => String(Number(millimetres.toFixed(2)));
