import { add, scale, type Vec2, type Vec3 } from '../../base/vector.ts';
import type { Camera } from '../../optics/camera.ts';
import { placeInPicture, wayInPicture } from '../../draw/picture/shownPicture.ts';
import type { Editor } from '../../editor/editor.ts';
import { tryDrag, tryStep } from '../../editor/settings/changeSetting.ts';
import { aimedThrough, turnedBy, zoomSetting } from '../../editor/settings/pictureHolds.ts';
import type { PlanCamera } from '../../plan/plan.ts';
import type { PictureHands } from './usePictureHands.ts';

/** What aims a camera in its picture. */
export interface AimHands extends Omit<PictureHands, 'pick' | 'key'> {
  /** Turns right and down by so many degrees; steps that follow at once are one. */
  turn(right: number, down: number): void;
  /** Aims so that a place of the site is seen at a place of the picture. */
  put(point: Vec3, at: Vec2): void;
}

/** @param own the plan's camera, and as it is assessed: its pose at the press */
export function aimHands(editor: Editor, own: PlanCamera, camera: Camera): AimHands {
  const zoomed = zoomSetting(own);
  const fixed = (): null => {
    editor.say('This lens is fixed. Try another in Lens trial.');
    return null;
  };
  const bounded = (value: number): number => {
    const { least, most } = zoomed?.bounds ?? { least: value, most: value };
    return Number(Math.min(most, Math.max(least, value)).toFixed(2));
  };
  return {
    drag: (from) => {
      const way = wayInPicture(camera, from);
      if (way === null) return null;
      const gesture = editor.begin(`Aim ${own.name}`);
      return {
        to: (at, only) => {
          // The angle along which the pointer has gone farther.
          const isAcross = Math.abs(at[0] - from[0]) >= Math.abs(at[1] - from[1]);
          const angle = only ? (isAcross ? 'pan' : 'tilt') : null;
          gesture.change((plan) => aimedThrough(plan, own, camera, way, at, angle));
        },
        commit: () => gesture.commit(),
        cancel: () => gesture.cancel(),
      };
    },
    turn: (right, down) => {
      editor.run(`Aim ${own.name}`, (plan) => turnedBy(plan, own, right, down), `${own.id} aim`);
    },
    put: (point, at) => {
      const [x, y, z] = add(point, scale(camera.eye, -1));
      const far = Math.hypot(x, y, z);
      if (far === 0) return;
      const way: Vec3 = [x / far, y / far, z / far];
      editor.run(`Aim ${own.name}`, (plan) => aimedThrough(plan, own, camera, way, at));
    },
    zoom: (factor) => {
      if (zoomed === null) {
        fixed();
        return;
      }
      const value = bounded(zoomed.value * factor);
      tryStep(
        editor,
        `Focal length of ${own.name}`,
        (plan) => zoomed.change(plan, value),
        `${own.id} focal length`,
      );
    },
    pinch: () => {
      if (zoomed === null) return fixed();
      const gesture = editor.begin(`Focal length of ${own.name}`);
      return {
        to: (factor) => tryDrag(gesture, (plan) => zoomed.change(plan, bounded(zoomed.value * factor))),
        commit: () => gesture.commit(),
      };
    },
  };
}

/** Where a place of the site is asked to stand in the picture: a third up it, say, without going left or right. */
export function heightInPicture(
  camera: Camera,
  point: Vec3,
  size: { readonly width: number; readonly height: number },
  up: number,
): Vec2 {
  const now = placeInPicture(camera, point);
  const x = now === null ? size.width / 2 : Math.min(size.width, Math.max(0, now[0]));
  return [x, size.height * (1 - up)];
}
