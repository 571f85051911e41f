import { addLamp, newLamp } from '../../../plan/commands/addLamp.ts';
import type { Editor } from '../../editor.ts';
import { words, type Strip, type ToolState } from '../chart.ts';
import { resting } from '../rest/resting.ts';
import { keyedLamp, lampEye, lampSpot, lampWords, nudged, type LampSpot } from './lampSpot.ts';

const START = 'Point at a wall, or at the ground for a lamp on a post. Enter begins beside the longest wall.';

/** The lamp tool: a sign follows the pointer, a press puts the lamp there. */
export function placing(editor: Editor, spot: LampSpot | null = null): ToolState {
  const { plan, selected } = editor.store.getState();
  const { units } = plan.settings;
  const put = ({ at, height }: LampSpot): ToolState => {
    const lamp = { ...newLamp(plan, at), height };
    editor.run(`Add ${lamp.name}`, (now) => addLamp(now, lamp));
    // A plan that only reads takes no lamp; the editor has said so.
    if (Object.hasOwn(editor.store.getState().plan.lamps, lamp.id))
      editor.select({ kind: 'lamp', id: lamp.id });
    return resting(editor);
  };
  const here: ToolState = {
    name: 'lamp placing',
    strip: spot === null ? words(START) : stripOf(spot, lampWords(spot, units)),
    ghost: spot && { kind: 'lamp', eye: lampEye(plan, spot) },
    cursor: 'crosshair',
    hover: (at) => placing(editor, lampSpot(plan, at)),
    click: (at) => {
      const found = lampSpot(plan, at);
      return found ? put(found) : here;
    },
    enter: () => (spot ? put(spot) : placing(editor, keyedLamp(plan, selected))),
    nudge: (way, large) => placing(editor, nudged(spot ?? keyedLamp(plan, selected), way, large)),
    type: (_, height) => (spot ? placing(editor, { ...spot, height: Math.max(0.01, height) }) : here),
    escape: () => resting(editor),
  };
  return here;
}

const stripOf = ({ height }: LampSpot, text: string): Strip => ({
  text,
  fields: [{ key: 'height', label: 'Up', value: height, measure: 'length' }],
  trouble: false,
});
