import { tan } from '../../base/angle.ts';
import type { Vec2 } from '../../base/vector.ts';
import type { Structure } from '../../model/structure.ts';
import type { WallView } from './wallView.ts';

/** How steeply a cable hole falls outwards, °: common practice, no source. */
export const FALL = 5;

/** Where a hole comes out; m. */
export type InsideEnd =
  | {
      readonly kind: 'wall';
      /** Null: not known. */
      readonly thickness: number | null;
      /** How much higher than outside the hole comes out; null where the thickness is not known. */
      readonly rise: number | null;
      /** Above the building's base; null where the thickness is not known. */
      readonly aboveBase: number | null;
      /** Null: no floors are given, or the hole comes out where none is known. */
      readonly floor: InsideFloor | null;
      /** From the inner face of the wall at either end, as one stands inside facing the hole; null: not known. */
      readonly corners: { readonly left: number; readonly right: number } | null;
    }
  /** Through a free-standing wall; null: not known. */
  | { readonly kind: 'through'; readonly thickness: number | null; readonly rise: number | null }
  | { readonly kind: 'eaves' | 'ceiling' | 'board' | 'post' | 'corner' };

interface InsideFloor {
  readonly name: string;
  /** Of the hole above its upper side, m. */
  readonly above: number;
  /** In the room; above its ceiling, where joists are; below the lowest floor. */
  readonly where: 'room' | 'void' | 'below';
  readonly ceiling: number;
}

/** Where a hole square through a wall comes out, falling outwards by FALL. */
export function insideEnd(structure: Structure, view: WallView, [x, y]: Vec2): InsideEnd {
  if (structure.kind === 'barrier')
    return {
      kind: 'through',
      thickness: structure.thickness,
      rise: structure.thickness * tan(FALL),
    };
  if (structure.kind !== 'building') return { kind: 'through', thickness: null, rise: null };
  const thickness = structure.wallThickness;
  const rise = thickness === null ? null : thickness * tan(FALL);
  // Without a thickness the floor is still told, for the hole's outer end.
  const above = y + (rise ?? 0) - structure.base;
  return {
    kind: 'wall',
    thickness,
    rise,
    aboveBase: rise === null ? null : above,
    floor: floorAt(structure.floors, above),
    corners: thickness === null ? null : innerCorners(view, x, thickness),
  };
}

function floorAt(
  floors: readonly { readonly name: string; readonly level: number; readonly ceiling: number }[],
  height: number,
): InsideFloor | null {
  const [lowest, ...others] = floors.toSorted((a, b) => a.level - b.level);
  if (!lowest) return null;
  const own = others.findLast(({ level }) => level <= height) ?? lowest;
  const above = height - own.level;
  const where = above < 0 ? 'below' : above > own.ceiling ? 'void' : 'room';
  return { name: own.name, above, where, ceiling: own.ceiling };
}

/** Inside, left and right change places, and a corner lies a wall's thickness nearer, or farther at an inner corner. */
function innerCorners(view: WallView, x: number, thickness: number): { left: number; right: number } {
  const off = (side: 'left' | 'right'): number =>
    view.ends[side].sort === 'inner corner' ? thickness : -thickness;
  return { left: view.width - x + off('right'), right: x + off('left') };
}
