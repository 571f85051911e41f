import type { Editor, Selected } from '../../editor.ts';
import { groundHeight } from '../../../model/ground.ts';
import { placeMount } from '../../../model/mounting.ts';
import { faultText } from '../../../plan/faultText.ts';
import { setMount } from '../../../plan/commands/setMount.ts';
import { setLamp } from '../../../plan/commands/setLamp.ts';
import type { Lamp, PlanCamera } from '../../../plan/plan.ts';
import { words, type Strip, type ToolState } from '../chart.ts';
import { lampWords, nudged } from '../lamp/lampSpot.ts';
import { movingLamp } from './movingLamp.ts';
import { faceOf } from '../mount/faceOf.ts';
import { mountWords } from '../mount/mountWords.ts';
import { nudgeMount } from '../mount/nudge.ts';
import type { Pointed } from '../pointed.ts';
import { aiming } from './aiming.ts';
import { sliding } from './sliding.ts';

/** Nothing in hand: a click selects, a drag on the selected camera's handles moves it, any other drag turns the view. */
export function resting(
  editor: Editor,
  strip: Strip | null = null,
  cursor: ToolState['cursor'] = 'default',
): ToolState {
  const here: ToolState = {
    name: 'rest',
    strip,
    ghost: null,
    cursor,
    hover: (at) => {
      editor.hover(thingAt(editor, at));
      const next = holdable(editor, at) ? 'grab' : 'default';
      return next === cursor && strip === null ? here : resting(editor, null, next);
    },
    takes: (at) => holdable(editor, at),
    drag: (from, to) => {
      const lamp = movableLamp(editor);
      if (lamp && from.handle === 'lamp') {
        const moving = movingLamp(editor, lamp, () => resting(editor));
        return moving.drag?.(from, to) ?? moving;
      }
      const camera = movable(editor);
      if (!camera || !from.handle) return here;
      const { plan } = editor.store.getState();
      const placed = placeMount(camera.mount, plan.structures, groundHeight(plan.ground));
      if (!placed.ok) {
        editor.say(`${camera.name} has no place to be moved from.`, placed.faults);
        return here;
      }
      const held = {
        editor,
        camera,
        eye: placed.value.eye,
        outward: placed.value.outward,
        from,
        rest: () => resting(editor),
      };
      const next = from.handle === 'body' ? sliding(held) : aiming(held);
      return next.drag?.(from, to) ?? next;
    },
    click: (at) => {
      editor.select(thingAt(editor, at));
      return resting(editor);
    },
    escape: () => {
      editor.select(null);
      return resting(editor);
    },
    nudge: (way, large) => {
      const lamp = movableLamp(editor);
      if (lamp) {
        const spot = nudged(lamp, way, large);
        editor.run(`Move ${lamp.name}`, (plan) => setLamp(plan, lamp.id, spot), `move ${lamp.id}`);
        return resting(editor, words(lampWords(spot, editor.store.getState().plan.settings.units)));
      }
      const camera = movable(editor);
      if (!camera) return here;
      const mount = nudgeMount(editor.store.getState().plan, camera.mount, way, large);
      const { structures, ground } = editor.store.getState().plan;
      const placed = placeMount(mount, structures, groundHeight(ground));
      if (!placed.ok) return resting(editor, words(placed.faults.map(faultText).join(' '), true));
      editor.run(`Slide ${camera.name}`, (plan) => setMount(plan, camera.id, mount), `slide ${camera.id}`);
      const { plan } = editor.store.getState();
      const moved = plan.cameras[camera.id]?.mount ?? camera.mount;
      return resting(editor, words(mountWords(moved, faceOf(plan, moved), plan.settings.units)));
    },
  };
  return here;
}

/** What a click here would select. */
export function thingAt(editor: Editor, { camera, lamp, struck }: Pointed): Selected | null {
  const { plan } = editor.store.getState();
  if (lamp !== null && Object.hasOwn(plan.lamps, lamp)) return { kind: 'lamp', id: lamp };
  const id = camera ?? struck?.structure ?? null;
  if (id === null) return null;
  if (Object.hasOwn(plan.cameras, id)) return { kind: 'camera', id };
  return Object.hasOwn(plan.structures, id) ? { kind: 'structure', id } : null;
}

/** Whether a drag that begins here moves what is selected. */
const holdable = (editor: Editor, { handle }: Pointed): boolean =>
  handle !== null && (handle === 'lamp' ? movableLamp(editor) : movable(editor)) !== null;

/** The selected lamp, if it may be moved. */
function movableLamp(editor: Editor): Lamp | null {
  const { plan, selected, readOnly } = editor.store.getState();
  return selected?.kind === 'lamp' && !readOnly ? (plan.lamps[selected.id] ?? null) : null;
}

/** The selected camera, if it may be moved. */
function movable(editor: Editor): PlanCamera | null {
  const { plan, selected, readOnly } = editor.store.getState();
  const camera = selected?.kind === 'camera' ? plan.cameras[selected.id] : undefined;
  return camera && !camera.locked && !readOnly ? camera : null;
}
