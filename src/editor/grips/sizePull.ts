import { degreesFromRad, tan } from '../../base/angle.ts';
import type { Vec3 } from '../../base/vector.ts';
import type { Building, Structure } from '../../model/structure.ts';
import { resizeStructure } from '../../plan/commands/setStructure.ts';
import type { StructureSizes } from '../../plan/commands/setStructureSize.ts';
import { LIMITS } from '../../plan/limits.ts';
import type { Plan } from '../../plan/plan.ts';
import { structureSettings } from '../settings/structureSettings.ts';
import type { Candidate } from '../tools/snap.ts';
import type { LinePull } from './pull.ts';
import type { PlacedGrip } from './placedGrip.ts';

/** Which number of the sheet a handle pulls, and what it changes. */
const SIZES: Readonly<
  Record<string, { readonly key: string; readonly sizes: (value: number) => StructureSizes }>
> = {
  height: { key: 'height', sizes: (height) => ({ height }) },
  base: { key: 'base', sizes: (base) => ({ base }) },
  top: { key: 'top', sizes: (top) => ({ top }) },
  crown: { key: 'crownRadius', sizes: (crownRadius) => ({ crownRadius }) },
  clear: { key: 'clear', sizes: (clear) => ({ clear }) },
  overhang: { key: 'roof overhang', sizes: (overhang) => ({ roof: { overhang } }) },
};

const SAME_HEIGHT = 6;

/** The pull of a handle that changes one number of its structure's sheet; null where its kind has no such number. */
export function sizePull(
  plan: Plan,
  structure: Structure,
  part: string,
  { at, way }: PlacedGrip,
): LinePull | null {
  if (part === 'ridge') return structure.kind === 'building' ? ridgePull(plan, structure, at) : null;
  const size = SIZES[part];
  const setting = structureSettings(structure).find(({ key }) => key === size?.key);
  if (!size || !setting || typeof way === 'string') return null;
  // The clear height of a tree is marked with its crown.
  const got = setting.got ?? (structure.kind === 'tree' ? structure.got.crown : 'guessed');
  return {
    kind: 'line',
    name: `${setting.label} of ${structure.name}`,
    at,
    along: way.along,
    label: setting.label,
    value: setting.value,
    bounds: setting.bounds,
    snaps: sameHeights(plan, structure, part, at[2] - setting.value),
    set:
      (value, how = got) =>
      (now) =>
        resizeStructure(now, structure.id, size.sizes(value), how),
  };
}

/** The heights of other things, as values of this handle: `nought` is the height above z = 0 at which it is 0. */
function sameHeights(plan: Plan, structure: Structure, part: string, nought: number): Candidate[] {
  if (part !== 'height' && part !== 'top' && part !== 'base') return [];
  return Object.values(plan.structures).flatMap((other): Candidate[] => {
    if (other.id === structure.id) return [];
    const z = part === 'base' ? baseOf(other) : topOf(other);
    const name = part === 'base' ? `base of ${other.name}` : `height of ${other.name}`;
    return z === null ? [] : [{ value: z - nought, pixels: SAME_HEIGHT, name }];
  });
}

const baseOf = (structure: Structure): number | null => ('base' in structure ? structure.base : null);

function topOf(structure: Structure): number | null {
  if (structure.kind === 'canopy') return structure.top;
  return structure.kind === 'tree' || structure.kind === 'vehicle' ? null : structure.base + structure.height;
}

/**
 * A ridge pulled up or down changes the pitch. Every plane of a roof rises from the soffit's edge, so that a ridge's
 * height above the soffit goes with the tangent of the pitch.
 */
function ridgePull(plan: Plan, building: Building, at: Vec3): LinePull | null {
  const { pitch } = building.roof;
  const soffit = building.base + building.height;
  const rise = at[2] - soffit;
  if (!(rise > 0 && pitch > 0)) return null;
  const run = rise / tan(pitch);
  const others = Object.values(plan.structures).filter(({ id }) => id !== building.id);
  return {
    kind: 'line',
    name: `Ridge of ${building.name}`,
    at,
    along: [0, 0, 1],
    label: 'Ridge',
    value: at[2],
    bounds: { least: soffit + run * tan(1), most: soffit + run * tan(LIMITS.pitch.most) },
    snaps: others.flatMap((other): Candidate[] => {
      const z = topOf(other);
      return z === null ? [] : [{ value: z, pixels: SAME_HEIGHT, name: `height of ${other.name}` }];
    }),
    set:
      (value, how = building.got.roof) =>
      (now) =>
        resizeStructure(
          now,
          building.id,
          { roof: { pitch: degreesFromRad(Math.atan2(value - soffit, run)) } },
          how,
        ),
  };
}
