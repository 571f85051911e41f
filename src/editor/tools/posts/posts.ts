import type { Outcome } from '../../../base/fault.ts';
import { MOST_POSTS } from '../../../model/shapes/posts.ts';
import { LIMITS, type Limit } from '../../../plan/limits.ts';
import type { Plan } from '../../../plan/plan.ts';
import type { Editor, Selected } from '../../editor.ts';
import type { ToolState } from '../chart.ts';
import { asking, type Field, type Questions } from '../drawing/asking.ts';
import { drawingTool } from '../drawing/drawingTool.ts';
import type { Drawn, DrawSpec } from '../drawing/drawSpec.ts';
import { baseOf, gotOf } from '../drawing/newStructure.ts';
import { lengthWords } from '../mount/mountWords.ts';
import { rowAsItIs, withPosts, type PostRow } from './postRow.ts';

/** m: common practice, no source. */
const FIRST = { by: { spacing: 1.5 }, thickness: 0.15, height: 1 } as const;

const SPACING: Limit = { least: 0.05, most: 100 };
const COUNT: Limit = { least: 1, most: MOST_POSTS };

/** How it is drawn. */
export const POSTS: DrawSpec = {
  tool: 'posts',
  kinds: [
    {
      key: 'posts',
      label: 'Posts',
      raise: null,
      make: (plan, drawn) => withPosts(plan, rowOf(plan, drawn, FIRST)),
    },
  ],
  ends: 'line',
  rectangle: false,
  rectangleOnly: false,
  raises: false,
  ask: (editor, thing, drawn) => asking(editor, thing, (plan) => questions(plan, thing, drawn)),
};

/** The tool for posts along a line: then how many or how far apart, how high and how thick. */
export const posting = (editor: Editor): ToolState => drawingTool(editor, POSTS);

const rowOf = (plan: Plan, drawn: Drawn, size: Pick<PostRow, 'by' | 'thickness' | 'height'>): PostRow => ({
  corners: drawn.corners,
  closed: drawn.closed,
  base: baseOf(plan, drawn.corners),
  got: gotOf(plan, drawn),
  ...size,
});

function questions(plan: Plan, thing: Selected, drawn: Drawn): Questions {
  const group = thing.kind === 'group' ? thing.id : '';
  const now = rowAsItIs(plan, group);
  if (!now) return { choices: [], fields: [], trouble: null };
  const anew = (before: Plan, size: Partial<Pick<PostRow, 'by' | 'thickness' | 'height'>>): Outcome<Plan> => {
    const isOne = drawn.corners.length === 2;
    const by = isOne ? { count: now.count } : { spacing: now.spacing };
    const row = rowOf(before, drawn, { by, thickness: now.thickness, height: now.height, ...size });
    const made = withPosts(before, row, group);
    return made.ok ? { ...made, value: made.value.plan } : made;
  };
  const field = (
    key: string,
    label: string,
    measure: 'length' | 'count',
    bounds: Limit,
    value: number,
    size: (value: number) => Partial<Pick<PostRow, 'by' | 'thickness' | 'height'>>,
  ): Field => ({ key, label, measure, bounds, value, change: (before, next) => anew(before, size(next)) });
  const { units } = plan.settings;
  return {
    choices: [],
    fields: [
      ...(drawn.corners.length === 2
        ? [field('count', 'Count', 'count', COUNT, now.count, (count) => ({ by: { count } }))]
        : []),
      field('spacing', 'Apart, at most', 'length', SPACING, now.spacing, (spacing) => ({ by: { spacing } })),
      field('height', 'Height', 'length', LIMITS.height, now.height, (height) => ({ height })),
      field('thickness', 'Thickness', 'length', LIMITS.thickness, now.thickness, (thickness) => ({
        thickness,
      })),
    ],
    trouble: null,
    text: `${now.count} posts, ${lengthWords(now.spacing, units)} apart`,
  };
}
