import type { Assessment } from '../../assess/assessment.ts';
import type { Picture, PictureAround, PicturePerson } from '../../assess/picture/picture.ts';
import { createPicturer, type Picturer } from '../../assess/picture/pictureOf.ts';
import { wayAt } from '../../assess/picture/spotAt.ts';
import type { Vec2, Vec3 } from '../../base/vector.ts';
import type { Camera } from '../../optics/camera.ts';
import { imageFromSite } from '../../optics/projection.ts';
import { quarterOf, uprightFromImage } from '../../optics/upright.ts';
import type { Plan } from '../../plan/plan.ts';
import type { Plate } from '../labelPlaces.ts';
import type { Mark } from '../section/marks.ts';
import type { SheetWords } from '../section/sectionSvg.ts';
import { labelMarks } from './pictureLabels.ts';
import type { PictureNamed } from './pictureDrawing.ts';
import {
  bandMarks,
  coveredMarks,
  hidingMarks,
  personMarks,
  placesOf,
  surroundMarks,
  type PictureView,
} from './pictureMarks.ts';

export type { Picturer };

/** Makes pictures of what is shown, and remembers what it laid out of the scene. */
export const createShowPicture = (): Picturer => createPicturer();

/** Where a place of the site is in the upright picture; null without an image. */
export function placeInPicture(camera: Camera, point: Vec3): Vec2 | null {
  const at = imageFromSite(camera, point);
  if (at === null) return null;
  const { u, v } = uprightFromImage(at, camera.frame, quarterOf(camera));
  return [u, v];
}

/** The direction in which a place of the upright picture looks; null where the lens has no ray. */
export const wayInPicture = (camera: Camera, place: Vec2): Vec3 | null => wayAt(camera, place);

/** What a picture's words are taken from. */
export const namedInPicture = ({ scene, edition }: Assessment, plan: Plan): PictureNamed => ({
  solids: scene.solids,
  edition,
  units: plan.settings.units,
});

/** What is drawn over the painted picture with each move: cheap, and the same as at rest. */
export const liveMarks = (
  around: PictureAround,
  person: PicturePerson | null,
  view: PictureView,
): readonly Mark[] => [
  ...surroundMarks(around, view),
  ...hidingMarks(around, view),
  ...(person === null ? [] : personMarks(person, view)),
];

/** What comes once nothing moves, under what is live: the lines of bands, and edges behind others where they are asked for. */
export const restMarks = (picture: Picture, covered: boolean, view: PictureView): readonly Mark[] => [
  ...bandMarks(picture, view),
  ...(covered ? coveredMarks(picture.covered, view) : []),
];

/** And over it: labels, none of which covers the person. */
export const restLabels = (
  picture: Picture,
  named: PictureNamed,
  person: PicturePerson | null,
  view: PictureView,
): readonly Mark[] => labelMarks(picture, named, view, person === null ? [] : boxesOf(person, view));

const boxesOf = ({ body }: PicturePerson, view: PictureView): Plate[] => {
  const places = body.flatMap((line) => placesOf(line, view));
  if (places.length === 0) return [];
  const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)];
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
  return [
    { x: (left + right) / 2, y: (top + bottom) / 2, width: right - left, height: bottom - top, angle: 0 },
  ];
};

/** What stands on the sheet of a picture that is saved. */
export function pictureSheet(assessment: Assessment, plan: Plan, camera: Camera): SheetWords {
  const { question, edition, scene } = assessment;
  const { kind, height } = question.target;
  const what =
    kind === 'ground' ? 'ground' : kind === 'surface' ? 'a surface' : `${kind}, ${height.toFixed(2)} m`;
  const conditions = scene.situation === null ? undefined : plan.situations[scene.situation]?.name;
  return {
    title: `What ${camera.name} sees, ${camera.frame.width} × ${camera.frame.height} pixels`,
    plan: plan.name,
    edition: edition.name,
    asked: conditions === undefined ? what : `${what}, ${conditions}`,
  };
}
