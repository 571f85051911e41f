import type { Vec2 } from '../../../base/vector.ts';
import { groundHeight } from '../../../model/ground.ts';
import { placeMount } from '../../../model/mounting.ts';
import type { Ring, Structure } from '../../../model/structure.ts';
import type { Plan } from '../../../plan/plan.ts';
import { edgesOf, shapeOf } from '../../grips/shapeOf.ts';
import { headingOf } from '../drawing/axes.ts';
import { Bins, type Box } from './bins.ts';

/** A point that attracts: a corner or where a camera is fixed. */
export interface SnapCorner {
  readonly key: string;
  readonly at: Vec2;
  /** Heights at which it may be pointed at. */
  readonly heights: readonly number[];
  /** "corner of Garage" */
  readonly name: string;
  /** Who has it. */
  readonly of: string;
  /** Bearing of the longer edge at it, °; null where there is none. */
  readonly heading: number | null;
}

/** An edge that attracts. */
export interface SnapEdge {
  readonly key: string;
  readonly from: Vec2;
  readonly to: Vec2;
  readonly length: number;
  readonly heights: readonly number[];
  /** "Garage" */
  readonly of: string;
  /** Its id in the plan, or `boundary`. */
  readonly owner: string;
}

interface Features {
  readonly corners: readonly SnapCorner[];
  readonly edges: readonly SnapEdge[];
}

/** All that a plan offers to snap to, by place. */
export interface PlanIndex {
  /** The greatest height of anything in it. */
  readonly top: number;
  corners(box: Box): readonly SnapCorner[];
  edges(box: Box): readonly SnapEdge[];
}

const indices = new WeakMap<Plan, PlanIndex>();
const found = new WeakMap<object, Features>();

/** The index of a plan, made once for the very same plan; parts that stay the same object are not looked at anew. */
export function indexOf(plan: Plan): PlanIndex {
  const known = indices.get(plan);
  if (known) return known;
  const made = makeIndex(plan);
  indices.set(plan, made);
  return made;
}

function makeIndex(plan: Plan): PlanIndex {
  const level = groundHeight(plan.ground);
  const corners = new Bins<SnapCorner>();
  const edges = new Bins<SnapEdge>();
  let top = level;
  const take = (features: Features): void => {
    for (const corner of features.corners) {
      corners.add(corner, corner.at, corner.at);
      top = Math.max(top, ...corner.heights);
    }
    for (const edge of features.edges) edges.add(edge, edge.from, edge.to);
  };
  for (const structure of Object.values(plan.structures)) if (!structure.hidden) take(ofStructure(structure));
  for (const { id, name, outline } of Object.values(plan.patches)) take(ofRing(outline, id, name, level));
  if (plan.boundary) take(ofRing(plan.boundary, 'boundary', 'the site boundary', level));
  for (const { id, name, mount } of Object.values(plan.cameras)) {
    const placed = placeMount(mount, plan.structures, level);
    if (!placed.ok) continue;
    const [x, y, z] = placed.value.eye;
    const about = { name: `fixing point of ${name}`, of: name, heading: null };
    take({ corners: [{ key: `${id} eye`, at: [x, y], heights: [z], ...about }], edges: [] });
  }
  return { top, corners: (box) => corners.within(box), edges: (box) => edges.within(box) };
}

function ofStructure(structure: Structure): Features {
  return kept(structure, () => {
    const { id, name } = structure;
    const shape = shapeOf(structure);
    if (shape) return featuresOf(shape.corners, shape.closed, [shape.base, shape.top], id, name);
    const at = 'at' in structure ? structure.at : null;
    if (at === null) return { corners: [], edges: [] };
    const base = 'base' in structure ? structure.base : 0;
    const centre = {
      key: `${id} 0`,
      at,
      heights: [base],
      name: `centre of ${name}`,
      of: name,
      heading: null,
    };
    return { corners: [centre], edges: [] };
  });
}

const ofRing = (ring: Ring, id: string, name: string, level: number): Features =>
  kept(ring, () => featuresOf(ring, true, [level], id, name));

function kept(thing: object, make: () => Features): Features {
  const known = found.get(thing);
  if (known) return known;
  const made = make();
  found.set(thing, made);
  return made;
}

function featuresOf(
  points: readonly Vec2[],
  closed: boolean,
  heights: readonly number[],
  id: string,
  name: string,
): Features {
  const sides = edgesOf({ corners: points, closed });
  const edges = sides.map(([from, to], index): SnapEdge => {
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    return { key: `${id} edge ${index}`, from, to, length, heights, of: name, owner: id };
  });
  const corners = points.map((at, index): SnapCorner => {
    const touching = [edges[index], edges[index === 0 && closed ? edges.length - 1 : index - 1]];
    const longest = touching
      .filter((edge) => edge !== undefined)
      .reduce<SnapEdge | null>((best, edge) => (best && best.length >= edge.length ? best : edge), null);
    const heading = longest && longest.length > 0 ? headingOf(longest.from, longest.to) : null;
    return { key: `${id} ${index}`, at, heights, name: `corner of ${name}`, of: name, heading };
  });
  return { corners, edges };
}
