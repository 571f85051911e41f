import type { Section } from '../../assess/section/section.ts';
import type { Vec2 } from '../../base/vector.ts';
import type { Editor } from '../../editor/editor.ts';
import { depressionOf, focalLengthFor, movedBy, type Hold } from '../../editor/settings/sectionHolds.ts';
import type { PlanCamera } from '../../plan/plan.ts';
import { editOf } from '../editOf.ts';
import type { Held } from './SectionHandle.tsx';

/** What drags in the Section work with. */
export interface Grip {
  readonly editor: Editor;
  readonly camera: PlanCamera;
  readonly section: Section;
  /** px a metre. */
  readonly scale: number;
  /** t and h of a place of the drawing. */
  place(at: Vec2): Vec2;
  /** Keeps the view while something is held, lets it go after. */
  hold(on: boolean): void;
}

/** Steps that a drag stores, m, ° and mm. */
const [METRES, DEGREES, FOCAL] = [0.01, 0.1, 0.1];

/** Values that Esc goes back to, by handle: kept while keys follow upon one another within this time, ms. */
const RESTS = 10_000;
const before = new WeakMap<Editor, Map<string, { readonly value: number; at: number }>>();

/** What a number was when keys first came to it. */
function remembered(editor: Editor, key: string, value: number): number {
  const known = before.get(editor) ?? new Map<string, { readonly value: number; at: number }>();
  before.set(editor, known);
  const now = performance.now();
  const last = known.get(key);
  if (last && now - last.at < RESTS) {
    last.at = now;
    return last.value;
  }
  known.set(key, { value, at: now });
  return value;
}

function forget(editor: Editor, key: string): number | null {
  const known = before.get(editor);
  const value = known?.get(key)?.value ?? null;
  known?.delete(key);
  return value;
}

/** A number of the plan: drags begin again from its value at the press. */
function settingHeld(
  grip: Grip,
  hold: Hold,
  step: number,
  /** By how much the number goes when the pointer went from one place to another. */
  between: (from: Vec2, to: Vec2) => number,
): Held {
  const { editor, camera } = grip;
  const { setting } = hold;
  const edit = editOf(editor, camera.name, setting);
  const key = `${camera.id} ${setting.key}`;
  return {
    begin: (at) => {
      forget(editor, key);
      const from = grip.place(at);
      const drag = edit.drag();
      grip.hold(true);
      const done = (act: () => void) => () => {
        act();
        grip.hold(false);
      };
      return {
        to: (now) => {
          drag.to(movedBy(hold, setting.value, between(from, grip.place(now)), step));
        },
        commit: done(() => drag.commit()),
        cancel: done(() => drag.cancel()),
      };
    },
    step: (by) => {
      remembered(editor, key, setting.value);
      edit.step(movedBy(hold, setting.value, by * step, step));
    },
    restore: () => {
      const value = forget(editor, key);
      if (value !== null && value !== setting.value) edit.set(value);
    },
  };
}

/** Mounting height: as far as the pointer goes up. */
export const heightHeld = (grip: Grip, hold: Hold): Held =>
  settingHeld(grip, hold, METRES, ([, from], [, to]) => to - from);

/** Tilt: as far as the pointer turns about the lens. */
export const tiltHeld = (grip: Grip, hold: Hold): Held => {
  const { lens } = grip.section;
  const about = ([t, h]: Vec2): number => depressionOf(t, h - lens);
  return settingHeld(grip, hold, DEGREES, (from, to) => about(to) - about(from));
};

/** The standing person: no part of the plan, so that no step of history is made. */
export function personHeld({ editor, camera, section, place }: Grip, set: (distance: number) => void): Held {
  const { from: least, to: most, person } = section;
  const to = (t: number) => set(Math.min(most, Math.max(least, Number(t.toFixed(2)))));
  const key = `${camera.id} person`;
  return {
    begin: (at) => {
      const [start] = place(at);
      const stood = person.distance;
      return {
        to: (now) => to(stood + place(now)[0] - start),
        commit: () => undefined,
        cancel: () => to(stood),
      };
    },
    step: (by) => {
      remembered(editor, key, person.distance);
      to(person.distance + by * METRES);
    },
    restore: () => {
      const value = forget(editor, key);
      if (value !== null) to(value);
    },
  };
}

/** A side of the frame: the focal length at which it goes through the pointer. A fixed lens says that it is one. */
export function edgeDrag(grip: Grip, hold: Hold | null, at: Vec2): ReturnType<Held['begin']> {
  const { editor, camera, section } = grip;
  if (hold === null) {
    editor.say('This lens is fixed. Try another in Lens trial.');
    return null;
  }
  const { lens } = section;
  const off = (here: Vec2): number => {
    const [t, h] = grip.place(here);
    const turned = Math.abs(depressionOf(t, h - lens) - camera.tilt);
    return turned > 180 ? 360 - turned : turned;
  };
  const pressed = off(at);
  const drag = editOf(editor, camera.name, hold.setting).drag();
  const half = section.frame.bottom - camera.tilt;
  return {
    to: (now) => {
      const wanted = focalLengthFor(camera, half + off(now) - pressed);
      drag.to(movedBy(hold, wanted, 0, FOCAL));
    },
    commit: () => drag.commit(),
    cancel: () => drag.cancel(),
  };
}
