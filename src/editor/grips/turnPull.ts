import { bearing, turn } from '../../base/angle.ts';
import type { Vec2, Vec3 } from '../../base/vector.ts';
import { groundHeight } from '../../model/ground.ts';
import { setVehicle } from '../../plan/commands/setTree.ts';
import { turnThings } from '../../plan/commands/moveThings.ts';
import type { Plan } from '../../plan/plan.ts';
import type { Structure } from '../../model/structure.ts';
import type { Selected } from '../editor.ts';
import { cornersSelected, expanded, thingsOf } from '../shaping/selection.ts';
import { headingOf } from '../tools/drawing/axes.ts';
import type { TurnPull } from './pull.ts';
import { edgesOf, middleOf, shapeOf } from './shapeOf.ts';

/** Edges farther than this from what turns do not attract it, m. */
const NEAR = 30;

/** Everything selected turned about its middle. */
export function turnPull(plan: Plan, selection: readonly Selected[], name: string): TurnPull | null {
  const corners = cornersSelected(plan, selection);
  const things = thingsOf(plan, selection);
  if (corners.length === 0 || things.length === 0) return null;
  const middle = middleOf(corners);
  const all = expanded(plan, selection);
  const [first] = all;
  const own = first?.kind === 'structure' ? plan.structures[first.id] : undefined;
  const held = all.flatMap((thing) => (thing.kind === 'structure' ? [thing.id] : []));
  const from = own ? longestEdge(own) : null;
  return {
    kind: 'turn',
    name: `Turn ${name}`,
    about: [middle[0], middle[1], groundHeight(plan.ground)],
    label: 'Turn',
    value: 0,
    parallels: from === null ? [] : parallelTurns(plan, held, middle, from),
    set: (degrees) => (now) => turnThings(now, things, middle, degrees),
  };
}

/** A vehicle turned where it stands. */
export function headingPull(plan: Plan, vehicle: Extract<Structure, { kind: 'vehicle' }>): TurnPull {
  const { id, at, base, heading } = vehicle;
  const about: Vec3 = [at[0], at[1], base];
  return {
    kind: 'turn',
    name: `Turn ${vehicle.name}`,
    about,
    label: 'Heading',
    value: heading,
    parallels: parallelTurns(plan, [id], at, heading).map((one) => ({ ...one, value: heading + one.value })),
    set: (value, how) => (now) => setVehicle(now, id, { heading: bearing(value) }, how),
  };
}

/** The turns, °, by which a heading becomes parallel or square to an edge near by. */
function parallelTurns(
  plan: Plan,
  held: readonly string[],
  [x, y]: Vec2,
  heading: number,
): TurnPull['parallels'] {
  return Object.values(plan.structures).flatMap((other) => {
    const shape = held.includes(other.id) ? null : shapeOf(other);
    if (!shape) return [];
    const near = edgesOf(shape).filter(
      ([a, b]) => Math.hypot((a[0] + b[0]) / 2 - x, (a[1] + b[1]) / 2 - y) < NEAR,
    );
    const headings = new Set(near.map(([a, b]) => Math.round(headingOf(a, b) * 1e6) / 1e6));
    return [...headings].flatMap((edge) =>
      [0, 90, 180, 270].map((quarter) => ({
        value: turn(heading, edge + quarter),
        name: `parallel to ${other.name}`,
      })),
    );
  });
}

/** The bearing of a structure's longest edge; of a vehicle its heading; null where it has neither. */
function longestEdge(structure: Structure): number | null {
  if (structure.kind === 'vehicle') return structure.heading;
  const shape = shapeOf(structure);
  if (!shape) return null;
  const longest = edgesOf(shape).toSorted((a, b) => lengthOf(b) - lengthOf(a))[0];
  return longest ? headingOf(...longest) : null;
}

const lengthOf = ([a, b]: readonly [Vec2, Vec2]): number => Math.hypot(b[0] - a[0], b[1] - a[1]);
