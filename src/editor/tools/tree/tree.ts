import { cos, sin } from '../../../base/angle.ts';
import type { Vec2, Vec3 } from '../../../base/vector.ts';
import { withStructure } from '../../../plan/commands/withStructure.ts';
import type { Plan } from '../../../plan/plan.ts';
import type { Editor } from '../../editor.ts';
import { structureSettings } from '../../settings/structureSettings.ts';
import type { Sketch, ToolState } from '../chart.ts';
import { asking, type Questions } from '../drawing/asking.ts';
import { EAST_NORTH } from '../drawing/axes.ts';
import { added, baseOf, put } from '../drawing/newStructure.ts';
import { lengthWords } from '../mount/mountWords.ts';
import type { Pointed } from '../pointed.ts';
import { resting } from '../rest/resting.ts';
import { gridStep } from '../snap.ts';
import { snapAt, type Snapped } from '../snapping/snapAt.ts';
import { EDGE_ON, groundPoint } from '../snapping/workingPoint.ts';

/** A small garden tree, m: common practice, no source. */
const FIRST = { height: 5, crownRadius: 1.5, clear: 1.5, trunkDiameter: 0.2 };
const LEAST_CROWN = 0.1;
const START = 'Pick where the tree stands, or drag on for its crown.';
/** Corners of the circle that shows a crown. */
const SIDES = 24;

/** The tree tool: a press puts a tree, a drag from there gives its crown. */
export function planting(
  editor: Editor,
  meant: Snapped | null = null,
  trouble: string | null = null,
): ToolState {
  const { plan } = editor.store.getState();
  const find = (at: Pointed): Snapped | null => {
    const { snapping } = editor.store.getState();
    const chain = { corners: [], axes: EAST_NORTH };
    return snapAt({ plan, at, snapping, chain, closes: false, held: meant?.key ?? null });
  };
  const set = (next: Snapped | null): ToolState =>
    next ? planted(editor, next.point, FIRST.crownRadius) : planting(editor, null, EDGE_ON);
  return {
    name: 'tree placing',
    strip: { text: trouble ?? meant?.name ?? START, fields: [], trouble: trouble !== null },
    ghost: meant && crownSketch(plan, meant.point, FIRST.crownRadius, meant),
    cursor: 'crosshair',
    hover: (at) => planting(editor, find(at)),
    takes: () => true,
    drag: (from, to) => {
      const next = find(from);
      return next ? crowning(editor, next.point, to) : planting(editor, null, EDGE_ON);
    },
    click: (at) => set(find(at)),
    enter: () => (meant ? set(meant) : planting(editor, null, START)),
    escape: () => resting(editor),
  };
}

/** The crown follows the pointer from the place of the press. */
function crowning(editor: Editor, at: Vec2, pointed: Pointed, before = FIRST.crownRadius): ToolState {
  const { plan, snapping } = editor.store.getState();
  const { units } = plan.settings;
  const point = groundPoint(plan, pointed);
  const step = pointed.free || !snapping ? 0.001 : gridStep(pointed.metresPerPixel, units);
  const away = point ? Math.hypot(point[0] - at[0], point[1] - at[1]) : before;
  const radius = Math.max(LEAST_CROWN, Math.round(Math.round(away / step) * step * 1e6) / 1e6);
  return {
    name: 'tree crown',
    strip: { text: `Crown ${lengthWords(radius, units)} from the trunk`, fields: [], trouble: false },
    ghost: crownSketch(plan, at, radius, null),
    cursor: 'crosshair',
    takes: () => true,
    drag: (_, to) => crowning(editor, at, to, radius),
    release: () => planted(editor, at, radius),
    escape: () => planting(editor),
  };
}

function planted(editor: Editor, at: Vec2, crownRadius: number): ToolState {
  const { plan } = editor.store.getState();
  const made = added(plan, {
    ...FIRST,
    kind: 'tree',
    at,
    base: baseOf(plan, [at]),
    crownRadius,
    inLeaf: true,
    got: { at: 'guessed', height: 'guessed', crown: 'guessed' },
  });
  const thing = put(editor, made);
  return thing ? asking(editor, thing, (now) => questions(now, thing.id)) : planting(editor);
}

/** Height, crown, in leaf. */
function questions(plan: Plan, id: string): Questions {
  const tree = plan.structures[id];
  if (tree?.kind !== 'tree') return { choices: [], fields: [], trouble: null };
  return {
    choices: [
      {
        key: 'leaf',
        label: 'Leaves',
        options: [
          { key: 'leaf', label: 'In leaf' },
          { key: 'bare', label: 'Bare' },
        ],
        chosen: tree.inLeaf ? 'leaf' : 'bare',
        change: (now, option) =>
          withStructure(now, id, (structure) =>
            structure.kind === 'tree' && structure.inLeaf !== (option === 'leaf')
              ? { ...structure, inLeaf: option === 'leaf' }
              : structure,
          ),
      },
    ],
    fields: structureSettings(tree).filter(({ key }) => key === 'height' || key === 'crownRadius'),
    trouble: null,
  };
}

function crownSketch(plan: Plan, at: Vec2, radius: number, meant: Snapped | null): Sketch {
  const z = baseOf(plan, [at]);
  const round = Array.from({ length: SIDES }, (_, k): Vec3 => {
    const turn = (360 / SIDES) * k;
    return [at[0] + radius * cos(turn), at[1] + radius * sin(turn), z];
  });
  const edge: Vec3 = [at[0] + radius, at[1], z];
  const centre: Vec3 = [at[0], at[1], z];
  return {
    kind: 'sketch',
    lines: [{ points: round, closed: true, style: 'live' }, ...(meant?.lines ?? [])],
    marks: [{ at: centre, sign: 'fixed' }, ...(meant?.marks ?? [])],
    plates: [
      {
        at: edge,
        text: lengthWords(radius, plan.settings.units),
        tone: 'measure',
        between: [centre, edge],
      },
      ...(meant?.plates ?? []),
    ],
  };
}
