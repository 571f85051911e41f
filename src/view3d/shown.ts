import type { AnswersState } from '../answers/store.ts';
import type { Assessment } from '../assess/assessment.ts';
import type { Vec3 } from '../base/vector.ts';
import type { EditorState, Selected } from '../editor/editor.ts';
import { laidPictures, type LaidPicture } from '../editor/pictures/siteCorners.ts';
import { squaredPictures, type SquaredPicture } from '../editor/pictures/wallPictures.ts';
import type { Plan } from '../plan/plan.ts';
import { lampsOf } from './lamps.ts';
import type { Shown } from './ModelScene.ts';

/** The id of a thing where it is of a kind. */
export const idOf = (thing: Selected | null, kind: Selected['kind']): string | null =>
  thing?.kind === kind && 'id' in thing ? thing.id : null;

/** The place that faces look to, at their height. */
export const placeOfFaces = ({ question: { target }, scene: { ground } }: Assessment): Vec3 | null =>
  target.kind === 'face' && target.looks?.kind === 'place'
    ? [...target.looks.at, ground + target.height]
    : null;

const laid = new WeakMap<
  Plan['pictures'],
  { readonly plan: Plan; readonly pictures: readonly LaidPicture[] }
>();

/** The same list while nothing about pictures or ground changed. */
function picturesOf(plan: Plan): readonly LaidPicture[] {
  const kept = laid.get(plan.pictures);
  if (kept && kept.plan.ground === plan.ground && kept.plan.pictureOrder === plan.pictureOrder)
    return kept.pictures;
  const pictures = laidPictures(plan);
  laid.set(plan.pictures, { plan, pictures });
  return pictures;
}

const squared = new WeakMap<
  Plan['structures'],
  { readonly plan: Plan; readonly pictures: readonly SquaredPicture[] }
>();

/** The same list while nothing about pictures or structures changed. */
function squaredOf(plan: Plan): readonly SquaredPicture[] {
  const kept = squared.get(plan.structures);
  if (kept && kept.plan.pictures === plan.pictures && kept.plan.pictureOrder === plan.pictureOrder)
    return kept.pictures;
  const pictures = squaredPictures(plan);
  squared.set(plan.structures, { plan, pictures });
  return pictures;
}

/** What the Model shows of what the person said; parts of `before` where they are the same. */
export function shownNow(
  { plan, hovered, selected, selection, gesturing }: EditorState,
  { ahead }: Pick<AnswersState, 'ahead'>,
  assessment: Assessment,
  before: Shown | null,
): Shown {
  const standing = ahead ?? assessment.scene;
  const { alone } = assessment.question;
  const hidden = Object.values(plan.cameras).flatMap((camera) => (camera.hidden ? [camera.id] : []));
  const key = `${alone ?? ''} ${hidden.join(' ')}`;
  const counted =
    before?.key === key
      ? before.counted
      : (id: string) => (alone === null ? !hidden.includes(id) : id === alone);
  return {
    hovered: idOf(hovered, 'structure'),
    selected: selection.flatMap((thing) => (thing.kind === 'structure' ? [thing.id] : [])),
    camera: idOf(selected, 'camera'),
    key,
    counted,
    dragged: gesturing,
    structures: plan.structures,
    standing,
    veiled: ahead !== null,
    lamps: lampsOf(plan, standing),
    pictures: picturesOf(plan),
    squared: squaredOf(plan),
  };
}
