import { groundHeight } from '../../../model/ground.ts';
import { placeMount } from '../../../model/mounting.ts';
import type { Lamp, PlanCamera } from '../../../plan/plan.ts';
import type { Editor, Selected } from '../../editor.ts';
import { pullOf } from '../../grips/pullOf.ts';
import { isLocked } from '../../shaping/selection.ts';
import { keptSketch } from '../measure/measureSketch.ts';
import type { Strip, ToolState } from '../chart.ts';
import type { Pointed } from '../pointed.ts';
import { act } from './act.ts';
import { aiming } from './aiming.ts';
import { framing } from './framing.ts';
import { gripped } from './gripped.ts';
import { moving } from './moving.ts';
import { movingLamp } from './movingLamp.ts';
import { nudge } from './nudging.ts';
import { pulling } from './pulling.ts';
import { restCursor } from './restCursor.ts';
import { sliding } from './sliding.ts';
import { stops } from './stops.ts';
import { isSameThing, thingAt, unlocked, withItsGroup } from './thingAt.ts';

/**
 * Nothing in hand: a click selects, a drag on what is selected or on one of its handles moves it, a drag elsewhere turns
 * the view, or with Shift draws a frame.
 */
export function resting(
  editor: Editor,
  strip: Strip | null = null,
  cursor: ToolState['cursor'] = 'default',
): ToolState {
  const rest = (): ToolState => resting(editor);
  const state = () => editor.store.getState();
  const here: ToolState = {
    name: 'rest',
    strip,
    ghost: keptGhost(editor),
    cursor,
    hover: (at) => {
      editor.hover(thingAt(editor, at));
      const next = restCursor(editor, at, seized(editor, at));
      return next === cursor && strip === null ? here : resting(editor, null, next);
    },
    takes: (at) => seized(editor, at) !== null,
    drag: (from, to) => {
      const next = begun(editor, from, rest);
      return next === null ? here : (next.drag?.(from, to) ?? next);
    },
    click: (at) => {
      const { selection, plan } = state();
      if (at.grip && !at.shift) return gripped(editor, selection, at.grip, rest) ?? rest();
      const thing = thingAt(editor, at);
      if (at.shift) {
        if (thing) editor.toggle(thing);
      } else if (thing) {
        const things = withItsGroup(plan, thing, selection);
        if (things.length > 1) editor.selectAll(things);
        else editor.select(thing);
      } else editor.select(null);
      return rest();
    },
    enter: () => {
      const { selected } = state();
      return (selected && stops(editor, selected, rest)) ?? here;
    },
    escape: () => {
      editor.select(null);
      return rest();
    },
    nudge: (way, large, compass) => {
      const { selection } = state();
      if (selection.length === 0 || state().readOnly) return here;
      const free = unlocked(editor, selection);
      if (free.length === 0) return here;
      const told = nudge(editor, free, way, large, compass);
      return told ? resting(editor, told) : here;
    },
    act: (asked, at) => act(editor, asked, at, rest),
  };
  // Arrows slide the view where nothing is selected, Enter has no stops there.
  if (state().selection.length > 0) return here;
  const { nudge: _, enter: __, ...empty } = here;
  return empty;
}

type Seized = 'lamp' | 'camera' | 'grip' | 'body' | 'frame';

/** What a drag that begins here would move; null where it turns the view. */
function seized(editor: Editor, at: Pointed): Seized | null {
  const { selection, readOnly } = editor.store.getState();
  if (readOnly) return null;
  if (at.handle === 'lamp') return movableLamp(editor) ? 'lamp' : null;
  if (at.handle !== null) return movable(editor) ? 'camera' : null;
  if (at.grip) return 'grip';
  const thing = thingAt(editor, at);
  const isHeld = thing?.kind === 'structure' && selection.some((other) => isSameThing(other, thing));
  if (isHeld) return 'body';
  return at.shift ? 'frame' : null;
}

/** The drag that begins at a place; null where it moves nothing. */
function begun(editor: Editor, from: Pointed, rest: () => ToolState): ToolState | null {
  const { plan, selection } = editor.store.getState();
  switch (seized(editor, from)) {
    case 'lamp': {
      const lamp = movableLamp(editor);
      return lamp && movingLamp(editor, lamp, rest);
    }
    case 'camera':
      return heldCamera(editor, from, rest);
    case 'grip': {
      if (!from.grip) return null;
      const things = unlocked(editor, selection);
      if (things.length === 0) return null;
      if (from.grip.part === 'body') return moving(editor, things, from, rest);
      const pull = pullOf(plan, selection, from.grip);
      return pull && pulling(editor, pull, rest);
    }
    case 'body': {
      const things = unlocked(editor, selection);
      return things.length > 0 ? moving(editor, things, from, rest) : null;
    }
    case 'frame':
      return framing(editor, rest);
    case null:
      return null;
  }
}

function heldCamera(editor: Editor, from: Pointed, rest: () => ToolState): ToolState | null {
  const camera = movable(editor);
  if (!camera) return null;
  const { plan } = editor.store.getState();
  const placed = placeMount(camera.mount, plan.structures, groundHeight(plan.ground));
  if (!placed.ok) {
    editor.say(`${camera.name} has no place to be moved from.`, placed.faults);
    return null;
  }
  const { eye, outward } = placed.value;
  const held = { editor, camera, eye, outward, from, rest };
  return from.handle === 'body' ? sliding(held) : aiming(held);
}

/** The selected lamp, if it may be moved. */
function movableLamp(editor: Editor): Lamp | null {
  const { plan, selected } = editor.store.getState();
  return selected?.kind === 'lamp' ? (plan.lamps[selected.id] ?? null) : null;
}

/** The selected camera, if it may be moved. */
function movable(editor: Editor): PlanCamera | null {
  const { plan, selected } = editor.store.getState();
  const camera = selected?.kind === 'camera' ? plan.cameras[selected.id] : undefined;
  return camera && !isLocked(plan, cameraOf(camera)) ? camera : null;
}

const cameraOf = ({ id }: PlanCamera): Selected => ({ kind: 'camera', id });

function keptGhost(editor: Editor): ToolState['ghost'] {
  const { measured, plan } = editor.store.getState();
  return measured.length === 0 ? null : keptSketch(measured, plan.settings.units);
}
