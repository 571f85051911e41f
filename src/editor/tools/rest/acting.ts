import type { Vec2 } from '../../../base/vector.ts';
import { mirrorThings, turnThings } from '../../../plan/commands/moveThings.ts';
import { joinCorner } from '../../../plan/commands/joinCorner.ts';
import { splitEdge } from '../../../plan/commands/splitEdge.ts';
import { alignThings, type Alignment } from '../../../plan/commands/alignThings.ts';
import type { Editor, Selected } from '../../editor.ts';
import { shapeIn } from '../../grips/shapeIn.ts';
import { edgesOf, middleOf } from '../../grips/shapeOf.ts';
import { attempt, type Change } from '../../shaping/attempt.ts';
import { footOn } from '../../shaping/bodySnap.ts';
import { cornersSelected, thingsOf, wordsFor } from '../../shaping/selection.ts';
import type { Act } from '../chart.ts';
import { ahead, headingOf } from '../drawing/axes.ts';
import type { Pointed } from '../pointed.ts';
import { pointAtLevel } from '../snapping/workingPoint.ts';
import { bodyOf } from './bodyOf.ts';

/** One turn by a key, °. */
const TURN = 15;
/** How near to the pointer an edge or a corner is meant, px. */
const REACH = 24;

/** Does something to what may be changed, as one step; says why where it cannot be. */
function doTo(editor: Editor, name: string, change: Change, merge?: string): boolean {
  const { plan } = editor.store.getState();
  const tried = attempt(plan, change);
  if (!tried.ok) {
    editor.say(tried.words, tried.fault ? [tried.fault] : []);
    return false;
  }
  editor.run(name, () => tried.plan, merge);
  return true;
}

/** Turns what is selected by fifteen degrees about its middle; positive to the right. */
export function turnBySteps(editor: Editor, selection: readonly Selected[], way: 1 | -1): void {
  const { plan } = editor.store.getState();
  const corners = cornersSelected(plan, selection);
  if (corners.length === 0) return;
  const name = wordsFor(plan, selection);
  const things = thingsOf(plan, selection);
  doTo(
    editor,
    `Turn ${name}`,
    (now) => turnThings(now, things, middleOf(corners), way * TURN),
    `turn ${name}`,
  );
}

/** Mirrors what is selected in its own middle line, square to its longest edge: left becomes right. */
export function mirror(editor: Editor, selection: readonly Selected[]): void {
  const { plan } = editor.store.getState();
  const { corners, edges } = bodyOf(plan, selection);
  if (corners.length === 0) return;
  const length = ([a, b]: readonly [Vec2, Vec2]): number => Math.hypot(b[0] - a[0], b[1] - a[1]);
  const [longest] = edges.toSorted((a, b) => length(b) - length(a));
  const across = longest ? headingOf(...longest) + 90 : 0;
  const middle = middleOf(corners);
  const [east, north] = ahead(across);
  const things = thingsOf(plan, selection);
  doTo(editor, `Mirror ${wordsFor(plan, selection)}`, (now) =>
    mirrorThings(now, things, middle, [middle[0] + east, middle[1] + north]),
  );
}

/** Brings sides of what is selected into line with those of the last. */
export function align(editor: Editor, selection: readonly Selected[], asked: Act): void {
  const to = SIDES[asked];
  if (!to) return;
  if (selection.length < 2) return editor.say('Select two things or more. They line up with the last.');
  const { plan } = editor.store.getState();
  const things = thingsOf(plan, selection);
  doTo(editor, `Align ${wordsFor(plan, selection)}`, (now) => alignThings(now, things, to));
}

/** Seen with north up, the front of the site to the south. */
const SIDES: Partial<Readonly<Record<Act, Alignment>>> = {
  'align left': 'west',
  'align right': 'east',
  'align front': 'south',
  'align rear': 'north',
  'align middle': 'middle',
  'align centre': 'centre',
};

/** Puts a corner into the edge of the selected thing under the pointer. */
export function split(editor: Editor, thing: Selected, at: Pointed | null): void {
  const found = nearest(editor, thing, at, 'edge');
  if (!found) return editor.say('Point at an edge of what is selected, then press K.');
  doTo(editor, `Split edge ${found.index + 1} of ${found.name}`, (plan) =>
    splitEdge(plan, found.id, found.index, found.share),
  );
}

/** Takes the corner of the selected thing under the pointer out. */
export function join(editor: Editor, thing: Selected, at: Pointed | null): void {
  const found = nearest(editor, thing, at, 'corner');
  if (!found) return editor.say('Point at a corner of what is selected, then press J.');
  doTo(editor, `Join corner ${found.index + 1} of ${found.name}`, (plan) =>
    joinCorner(plan, found.id, found.index),
  );
}

/** Which edge of a thing the pointer is on: its id and number. */
export const edgeAt = (editor: Editor, thing: Selected, at: Pointed | null) =>
  nearest(editor, thing, at, 'edge');

interface Found {
  readonly id: string;
  readonly name: string;
  readonly index: number;
  readonly share: number;
}

/** The edge or corner of a thing nearest to the pointer; that of the handle under it, where there is one. */
function nearest(editor: Editor, thing: Selected, at: Pointed | null, what: 'edge' | 'corner'): Found | null {
  const { plan } = editor.store.getState();
  const id = thing.kind === 'boundary' ? 'boundary' : 'id' in thing ? thing.id : '';
  const found = shapeIn(plan, id);
  if (!found || !at) return null;
  const { shape, name } = found;
  const grip = at.grip;
  if (grip && 'index' in grip && (grip.part === what || (grip.part === 'boundary' && what === 'corner')))
    return { id, name, index: grip.index, share: 0.5 };
  let best: Found | null = null;
  let least = REACH;
  for (const z of [shape.base, shape.top]) {
    const point = pointAtLevel(at, z);
    if (!point) continue;
    const off = ([x, y]: Vec2): number => {
      const spot = at.screen.place([x, y, z]);
      return spot ? Math.hypot(spot[0] - at.screen.spot[0], spot[1] - at.screen.spot[1]) : Infinity;
    };
    if (what === 'corner')
      shape.corners.forEach((corner, index) => {
        const away = off(corner);
        if (away < least) [best, least] = [{ id, name, index, share: 0 }, away];
      });
    else
      edgesOf(shape).forEach(([a, b], index) => {
        const foot = footOn(point, a, b);
        const away = foot ? off(foot) : Infinity;
        if (!foot || away >= least) return;
        const share = Math.hypot(foot[0] - a[0], foot[1] - a[1]) / Math.hypot(b[0] - a[0], b[1] - a[1]);
        [best, least] = [{ id, name, index, share: toGrid(share, a, b) }, away];
      });
  }
  return best;
}

/** A share of an edge at a whole hundredth of a metre from its first end. */
function toGrid(share: number, a: Vec2, b: Vec2): number {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return length > 0.02 ? Math.round(share * length * 100) / 100 / length : share;
}
