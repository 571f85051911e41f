import type { Vec2 } from '../../../base/vector.ts';
import { groundHeight, type Spot } from '../../../model/ground.ts';
import { setGround } from '../../../plan/commands/setGround.ts';
import { LIMITS } from '../../../plan/limits.ts';
import type { Plan } from '../../../plan/plan.ts';
import type { Editor } from '../../editor.ts';
import type { Sketch, ToolState } from '../chart.ts';
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

/**
 * The tool for spot heights: a press, then its height. Flat ground takes them once there are three, as one step; ground that
 * has spots takes each by itself.
 */
export function spotting(
  editor: Editor,
  waiting: readonly Spot[] = [],
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
    if (isGrid) return spotting(editor, waiting, next);
    if (!next) return spotting(editor, waiting, null, EDGE_ON);
    const taken = [...waiting, ...spotsOf(plan)].some(
      ({ at }) => Math.hypot(at[0] - next.point[0], at[1] - next.point[1]) < APART,
    );
    return taken
      ? spotting(editor, waiting, next, 'A spot has its height here already. Select it to change it.')
      : measuringSpot(editor, waiting, next.point);
  };
  const said = isGrid
    ? 'This ground comes from a map of heights, which takes no spots.'
    : (meant?.name ?? hint(plan, waiting));
  return {
    name: 'spot placing',
    strip: { text: trouble ?? said, fields: [], trouble: isGrid || trouble !== null },
    ghost: sketchOf(plan, waiting, meant),
    cursor: isGrid ? 'not-allowed' : 'crosshair',
    hover: (at) => spotting(editor, waiting, find(at)),
    takes: () => true,
    drag: (_, to) => spotting(editor, waiting, find(to)),
    release: () => put(meant),
    click: (at) => put(find(at)),
    enter: () => (meant ? put(meant) : resting(editor)),
    escape: () => (waiting.length > 0 ? spotting(editor, waiting.slice(0, -1)) : resting(editor)),
    ...(waiting.length > 0 ? { back: () => spotting(editor, waiting.slice(0, -1)) } : {}),
  };
}

/** A place was pressed; its height is typed, or taken as it stands by Enter. */
function measuringSpot(editor: Editor, waiting: readonly Spot[], at: Vec2): ToolState {
  const { plan } = editor.store.getState();
  const { units } = plan.settings;
  const before = waiting.at(-1)?.height ?? groundHeight(plan.ground);
  const take = (spot: Spot): ToolState => {
    const had = spotsOf(plan);
    const spots = [...had, ...waiting, spot];
    if (spots.length < LEAST_SPOTS) return spotting(editor, [...waiting, spot]);
    const name = had.length === 0 ? 'Spot heights' : `Spot height ${lengthWords(spot.height, units)}`;
    editor.run(name, (now) => setGround(now, { kind: 'spots', spots }));
    editor.select({ kind: 'ground' });
    return spotting(editor);
  };
  return {
    name: 'spot height',
    strip: {
      text: 'Type the height of the ground here.',
      fields: [{ key: 'height', label: 'Height', value: before, measure: 'length' }],
      trouble: false,
    },
    ghost: sketchOf(plan, [...waiting, { at, height: before, got: 'guessed' }], null),
    cursor: 'crosshair',
    takes: () => true,
    enter: () => take({ at, height: before, got: 'guessed' }),
    escape: () => spotting(editor, waiting),
    back: () => spotting(editor, waiting),
    typed: (_, text) => {
      const read = typedLength(text, units);
      if (!read.ok) return read;
      const { least, most } = LIMITS.level;
      if (read.value < least || read.value > most)
        return { ok: false, trouble: `Height must be from ${least} to ${most} m.` };
      return { ok: true, state: take({ at, height: read.value, got: 'measured' }) };
    },
  };
}

const spotsOf = ({ ground }: Plan): readonly Spot[] => (ground.kind === 'spots' ? ground.spots : []);

function hint(plan: Plan, waiting: readonly Spot[]): string {
  if (spotsOf(plan).length > 0) return 'Click a place whose height you know.';
  const left = LEAST_SPOTS - waiting.length;
  return `Click a place whose height you know. ${['', 'One more makes', 'Two more make', 'Three make'][left] ?? ''} a slope.`;
}

function sketchOf(plan: Plan, waiting: readonly Spot[], meant: Snapped | null): Sketch {
  const z = groundHeight(plan.ground);
  return {
    kind: 'sketch',
    lines: meant?.lines ?? [],
    marks: [
      ...waiting.map(({ at }) => ({ at: [at[0], at[1], z], sign: 'fixed' }) as const),
      ...(meant?.marks ?? []),
    ],
    plates: [
      ...waiting.map(
        ({ at, height }) =>
          ({
            at: [at[0], at[1], z],
            text: `+${lengthWords(height, plan.settings.units)}`,
            tone: 'measure',
          }) as const,
      ),
      ...(meant?.plates ?? []),
    ],
  };
}
