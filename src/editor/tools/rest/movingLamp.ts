import { setLamp } from '../../../plan/commands/setLamp.ts';
import type { Lamp } from '../../../plan/plan.ts';
import type { Editor } from '../../editor.ts';
import { words, type ToolState } from '../chart.ts';
import { lampSpot, lampWords } from '../lamp/lampSpot.ts';

/** The sign of the selected lamp is dragged: over the ground it keeps its height, on a wall it goes where the pointer is. */
export function movingLamp(editor: Editor, lamp: Lamp, rest: () => ToolState): ToolState {
  const gesture = editor.begin(`Move ${lamp.name}`);
  const { plan } = editor.store.getState();
  const { units } = plan.settings;
  const state = (text: string): ToolState => ({
    name: 'rest lamp',
    strip: words(text),
    ghost: null,
    cursor: 'grabbing',
    drag: (_, to) => {
      const spot = lampSpot(plan, to, lamp.height);
      if (!spot) return state(text);
      gesture.change((atPress) => setLamp(atPress, lamp.id, spot));
      return state(lampWords(spot, units));
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
  return state(lampWords(lamp, units));
}
