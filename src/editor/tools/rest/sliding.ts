import { groundHeight } from '../../../model/ground.ts';
import { placeMount } from '../../../model/mounting.ts';
import { setMount } from '../../../plan/commands/setMount.ts';
import { faultText } from '../../../plan/faultText.ts';
import { words, type ToolState } from '../chart.ts';
import { faceOf } from '../mount/faceOf.ts';
import { mountWords } from '../mount/mountWords.ts';
import { slideMount } from '../mount/slide.ts';
import type { Held } from './held.ts';

/** The body of the selected camera is dragged over what carries it. */
export function sliding({ editor, camera, eye, from, rest }: Held): ToolState {
  const gesture = editor.begin(`Slide ${camera.name}`);
  const atPress = editor.store.getState().plan;
  const state = (text: string, trouble = false): ToolState => ({
    name: 'rest sliding',
    strip: words(text, trouble),
    ghost: null,
    cursor: 'grabbing',
    drag: (_, to) => {
      const { mount, snapped, edgeOn } = slideMount(atPress, camera.id, camera.mount, eye, from, to);
      if (edgeOn) return state('Seen edge-on. Turn the view, or type the number.', true);
      const placed = placeMount(mount, atPress.structures, groundHeight(atPress.ground));
      // Where it cannot be fixed it stays at the last place that held.
      if (!placed.ok) return state(placed.faults.map(faultText).join(' '), true);
      gesture.change((plan) => setMount(plan, camera.id, mount));
      const { plan } = editor.store.getState();
      const text = mountWords(mount, faceOf(plan, mount), plan.settings.units);
      return state(snapped === null ? text : `${text} · ${snapped}`);
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
  return state(mountWords(camera.mount, faceOf(atPress, camera.mount), atPress.settings.units));
}
