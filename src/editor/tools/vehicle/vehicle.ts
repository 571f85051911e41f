import { bearing, turn } from '../../../base/angle.ts';
import { fixed } from '../../../base/length.ts';
import type { Vec2, Vec3 } from '../../../base/vector.ts';
import type { Vehicle } from '../../../model/structure.ts';
import type { Plan } from '../../../plan/plan.ts';
import type { Editor } from '../../editor.ts';
import type { Sketch, Strip, ToolState } from '../chart.ts';
import { EAST_NORTH, headingOf, walked } from '../drawing/axes.ts';
import { added, baseOf, put } from '../drawing/newStructure.ts';
import type { Pointed } from '../pointed.ts';
import { resting } from '../rest/resting.ts';
import { indexOf } from '../snapping/planIndex.ts';
import { snapAt, type Snapped } from '../snapping/snapAt.ts';
import { EDGE_ON, groundPoint } from '../snapping/workingPoint.ts';
import { typedAngle } from '../typing/typedNumber.ts';

type Sort = Vehicle['sort'];

/** Usual sizes, m: common practice, no source. */
const SIZES: Readonly<Record<Sort, Pick<Vehicle, 'length' | 'width' | 'height'>>> = {
  car: { length: 4.4, width: 1.8, height: 1.5 },
  van: { length: 5.4, width: 2, height: 2.4 },
};
const WORDS: Readonly<Record<Sort, string>> = { car: 'Car', van: 'Van' };
const SORTS = [
  { key: 'car', label: 'Car' },
  { key: 'van', label: 'Van' },
] as const;
/** An edge gives its direction within so many degrees, and from so far, m. */
const PARALLEL = 10;
const NEAR = 10;
const SHIFT = 15;

/** The vehicle tool: a press puts its middle, the next turns it. */
export function parking(editor: Editor, sort: Sort = 'car', meant: Snapped | null = null): ToolState {
  const { plan } = editor.store.getState();
  const find = (at: Pointed): Snapped | null => {
    const { snapping } = editor.store.getState();
    const chain = { corners: [], axes: EAST_NORTH };
    return snapAt({ plan, at, snapping, chain, closes: false, held: meant?.key ?? null });
  };
  const stand = (next: Snapped | null): ToolState =>
    next ? heading(editor, sort, next.point, nearestEdge(plan, next.point)) : troubled(editor, sort);
  return {
    name: 'vehicle placing',
    strip: stripOf(sort, meant?.name ?? 'Pick where its middle stands.'),
    ghost: meant && sketchOf(plan, sort, meant.point, nearestEdge(plan, meant.point), meant),
    cursor: 'crosshair',
    hover: (at) => parking(editor, sort, find(at)),
    takes: () => true,
    drag: (from, to) => {
      const next = stand(find(from));
      return next.hover?.(to) ?? next;
    },
    click: (at) => stand(find(at)),
    enter: () => (meant ? stand(meant) : parking(editor, sort)),
    escape: () => resting(editor),
    again: () => parking(editor, sort === 'car' ? 'van' : 'car'),
    choose: (_, key) => parking(editor, key === 'van' ? 'van' : 'car', meant),
  };
}

const troubled = (editor: Editor, sort: Sort): ToolState => ({
  ...parking(editor, sort),
  strip: stripOf(sort, EDGE_ON, true),
});

const stripOf = (sort: Sort, text: string, trouble = false): Strip => ({
  text,
  fields: [],
  choices: [{ key: 'kind', label: 'Vehicle', options: SORTS, chosen: sort }],
  trouble,
});

