import { eyeOf } from '../orbit.ts';
import type { Model } from '../Model.ts';
import { insideOf } from './insideOf.ts';
import { lensView, standAt, standSpot } from './stays.ts';

const BACK = 'Esc, or Back beside north, returns.';

/** Stands at the spot pointed at, or in the middle of the view. */
export function stand(model: Model): boolean {
  const { view, assessment } = model;
  const spot = assessment && standSpot(model.pointedNow(), assessment.scene.ground);
  if (!spot) {
    model.editor.say('Point at the ground, then press S to stand there.');
    return true;
  }
  view.enter(standAt(spot, view.goal.bearing));
  return true;
}

/** Looks through the lens of the selected camera. */
export function lookThrough(model: Model): boolean {
  const { view, assessment, editor } = model;
  const { selected } = editor.store.getState();
  const id = selected?.kind === 'camera' ? selected.id : null;
  const camera = assessment?.scene.cameras.find((one) => one.id === id);
  if (camera) view.enter(lensView(camera, view.width / view.height));
  else editor.say('Select a camera, then look through its lens.');
  return true;
}

/** The view through a lens goes with its camera and the window; without the camera one is back outside. */
export function followLens({ view, assessment }: Model): void {
  const { goal } = view;
  const id = goal.stay?.frame?.camera;
  if (id === undefined || !assessment) return;
  const camera = assessment.scene.cameras.find((one) => one.id === id);
  if (!camera) {
    view.leave();
    return;
  }
  const now = lensView(camera, view.width / view.height);
  const sameEye = eyeOf(now).every((part, i) => Math.abs(part - (eyeOf(goal)[i] ?? 0)) < 1e-6);
  const same =
    sameEye &&
    now.bearing === goal.bearing &&
    now.elevation === goal.elevation &&
    now.stay?.field === goal.stay?.field &&
    now.stay?.roll === goal.stay?.roll;
  if (!same) view.set(now);
}

/** What the strip says of the way that one looks; null for the view upon the site. */
export function wayWords({ view, assessment, editor }: Model): string | null {
  const { goal } = view;
  const { stay } = goal;
  if (!stay || !assessment) return null;
  const eye = eyeOf(goal);
  const within = insideOf(assessment.scene.solids, eye);
  const { structures, cameras } = editor.store.getState().plan;
  const inside = within ? [`Inside ${structures[within.structure]?.name ?? within.name}.`] : [];
  if (!stay.frame) return ['Standing here.', ...inside, BACK].join(' ');
  const { camera, bent, stated, vertical } = stay.frame;
  return [
    `Through the lens of ${cameras[camera]?.name ?? camera}.`,
    ...inside,
    ...(bent ? ['Seen without the lens’s own bend.'] : []),
    ...(stated > vertical ? [`Only ${vertical}° of its height can be drawn flat.`] : []),
    BACK,
  ].join(' ');
}
