import type { Passage } from '../../../model/passage.ts';
import type { Barrier } from '../../../model/structure.ts';
import type { Plan } from '../../../plan/plan.ts';
import type { Editor } from '../../editor.ts';
import { setPassage } from '../../settings/structureChoices.ts';
import { structureSettings } from '../../settings/structureSettings.ts';
import type { ToolState } from '../chart.ts';
import { asking, type Questions } from '../drawing/asking.ts';
import { drawingTool } from '../drawing/drawingTool.ts';
import type { DrawKind, DrawSpec } from '../drawing/drawSpec.ts';
import { added, baseOf, counterClockwise, gotOf } from '../drawing/newStructure.ts';
import { raiseHeight } from '../drawing/raise.ts';

export const PASSAGES: readonly { readonly key: Passage; readonly label: string }[] = [
  { key: 'solid', label: 'Blocks the view' },
  { key: 'screen', label: 'Mesh or leaves' },
  { key: 'clear', label: 'Clear, as glass' },
];

/** Heights and thicknesses, m: common practice, no source. */
const kindOf = (
  sort: Barrier['sort'],
  label: string,
  first: number,
  thickness: number,
  passage: Passage,
): DrawKind => ({
  key: sort,
  label,
  raise: raiseHeight(first),
  make: (plan, drawn, height) =>
    added(plan, {
      name: label,
      kind: 'barrier',
      sort,
      line: drawn.closed ? counterClockwise(drawn.corners) : drawn.corners,
      closed: drawn.closed,
      base: baseOf(plan, drawn.corners),
      height,
      thickness,
      passage,
      openings: [],
      got: { line: gotOf(plan, drawn), height: 'guessed', thickness: 'guessed' },
    }),
});

/** How it is drawn. */
export const LINE: DrawSpec = {
  tool: 'line',
  kinds: [
    kindOf('fence', 'Fence', 1.8, 0.05, 'solid'),
    kindOf('wall', 'Wall', 1.8, 0.2, 'solid'),
    kindOf('hedge', 'Hedge', 1.6, 0.6, 'solid'),
  ],
  ends: 'line',
  rectangle: false,
  rectangleOnly: false,
  raises: false,
  ask: (editor, thing) => asking(editor, thing, (plan) => questions(plan, 'id' in thing ? thing.id : '')),
};

/** The line tool: a fence, a wall or a hedge, then its height, thickness and what it lets through. */
export const lining = (editor: Editor): ToolState => drawingTool(editor, LINE);

function questions(plan: Plan, id: string): Questions {
  const barrier = plan.structures[id];
  if (barrier?.kind !== 'barrier') return { choices: [], fields: [], trouble: null };
  return {
    choices: [
      {
        key: 'passage',
        label: 'View through it',
        options: PASSAGES,
        chosen: barrier.passage,
        change: (now, option) => {
          const passage = PASSAGES.find(({ key }) => key === option)?.key;
          return passage ? setPassage(now, id, passage) : now;
        },
      },
    ],
    fields: structureSettings(barrier),
    trouble: null,
  };
}
