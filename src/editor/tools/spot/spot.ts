import type { Vec2 } from '../../../base/vector.ts';
import { groundHeight, type Spot } from '../../../model/ground.ts';
import { setSpots } from '../../../plan/commands/setSpots.ts';
import { LIMITS } from '../../../plan/limits.ts';
import type { Plan } from '../../../plan/plan.ts';
import type { Editor } from '../../editor.ts';
import { attempt } from '../../shaping/attempt.ts';
import type { Sketch, ToolState, Typed } from '../chart.ts';
import { EAST_NORTH } from '../drawing/axes.ts';
import { lengthWords } from '../mount/mountWords.ts';
import type { Pointed } from '../pointed.ts';
import { resting } from '../rest/resting.ts';
import { snapAt, type Snapped } from '../snapping/snapAt.ts';
import { EDGE_ON } from '../snapping/workingPoint.ts';
import { typedLength } from '../typing/typedNumber.ts';

/** Ground needs so many spots to slope. */
const LEAST_SPOTS = 3;
/** Two spots at one place would be two heights of it, m. */
const APART = 0.01;
const TAKEN = 'A spot has its height here already. Select it to change it.';

/** The tool for spot heights: a press, then its height, each a step; three make the ground slope. It stays in hand. */
export function spotting(
  editor: Editor,
  meant: Snapped | null = null,
  trouble: string | null = null,
): ToolState {
  const { plan } = editor.store.getState();
  const isGrid = plan.ground.kind === 'grid';
  const find = (at: Pointed): Snapped | null => {
    const { snapping } = editor.store.getState();
    const chain = { corners: [], axes: EAST_NORTH };
    return snapAt({ plan, at, snapping, chain, closes: false, held: meant?.key ?? null });
  };
  const put = (next: Snapped | null): ToolState => {
    if (isGrid) return spotting(editor, next);
    if (!next) return spotting(editor, null, EDGE_ON);
    const isTaken = spotsOf(plan).some(
      ({ at }) => Math.hypot(at[0] - next.point[0], at[1] - next.point[1]) < APART,
    );
    return isTaken ? spotting(editor, next, TAKEN) : measuringSpot(editor, next.point);
  };
  const said = isGrid
    ? 'This ground comes from a map of heights, which takes no spots.'
    : (meant?.name ?? hint(plan));
  return {
    name: 'spot placing',
    strip: { text: trouble ?? said, fields: [], trouble: isGrid || trouble !== null },
    ghost: sketchOf(plan, null, meant),
    cursor: isGrid ? 'not-allowed' : 'crosshair',
    hover: (at) => spotting(editor, find(at)),
    takes: () => true,
    drag: (_, to) => spotting(editor, find(to)),
    release: () => put(meant),
    click: (at) => put(find(at)),
    enter: () => (meant ? put(meant) : resting(editor)),
    escape: () => resting(editor),
  };
}

/** A place was pressed; its height is typed, or taken as it stands by Enter. */
function measuringSpot(editor: Editor, at: Vec2): ToolState {
  const { plan } = editor.store.getState();
  const { units } = plan.settings;
  const before = spotsOf(plan).at(-1)?.height ?? groundHeight(plan.ground);
  const take = (spot: Spot): Typed => {
    const tried = attempt(plan, (now) => setSpots(now, [...spotsOf(now), spot]));
    if (!tried.ok) return { ok: false, trouble: tried.words };
    editor.run(`Spot height ${lengthWords(spot.height, units)}`, () => tried.plan);
    if (editor.store.getState().plan === tried.plan) editor.select({ kind: 'ground' });
    return { ok: true, state: spotting(editor) };
  };
  const here: ToolState = {
    name: 'spot height',
    strip: {
      text: 'Type the height of the ground here.',
      fields: [{ key: 'height', label: 'Height', value: before, measure: 'length' }],
      trouble: false,
    },
    ghost: sketchOf(plan, at, null),
    cursor: 'crosshair',
    takes: () => true,
    enter: () => {
      const typed = take({ at, height: before, got: 'guessed' });
      return typed.ok ? typed.state : here;
    },
    escape: () => spotting(editor),
    typed: (_, text) => {
      const read = typedLength(text, units);
      if (!read.ok) return read;
      const { least, most } = LIMITS.level;
      return read.value < least || read.value > most
        ? { ok: false, trouble: `Height must be from ${least} to ${most} m.` }
        : take({ at, height: read.value, got: 'measured' });
    },
  };
  return here;
}

const spotsOf = ({ ground }: Plan): readonly Spot[] => (ground.kind === 'spots' ? ground.spots : []);

function hint(plan: Plan): string {
  const left = LEAST_SPOTS - spotsOf(plan).length;
  const more = ['', ' One more makes a slope.', ' Two more make a slope.', ' Three make a slope.'];
  return `Pick a place whose height you know.${more[Math.max(0, left)] ?? ''}`;
}

function sketchOf(plan: Plan, at: Vec2 | null, meant: Snapped | null): Sketch {
  const z = groundHeight(plan.ground);
  const spots = spotsOf(plan);
  const places = [...spots.map((spot) => spot.at), ...(at ? [at] : [])];
  return {
    kind: 'sketch',
    lines: meant?.lines ?? [],
    marks: [...places.map(([x, y]) => ({ at: [x, y, z], sign: 'fixed' }) as const), ...(meant?.marks ?? [])],
    plates: [
      ...spots.map(({ at: [x, y], height }) => {
        const text = `${height < 0 ? '' : '+'}${lengthWords(height, plan.settings.units)}`;
        return { at: [x, y, z], text, tone: 'measure' } as const;
      }),
      ...(meant?.plates ?? []),
    ],
  };
}
