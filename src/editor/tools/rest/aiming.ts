import { distance } from '../../../base/vector.ts';
import { groundHeight } from '../../../model/ground.ts';
import { aimCamera } from '../../../plan/commands/aimCamera.ts';
import { faultText } from '../../../plan/faultText.ts';
import { heldAim } from '../../../plan/heldAim.ts';
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
      const asked = aimed(eye, spot, camera, to.shift);
      const { aim, stops } = heldAim(plan, camera, asked);
      gesture.change((atPress) => aimCamera(atPress, camera.id, aim));
      // Where the mount stops it, the axis ends elsewhere than at that spot.
      const told = aimWords(
        { ...asked, ...aim },
        outward,
        stops.length > 0 ? null : distance(eye, spot),
        unit,
      );
      return state([told, ...stops.map(faultText)].join(' · '));
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
