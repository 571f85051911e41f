import { LEAST_SIZE } from '../../../base/tolerance.ts';
import type { Vec2, Vec3 } from '../../../base/vector.ts';
import { groundHeight } from '../../../model/ground.ts';
import { setPicture } from '../../../plan/commands/addPicture.ts';
import { deleteThing } from '../../../plan/commands/deleteThing.ts';
import { pictureFromSite } from '../../../plan/sitePicture.ts';
import type { Editor } from '../../editor.ts';
import { attempt } from '../../shaping/attempt.ts';
import type { Compass, Sketch, Strip, ToolState, Typed, TypedBy } from '../chart.ts';
import { EAST_NORTH, fourOf } from '../drawing/axes.ts';
import { outlining } from '../outline/outline.ts';
import type { Pointed } from '../pointed.ts';
import { resting } from '../rest/resting.ts';
import { EDGE_ON, groundPoint } from '../snapping/workingPoint.ts';
import { typedLength } from '../typing/typedNumber.ts';
import { isEmpty, pictureToScale, scaled, type LaidPicture } from './scaled.ts';

const START = 'The picture has no scale. Pick two points and type their distance.';
const AGAIN = 'Pick two points and type their distance.';
const SECOND = 'Pick the second point.';
const DISTANCE =
  'How far apart? End with → where the line runs east, with Enter where the picture’s up is north.';

interface Points {
  readonly first: Vec2 | null;
  readonly second: Vec2 | null;
  readonly pointer: Vec2 | null;
}

const NONE: Points = { first: null, second: null, pointer: null };

/** The scale tool: two points of a site picture and their distance place it, and turn it by the arrow. */
export function scaling(editor: Editor): ToolState {
  const { plan, selected } = editor.store.getState();
  const picture = pictureToScale(plan, selected?.kind === 'picture' ? selected.id : null);
  if (picture) return pointing(editor, picture, NONE);
  return {
    name: 'scale pointing',
    strip: { text: 'There is no site picture to scale. Trace a picture first.', fields: [], trouble: true },
    ghost: null,
    cursor: 'not-allowed',
    escape: () => resting(editor),
  };
}

function pointing(
  editor: Editor,
  picture: LaidPicture,
  points: Points,
  trouble: string | null = null,
): ToolState {
  const { plan } = editor.store.getState();
  const { first, second } = points;
  const go = (next: Points, why: string | null = null): ToolState => pointing(editor, picture, next, why);
  const press = (at: Pointed): ToolState => {
    const point = groundPoint(plan, at);
    if (!point) return go(points, EDGE_ON);
    if (!first) return go({ ...points, first: point });
    const apart = Math.hypot(point[0] - first[0], point[1] - first[1]);
    if (apart < LEAST_SIZE) return go(points, 'Both points are at one place. Pick another one.');
    return go({ ...points, second: point });
  };
  const hover = (at: Pointed): ToolState =>
    go({ ...points, pointer: groundPoint(plan, at) }, second ? trouble : null);
  const typed = (text: string, by: TypedBy, compass: Compass): Typed => {
    if (!first || !second) return { ok: false, trouble: `${first ? SECOND : AGAIN}` };
    const read = typedLength(text, plan.settings.units);
    if (!read.ok) return read;
    if (read.value < LEAST_SIZE) return { ok: false, trouble: 'A distance must be above 0.' };
    const heading = by === 'enter' || by === 'tab' ? null : compass(by, fourOf(EAST_NORTH));
    const next = scaled(picture, {
      first: pictureFromSite(picture, first),
      second: pictureFromSite(picture, second),
      metres: read.value,
      heading,
      firstAt: isEmpty(plan) ? [0, 0] : first,
    });
    const { use, locked } = next;
    const tried = attempt(plan, (now) => setPicture(now, picture.id, { use, locked }));
    if (!tried.ok) return { ok: false, trouble: tried.words };
    editor.run(`Scale ${picture.name}`, () => tried.plan);
    return { ok: true, state: outlining(editor) };
  };
  const escape = (): ToolState => {
    if (second) return go({ ...points, second: null });
    if (first) return go({ ...points, first: null });
    // A picture that was never given a scale goes with the tool.
    if (picture.use.metresPerPixel === null)
      editor.run(`Take ${picture.name} away`, (now) =>
        deleteThing(now, { kind: 'picture', id: picture.id }, {}),
      );
    return resting(editor);
  };
  const text = second ? DISTANCE : first ? SECOND : picture.use.metresPerPixel === null ? START : AGAIN;
  const strip: Strip = {
    text: trouble ?? text,
    fields: second ? [{ key: 'distance', label: 'Distance', value: 0, measure: 'length' }] : [],
    trouble: trouble !== null,
  };
  return {
    name: 'scale pointing',
    strip,
    ghost: sketchOf(points, groundHeight(plan.ground)),
    cursor: 'crosshair',
    hover,
    takes: () => true,
    drag: (from, to) => {
      const begun = first ? go(points) : press(from);
      return begun.hover?.(to) ?? begun;
    },
    release: () => {
      const { pointer } = points;
      if (!first || !pointer || second) return go(points);
      const apart = Math.hypot(pointer[0] - first[0], pointer[1] - first[1]);
      return go(apart < LEAST_SIZE ? points : { ...points, second: pointer });
    },
    click: press,
    enter: () => go(points, text),
    escape,
    ...(first ? { back: () => go({ ...points, ...(second ? { second: null } : { first: null }) }) } : {}),
    typed: (_, given, by, compass) => typed(given, by, compass),
  };
}

function sketchOf({ first, second, pointer }: Points, z: number): Sketch {
  const lift = ([x, y]: Vec2): Vec3 => [x, y, z];
  const end = second ?? pointer;
  const marks = [first, second].flatMap((point) =>
    point ? [{ at: lift(point), sign: 'scale' } as const] : [],
  );
  const lines =
    first && end ? [{ points: [lift(first), lift(end)], closed: false, style: 'guide' } as const] : [];
  return { kind: 'sketch', lines, marks, plates: [] };
}
