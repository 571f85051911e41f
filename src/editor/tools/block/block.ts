import { distanceToSegment } from '../../../model/segment.ts';
import { cornerAt } from '../../../model/ring.ts';
import type { Canopy, Ring } from '../../../model/structure.ts';
import { LIMITS } from '../../../plan/limits.ts';
import { setStructureSize } from '../../../plan/commands/setStructureSize.ts';
import { withStructure } from '../../../plan/commands/withStructure.ts';
import type { Plan } from '../../../plan/plan.ts';
import type { Editor } from '../../editor.ts';
import { setPassage } from '../../settings/structureChoices.ts';
import { setGot, structureSettings } from '../../settings/structureSettings.ts';
import type { Setting } from '../../settings/setting.ts';
import type { ToolState } from '../chart.ts';
import { asking, type Questions } from '../drawing/asking.ts';
import { drawingTool } from '../drawing/drawingTool.ts';
import type { DrawSpec, Raise } from '../drawing/drawSpec.ts';
import { added, baseOf, counterClockwise, gotOf } from '../drawing/newStructure.ts';
import { raiseHeight } from '../drawing/raise.ts';
import { PASSAGES } from '../line/line.ts';

/** A bin store, a canopy over a door, its board and its posts: common practice, no source. */
const BLOCK_HEIGHT = 1.2;
const CANOPY_TOP = 2.4;
const BOARD = 0.15;
const POSTS = 2;

/** A canopy's height is its top above the ground. */
const raiseTop: Raise = {
  first: CANOPY_TOP,
  read: (plan, thing) => {
    const structure = thing.kind === 'structure' ? plan.structures[thing.id] : undefined;
    return structure?.kind === 'canopy' ? structure.top - baseOf(plan, structure.outline) : null;
  },
  set: (plan, thing, height, how) => {
    const structure = thing.kind === 'structure' ? plan.structures[thing.id] : undefined;
    if (structure?.kind !== 'canopy') return plan;
    const top = baseOf(plan, structure.outline) + height;
    return setGot(setStructureSize(plan, structure.id, { top }, how), structure.id, 'top', how);
  },
};

const SPEC: DrawSpec = {
  tool: 'block',
  kinds: [
    {
      key: 'block',
      label: 'Block',
      raise: raiseHeight(BLOCK_HEIGHT),
      make: (plan, drawn, height) =>
        added(plan, {
          name: 'Block',
          kind: 'block',
          outline: drawn.corners,
          base: baseOf(plan, drawn.corners),
          height,
          passage: 'solid',
          got: { outline: gotOf(plan, drawn), base: 'guessed', height: 'guessed' },
        }),
    },
    {
      key: 'canopy',
      label: 'Canopy',
      raise: raiseTop,
      make: (plan, drawn, height) =>
        added(plan, {
          name: 'Canopy',
          kind: 'canopy',
          outline: fromFreeSide(plan, counterClockwise(drawn.corners)),
          top: baseOf(plan, drawn.corners) + height,
          thickness: BOARD,
          posts: POSTS,
          got: { outline: gotOf(plan, drawn), top: 'guessed', thickness: 'guessed' },
        }),
    },
  ],
  ends: 'ring',
  rectangle: true,
  rectangleOnly: true,
  raises: true,
  ask: (editor, thing) => asking(editor, thing, (plan) => questions(plan, 'id' in thing ? thing.id : '')),
};

/** The block tool: a plain block, or a canopy on posts. */
export const blocking = (editor: Editor): ToolState => drawingTool(editor, SPEC);

function questions(plan: Plan, id: string): Questions {
  const structure = plan.structures[id];
  if (structure?.kind === 'canopy') {
    const thickness = structureSettings(structure).filter(({ key }) => key === 'thickness');
    return { choices: [], fields: [...thickness, postsOf(structure)], trouble: null };
  }
  if (structure?.kind !== 'block') return { choices: [], fields: [], trouble: null };
  const passage = {
    key: 'passage',
    label: 'View through it',
    options: PASSAGES,
    chosen: structure.passage,
    change: (now: Plan, option: string): Plan => {
      const chosen = PASSAGES.find(({ key }) => key === option)?.key;
      return chosen ? setPassage(now, id, chosen) : now;
    },
  };
  return { choices: [passage], fields: [], trouble: null };
}

const postsOf = ({ id, posts, outline }: Canopy): Setting => ({
  key: 'posts',
  label: 'Posts',
  measure: 'count',
  bounds: { least: LIMITS.posts.least, most: outline.length },
  value: posts,
  change: (plan, value) =>
    withStructure(plan, id, (structure) =>
      structure.kind === 'canopy' && structure.posts !== value ? { ...structure, posts: value } : structure,
    ),
});

/** The ring from the side that is farthest from any building's wall: posts stand at its first corners. */
function fromFreeSide(plan: Plan, ring: Ring): Ring {
  const walls = Object.values(plan.structures).flatMap((structure) =>
    structure.kind === 'building'
      ? structure.outline.map((from, k) => [from, cornerAt(structure.outline, k + 1)] as const)
      : [],
  );
  if (walls.length === 0) return ring;
  const clear = ring.map((from, k) => {
    const to = cornerAt(ring, k + 1);
    const middle = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2] as const;
    return Math.min(...walls.map(([a, b]) => distanceToSegment(middle, a, b)));
  });
  const first = clear.indexOf(Math.max(...clear));
  return [...ring.slice(first), ...ring.slice(0, first)];
}
