import { cos, sin } from '../../base/angle.ts';
import type { Vec2 } from '../../base/vector.ts';
import type { Structure } from '../../model/structure.ts';
import { pictureCorners } from '../motion/movedPicture.ts';
import type { Plan } from '../plan.ts';
import { chainOf } from '../reshape/chainOf.ts';
import type { Movable } from './thing.ts';

/** How far things reach over ground, m. */
export interface Bounds {
  readonly west: number;
  readonly east: number;
  readonly south: number;
  readonly north: number;
}

/**
 * The box of things as they were drawn, without overhangs and thickness of walls; null where none has a place of its own, as
 * a camera on a wall.
 */
export function boundsOf(plan: Plan, things: readonly Movable[]): Bounds | null {
  const places = things.flatMap((thing) => placesOf(plan, thing));
  const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)];
  if (places.length === 0) return null;
  const least = (values: readonly number[]): number => values.reduce((a, b) => Math.min(a, b), Infinity);
  const most = (values: readonly number[]): number => values.reduce((a, b) => Math.max(a, b), -Infinity);
  return { west: least(xs), east: most(xs), south: least(ys), north: most(ys) };
}

/** @throws RangeError where the plan has no such thing */
function placesOf(plan: Plan, thing: Movable): readonly Vec2[] {
  switch (thing.kind) {
    case 'boundary':
      return plan.boundary ?? [];
    case 'structure':
      return structurePlaces(own(plan.structures, thing));
    case 'patch':
      return own(plan.patches, thing).outline;
    case 'lamp':
      return [own(plan.lamps, thing).at];
    case 'camera': {
      const { mount } = own(plan.cameras, thing);
      if ('host' in mount) return [];
      return [mount.kind === 'pole' ? mount.at : [mount.eye[0], mount.eye[1]]];
    }
    case 'picture': {
      const { use, file } = own(plan.pictures, thing);
      if (use.kind === 'wall') return [];
      return use.kind === 'photo' ? [[use.at[0], use.at[1]]] : pictureCorners(use, file);
    }
  }
}

function structurePlaces(structure: Structure): readonly Vec2[] {
  if (structure.kind === 'tree') {
    const { at, crownRadius: r } = structure;
    return [
      [at[0] - r, at[1] - r],
      [at[0] + r, at[1] + r],
    ];
  }
  if (structure.kind !== 'vehicle') return chainOf(structure)?.corners ?? [];
  const { at, heading, length, width } = structure;
  const ends = [
    [1, 1],
    [1, -1],
    [-1, -1],
    [-1, 1],
  ] as const;
  return ends.map(([front, right]): Vec2 => {
    const [forth, aside] = [(front * length) / 2, (right * width) / 2];
    return [
      at[0] + forth * sin(heading) + aside * cos(heading),
      at[1] + forth * cos(heading) - aside * sin(heading),
    ];
  });
}

function own<T>(records: Readonly<Record<string, T>>, { kind, id }: { kind: string; id: string }): T {
  const record = Object.hasOwn(records, id) ? records[id] : undefined;
  if (record === undefined) throw new RangeError(`the plan has no ${kind} ${id}`);
  return record;
}
