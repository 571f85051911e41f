import { distance } from '../../../base/vector.ts';
import { groundHeight } from '../../../model/ground.ts';
import { aimCamera } from '../../../plan/commands/aimCamera.ts';
import { aimed, aimWords, spotMeant } from '../camera/aim.ts';
import { words, type ToolState } from '../chart.ts';
import type { Held } from './held.ts';

/** The cross at the end of the selected camera's axis is dragged: the axis meets the spot under the pointer. */
export function aiming({ editor, camera, eye, outward, rest }: Held): ToolState {
  const gesture = editor.begin(`Aim ${camera.name}`);
  const { plan, target } = editor.store.getState();
  const unit = plan.settings.units;
  const level = groundHeight(plan.ground) + target.height;
  const state = (text: string): ToolState => ({
    name: 'rest aiming',
    strip: words(text),
    ghost: null,
    cursor: 'grabbing',
    drag: (_, to) => {
      const spot = spotMeant(to, level);
      if (!spot) return state(text);
      const aim = aimed(eye, spot, camera, to.shift);
      gesture.change((atPress) => aimCamera(atPress, camera.id, aim));
      return state(aimWords(aim, outward, distance(eye, spot), unit));
    },
    release: () => {
      gesture.commit();
      return rest();
    },
    escape: () => {
      gesture.cancel();
      return rest();
    },
  });
  return state(aimWords(camera, outward, null, unit));
}
