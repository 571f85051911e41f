import type { Vec2, Vec3 } from '../base/vector.ts';
import { groundHeight } from '../model/ground.ts';
import type { Opening, Structure } from '../model/structure.ts';
import type { Plan } from '../plan/plan.ts';

/** A place that has a name: a corner, the threshold of an opening, where a thing stands. */
export interface NamedPlace {
  readonly name: string;
  readonly at: Vec3;
  /** Somebody may stand there, so it can be asked what is seen. */
  readonly isTarget: boolean;
}

/** How far before an opening its threshold is asked, m. */
const STEP = 0.3;

/** Every place of a plan that has a name, on its ground. */
export function namedPlaces(plan: Plan): readonly NamedPlace[] {
  const level = groundHeight(plan.ground);
  const place = (name: string, [x, y]: Vec2, isTarget: boolean): NamedPlace => ({
    name,
    at: [x, y, level],
    isTarget,
  });
  const structures = plan.structureOrder.flatMap((id) => plan.structures[id] ?? []);
  return [
    ...structures.flatMap((structure) => placesOf(structure, place)),
    ...(plan.boundary ?? []).map((corner, k) => place(`site boundary corner ${k + 1}`, corner, false)),
    ...Object.values(plan.lamps).map(({ name, at }) => place(name, at, true)),
  ];
}

function placesOf(
  structure: Structure,
  place: (name: string, at: Vec2, isTarget: boolean) => NamedPlace,
): readonly NamedPlace[] {
  const { name } = structure;
  if ('at' in structure) return [place(name, structure.at, structure.kind === 'vehicle')];
  const [corners, closed] =
    structure.kind === 'barrier' ? [structure.line, structure.closed] : [structure.outline, true];
  const openings = 'openings' in structure ? structure.openings : [];
  return [
    ...corners.map((corner, k) => place(`${name} corner ${k + 1}`, corner, false)),
    ...openings.flatMap((opening) => {
      const at = thresholdOf(corners, closed, opening);
      return at ? [place(`${opening.name} of ${name}`, at, true)] : [];
    }),
  ];
}

/** Before the middle of an opening, on the outer side: right of its edge, since outlines run counter-clockwise. */
function thresholdOf(
  corners: readonly Vec2[],
  closed: boolean,
  { face, along, width }: Opening,
): Vec2 | null {
  const a = corners[face];
  const b = corners[closed ? (face + 1) % corners.length : face + 1];
  if (!a || !b) return null;
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const length = Math.hypot(dx, dy);
  if (length === 0) return null;
  const t = (along + width / 2) / length;
  return [a[0] + dx * t + (dy / length) * STEP, a[1] + dy * t - (dx / length) * STEP];
}
