import type { Editor, Tool } from '../editor.ts';
import { blocking } from './block/block.ts';
import { bounding } from './boundary/boundary.ts';
import type { ToolState } from './chart.ts';
import type { OpenChain } from './drawing/openChain.ts';
import { resumed } from './drawing/resumed.ts';
import { placing } from './lamp/placing.ts';
import { lining } from './line/line.ts';
import { measuring } from './measure/measuring.ts';
import { opening } from './opening/opening.ts';
import { outlining } from './outline/outline.ts';
import { pointingPlace } from './pointingPlace.ts';
import { posting } from './posts/posts.ts';
import { scaling } from './scale/scaling.ts';
import { spotting } from './spot/spot.ts';
import { standingTool } from './stand/standingTool.ts';
import { planting } from './tree/tree.ts';
import { parking } from './vehicle/vehicle.ts';

/** What the toolbox holds once it has been fetched. */
export interface LaterTools {
  readonly makers: Partial<Readonly<Record<Tool, (editor: Editor) => ToolState>>>;
  resumed(editor: Editor, chain: OpenChain): ToolState | null;
}

/** The tools that the first coverage does without: fetched once it stands, or as soon as one is taken in hand. */
export const LATER_TOOLS: LaterTools = {
  makers: {
    lamp: placing,
    place: pointingPlace,
    outline: outlining,
    line: lining,
    posts: posting,
    boundary: bounding,
    block: blocking,
    opening: (editor) => opening(editor),
    tree: (editor) => planting(editor),
    vehicle: (editor) => parking(editor),
    spot: (editor) => spotting(editor),
    scale: scaling,
    measure: measuring,
    stand: standingTool,
  },
  resumed,
};
