import { bearing } from '../../../base/angle.ts';
import { distance, type Vec3 } from '../../../base/vector.ts';
import { groundHeight } from '../../../model/ground.ts';
import { placeMount } from '../../../model/mounting.ts';
import type { Mount } from '../../../optics/mount.ts';
import { addCamera, newCamera } from '../../../plan/commands/addCamera.ts';
import type { Editor } from '../../editor.ts';
import { words, type ToolState } from '../chart.ts';
import type { Pointed } from '../pointed.ts';
import { resting } from '../rest/resting.ts';
import { aimed, aimWords, FIRST_TILT, spotMeant } from './aim.ts';
import type { Candidate } from './candidate.ts';

/** A camera is fixed and now follows the pointer with its aim, its wash live; all of it is one step. */
export function aimingNew(
  editor: Editor,
  candidate: Extract<Candidate, { fits: true }>,
  seek: () => ToolState,
): ToolState {
  const { plan: before, target } = editor.store.getState();
  const straight = { pan: straightOut(candidate), tilt: FIRST_TILT };
  const camera = newCamera(before, candidate.mount, straight);
  const gesture = editor.begin(`Add ${camera.name}`);
  const unit = before.settings.units;
  const level = groundHeight(before.ground) + target.height;

  const gone = (): boolean => !Object.hasOwn(editor.store.getState().plan.cameras, camera.id);
  const show = (mount: Mount, aim: { pan: number; tilt: number }): void => {
    gesture.change((plan) => addCamera(plan, { ...camera, mount, ...aim }));
    if (!gone()) editor.select({ kind: 'camera', id: camera.id });
  };
  const done = (): ToolState => {
    gesture.commit();
    return resting(editor);
  };

  const follow = (at: Pointed): ToolState => {
    if (gone()) return seek();
    const spot = spotMeant(at, level);
    if (!spot) return state(aimWords(straight, candidate.outward, null, unit));
    let mount: Mount = candidate.mount;
    let eye: Vec3 = candidate.eye;
    let aim = aimed(eye, spot, straight, at.shift);
    if (mount.kind === 'pole') {
      // The bracket turns about the post to where the camera looks, and takes the lens with it.
      const [x, y] = mount.at;
      mount = { ...mount, facing: aimed([x, y, eye[2]], spot, straight, true).pan };
      const placed = placeMount(mount, before.structures, groundHeight(before.ground));
      if (placed.ok) {
        eye = placed.value.eye;
        aim = aimed(eye, spot, straight, at.shift);
      }
    }
    show(mount, aim);
    return state(aimWords(aim, candidate.outward, distance(eye, spot), unit));
  };

  const state = (text: string): ToolState => ({
    name: 'camera aiming',
    strip: words(text),
    ghost: null,
    cursor: 'crosshair',
    hover: follow,
    takes: () => true,
    drag: (_, to) => follow(to),
    release: done,
    click: (at) => {
      const next = follow(at);
      return next.name === 'camera aiming' ? done() : next;
    },
    enter: () => {
      if (gone()) return seek();
      show(candidate.mount, straight);
      return done();
    },
    escape: () => {
      gesture.cancel();
      return seek();
    },
  });

  show(candidate.mount, straight);
  // A plan that only reads takes no camera; the editor has said so.
  if (gone()) return seek();
  return state('Now point at what it should look at.');
}

/** The bearing straight out of what carries a mount, or the way that a post's bracket points. */
function straightOut({ outward, mount }: Extract<Candidate, { fits: true }>): number {
  if (outward) return bearing((Math.atan2(outward[0], outward[1]) * 180) / Math.PI);
  return mount.kind === 'pole' ? mount.facing : 180;
}