/** Its middle stands; its front follows the pointer. */
function heading(editor: Editor, sort: Sort, at: Vec2, front: number, said: string | null = null): ToolState {
  const { plan, snapping } = editor.store.getState();
  const follow = (pointed: Pointed): ToolState => {
    const point = groundPoint(plan, pointed);
    if (!point || Math.hypot(point[0] - at[0], point[1] - at[1]) < 0.1)
      return heading(editor, sort, at, front, said);
    const meant = headingOf(at, point);
    const [next, name] =
      pointed.free || !snapping
        ? [Math.round(meant * 10) / 10, null]
        : pointed.shift
          ? [Math.round(meant / SHIFT) * SHIFT, null]
          : parallelTo(plan, at, meant);
    return heading(editor, sort, at, bearing(next), name);
  };
  const done = (next: number): ToolState => parked(editor, sort, at, next);
  return {
    name: 'vehicle heading',
    strip: {
      text: [`Front towards ${fixed(front, 1)}°`, said].filter(Boolean).join(' · '),
      fields: [{ key: 'heading', label: 'Front towards', value: front, measure: 'angle' }],
      trouble: false,
    },
    ghost: sketchOf(plan, sort, at, front, null),
    cursor: 'crosshair',
    hover: follow,
    takes: () => true,
    drag: (_, to) => follow(to),
    release: () => done(front),
    click: (pointed) => {
      const next = follow(pointed);
      return next.enter?.() ?? next;
    },
    enter: () => done(front),
    escape: () => parking(editor, sort),
    type: (_, value) => heading(editor, sort, at, bearing(value)),
    typed: (_, text) => {
      const angle = typedAngle(text);
      return angle.ok ? { ok: true, state: done(bearing(angle.value)) } : angle;
    },
  };
}

function parked(editor: Editor, sort: Sort, at: Vec2, front: number): ToolState {
  const { plan } = editor.store.getState();
  const made = added(plan, {
    name: WORDS[sort],
    ...SIZES[sort],
    kind: 'vehicle',
    sort,
    at,
    heading: front,
    base: baseOf(plan, [at]),
    got: { at: 'guessed', size: 'guessed' },
  });
  return put(editor, made) ? resting(editor) : parking(editor, sort);
}

const edgesNear = (plan: Plan, [x, y]: Vec2) =>
  indexOf(plan)
    .edges({ left: x - NEAR, right: x + NEAR, bottom: y - NEAR, top: y + NEAR })
    .filter(({ length }) => length > 0.5);

/** A heading along the edge near by that is within ten degrees of it, and whose that is. */
function parallelTo(plan: Plan, at: Vec2, meant: number): readonly [number, string | null] {
  const ways = edgesNear(plan, at).flatMap(({ from, to, of }) =>
    [0, 180].map((round) => ({ of, heading: bearing(headingOf(from, to) + round) })),
  );
  const best = ways
    .map((way) => ({ ...way, off: Math.abs(turn(way.heading, meant)) }))
    .filter(({ off }) => off <= PARALLEL)
    .toSorted((a, b) => a.off - b.off)[0];
  return best ? [best.heading, `parallel to ${best.of}`] : [Math.round(meant), null];
}

/** A heading to begin with: along the nearest edge, else north. */
function nearestEdge(plan: Plan, at: Vec2): number {
  const off = ({ from, to }: { readonly from: Vec2; readonly to: Vec2 }): number =>
    Math.hypot((from[0] + to[0]) / 2 - at[0], (from[1] + to[1]) / 2 - at[1]);
  const [edge] = edgesNear(plan, at).toSorted((a, b) => off(a) - off(b));
  return edge ? headingOf(edge.from, edge.to) : 0;
}

function sketchOf(plan: Plan, sort: Sort, at: Vec2, front: number, meant: Snapped | null): Sketch {
  const z = baseOf(plan, [at]);
  const { length, width } = SIZES[sort];
  const corner = (forth: number, aside: number): Vec3 => {
    const [x, y] = walked(walked(at, front, (forth * length) / 2), front + 90, (aside * width) / 2);
    return [x, y, z];
  };
  const tip = corner(1, 0);
  return {
    kind: 'sketch',
    lines: [
      { points: [corner(1, -1), corner(1, 1), corner(-1, 1), corner(-1, -1)], closed: true, style: 'live' },
      { points: [[at[0], at[1], z], tip], closed: false, style: 'live' },
      { points: [corner(0.6, -0.4), tip, corner(0.6, 0.4)], closed: false, style: 'live' },
      ...(meant?.lines ?? []),
    ],
    marks: meant?.marks ?? [],
    plates: [{ at: tip, text: `${fixed(front, 1)}°`, tone: 'measure' }, ...(meant?.plates ?? [])],
  };
}
