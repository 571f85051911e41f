import type { Vec3 } from '../../base/vector.ts';
import type { Grip } from '../../editor/grips/grip.ts';
import { gripsOf } from '../../editor/grips/gripsOf.ts';
import type { PlacedGrip } from '../../editor/grips/placedGrip.ts';
import type { EditorState } from '../../editor/editor.ts';
import type { Sketch, SketchLine, ToolState } from '../../editor/tools/chart.ts';
import type { Plate } from '../../draw/labelPlaces.ts';
import { inSight } from '../labels/inSight.ts';
import type { Rect } from '../parts/clearPlace.ts';
import type { Pickable } from '../picking.ts';
import type { Sheet, Spot } from '../sheet.ts';
import { GripLayer } from './GripLayer.ts';
import { SketchLayer } from './SketchLayer.ts';

/** What is nearer than this before a point does not count as before it, m. */
const BEFORE = 0.12;

export interface Drawn {
  readonly sheet: Sheet;
  readonly solids: Pickable;
  readonly state: ToolState;
  readonly now: EditorState;
  /** Seen straight from above. */
  readonly plan: boolean;
  /** The keyboard's cursor, where it is shown. */
  readonly cursor: Vec3 | null;
}

/** What lies over the picture while one draws and shapes: sketches, snaps, lengths, and the handles of what is selected. */
export class Drawing {
  /** The handle that a drag holds. */
  held: Grip | null = null;
  hovered: Grip | null = null;
  private solids: Pickable | null = null;
  private plan = false;
  private readonly sketch: SketchLayer;
  private readonly grips: GripLayer;
  private made: {
    readonly plan: EditorState['plan'];
    readonly selection: EditorState['selection'];
    readonly grips: readonly PlacedGrip[];
  } | null = null;

  constructor(layer: HTMLElement) {
    this.sketch = new SketchLayer(layer);
    this.grips = new GripLayer(layer);
  }

  show({ sheet, solids, state, now, plan, cursor }: Drawn): void {
    [this.solids, this.plan] = [solids, plan];
    const grips = this.gripsOf(now);
    const { ghost, strip } = state;
    const own = ghost?.kind === 'sketch' ? ghost : null;
    const sketch = withOutline(own, now.selected?.kind === 'opening' ? openingLine(grips) : null);
    this.sketch.show(sheet, sketch, cursor && { at: cursor, sign: 'cursor' });
    this.sketch.showFrame(ghost?.kind === 'frame' ? ghost : null);
    const out = now.tool !== 'rest' || (now.gesturing && this.held === null);
    const refused = this.held !== null && strip?.trouble === true;
    this.grips.show({
      sheet,
      solids,
      grips: out ? [] : grips,
      hovered: this.hovered,
      held: now.gesturing ? this.held : null,
      refused,
      plan,
    });
  }

  /** The handle under a place of the window. @param reach half its target's width, px */
  at(spot: Spot, reach: number): Grip | null {
    return this.grips.at(spot, reach);
  }

  cursorOf(grip: Grip, held: boolean): ToolState['cursor'] {
    return this.grips.cursorOf(grip, held);
  }

  /** What labels keep clear of. */
  get plates(): readonly Plate[] {
    return this.grips.spots.map(({ x, y }) => ({ x, y, width: 16, height: 16, angle: 0 }));
  }

  /** Whether nothing stands before a point; from above nothing does. */
  isSeen(sheet: Sheet, point: Vec3): boolean {
    return this.plan || this.solids === null || inSight(sheet, this.solids, point, BEFORE);
  }

  /** The targets of the handles, which nothing may cover. */
  get rects(): readonly Rect[] {
    return this.grips.spots.map(({ x, y }) => ({ left: x - 8, top: y - 8, width: 16, height: 16 }));
  }

  private gripsOf({ plan, selection }: EditorState): readonly PlacedGrip[] {
    if (this.made?.plan !== plan || this.made.selection !== selection)
      this.made = { plan, selection, grips: gripsOf(plan, selection) };
    return this.made.grips;
  }
}

const withOutline = (sketch: Sketch | null, line: SketchLine | null): Sketch | null =>
  line === null
    ? sketch
    : {
        kind: 'sketch',
        lines: [line, ...(sketch?.lines ?? [])],
        marks: sketch?.marks ?? [],
        plates: sketch?.plates ?? [],
      };

/** The edges of the opening whose handles these are: a solid's own edges do not tell it from its wall. */
function openingLine(grips: readonly PlacedGrip[]): SketchLine | null {
  const side = (name: 'left' | 'right' | 'head' | 'sill'): Vec3 | undefined =>
    grips.find(({ grip }) => grip.part === 'opening' && grip.side === name)?.at;
  const [left, right, head, sill] = [side('left'), side('right'), side('head'), side('sill')];
  if (!left || !right || !head) return null;
  const foot = sill?.[2] ?? 2 * left[2] - head[2];
  const corners: Vec3[] = [
    [left[0], left[1], foot],
    [right[0], right[1], foot],
    [right[0], right[1], head[2]],
    [left[0], left[1], head[2]],
  ];
  return { points: corners, closed: true, style: 'live' };
}
