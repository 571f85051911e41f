import { LEAST_SIZE } from '../../../base/tolerance.ts';
import type { Vec2, Vec3 } from '../../../base/vector.ts';
import { groundHeight } from '../../../model/ground.ts';
import { LIMITS } from '../../../plan/limits.ts';
import type { Gesture, Selected } from '../../editor.ts';
import { nameOfSelected } from '../../recordsOf.ts';
import type { ToolState, Typed } from '../chart.ts';
import { lengthWords } from '../mount/mountWords.ts';
import type { Pointed } from '../pointed.ts';
import { snap } from '../snap.ts';
import { typedLength } from '../typing/typedNumber.ts';
import type { Drawing, Drawn, Raise } from './drawSpec.ts';
import { rememberSize } from './lastSizes.ts';
import { neighbourHeights } from './neighbourHeights.ts';

/** Seen steeper than this the pointer has no height, as share of the ray that goes down. */
const STEEPEST = 0.99;

/** What was drawn stands and is pulled up to its height by the pointer, or takes a typed one; a press accepts it. */
export function raising(
  drawing: Drawing,
  thing: Selected,
  raise: Raise,
  { corners }: Drawn,
  ask: () => ToolState,
): ToolState {
  const { editor, spec, kind } = drawing;
  const atClose = editor.store.getState().plan;
  const { units } = atClose.settings;
  const level = groundHeight(atClose.ground);
  const anchor: Vec2 = corners.at(-1) ?? [0, 0];
  const name = `Height of ${nameOfSelected(atClose, thing) ?? kind.label}`;
  const before = raise.read(atClose, thing) ?? raise.first;
  let gesture: Gesture | null = null;
  let start: number | null = null;
  let moved: number | null = null;

  const now = (): number => raise.read(editor.store.getState().plan, thing) ?? before;
  const done = (): ToolState => {
    gesture?.commit();
    rememberSize(editor, kind.key, now());
    return ask();
  };
  const set = (height: number, merge?: string): void => {
    gesture?.cancel();
    gesture = null;
    if (!isGone()) editor.run(name, (plan) => raise.set(plan, thing, height, 'measured'), merge);
  };
  const typed = (text: string): Typed => {
    const length = typedLength(text, units);
    if (!length.ok) return length;
    if (length.value < LEAST_SIZE || length.value > LIMITS.height.most)
      return { ok: false, trouble: `Height must be above 0. ${lengthWords(now(), units)} is kept.` };
    set(length.value);
    return { ok: true, state: done() };
  };
  const isGone = (): boolean => raise.read(editor.store.getState().plan, thing) === null;
  const follow = (at: Pointed): ToolState => {
    // Undone meanwhile.
    if (isGone()) return drawing.armed();
    const pointed = heightOver(at, anchor);
    if (pointed === null) return state(null);
    start ??= pointed;
    const wish = before + pointed - start;
    const { snapping } = editor.store.getState();
    const near = neighbourHeights(atClose, thing, level);
    const snapped = snap(wish, near, at.metresPerPixel, at.free || !snapping);
    const height = Math.min(LIMITS.height.most, Math.max(LEAST_SIZE, snapped.value));
    if (height === moved || (moved === null && Math.abs(height - before) < LEAST_SIZE / 2))
      return state(snapped.name);
    moved = height;
    gesture ??= editor.begin(name);
    gesture.change((plan) => raise.set(plan, thing, height, 'guessed'));
    return state(snapped.name);
  };
  const state = (snapped: string | null): ToolState => {
    const height = now();
    const ring = corners.map(([x, y]): Vec3 => [x, y, level + height]);
    const text = [`${lengthWords(height, units)} up`, snapped].filter(Boolean).join(' · ');
    return {
      name: `${spec.tool} raising`,
      strip: {
        text: snapped === null && moved === null ? 'Pull it up to the eaves, or type the height.' : text,
        fields: [{ key: 'height', label: 'Height', value: height, measure: 'length' }],
        trouble: false,
      },
      ghost: {
        kind: 'sketch',
        lines: [{ points: ring, closed: true, style: 'level' }],
        marks: [],
        plates: [{ at: [anchor[0], anchor[1], level + height], text, tone: 'measure' }],
      },
      cursor: 'ns-resize',
      hover: follow,
      takes: () => true,
      drag: (_, to) => follow(to),
      release: done,
      click: done,
      enter: done,
      overtaken: () => {
        if (isGone()) return drawing.armed();
        moved = null;
        return state(null);
      },
      escape: () => {
        gesture?.cancel();
        return ask();
      },
      type: (_, value) => {
        set(Math.max(LEAST_SIZE, value), name);
        moved = now();
        return state(null);
      },
      typed: (_, given) => typed(given),
    };
  };
  return state(null);
}

/** The height at which a pointer's ray passes nearest to the upright over a place; null where it is seen from above. */
function heightOver({ ray, screen }: Pointed, [x, y]: Vec2): number | null {
  const [ax, ay, az] = ray.along;
  if (screen.plan || Math.abs(az) > STEEPEST) return null;
  const across = ax * ax + ay * ay;
  const t = ((x - ray.from[0]) * ax + (y - ray.from[1]) * ay) / across;
  return ray.from[2] + t * az;
}
