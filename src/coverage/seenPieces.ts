import type { Camera } from '../optics/camera.ts';
import { areaShadows } from '../sight/areaShadows.ts';
import type { Region } from '../sight/sight.ts';
import { joined, leftWithin, seenWithin, type FoundSight } from '../sight/sightOf.ts';
import { areasWhere, type FoundArea } from './areaWhere.ts';
import { conditionSets, type ConditionSets, type SignedSet } from './conditions.ts';
import { litParts, type LitGround } from './litGround.ts';
import type { LensOver } from './nearestLens.ts';
import type { BandRule } from './rule.ts';
import type { Within } from './within.ts';

/** A part of what is seen, with what must hold on it. */
export interface Piece {
  readonly region: Pick<Region, 'area' | 'triangles'>;
  readonly conditions: ConditionSets;
  /** Where besides the lens curves come from, plane coordinates. */
  readonly feet: readonly LensOver[];
}

/** What a camera sees of the ground that counts, a part at a time. */
function seenRegions(found: FoundSight, { whole, parts, cut, glazed }: Within): readonly Region[] {
  // What lies inside glass, or inside a solid that the lens touches, nothing hides, but it is no target.
  const inside = found.touches ? (cut ?? glazed) : glazed;
  if (inside.length === 0 || found.sight.lensInside !== null)
    return whole ? [found.sight.seen] : parts.map((part) => seenWithin(found, part));
  const { footing, frame, all } = found;
  const shadows = joined(all, areaShadows(inside, footing.foot, -1));
  return parts.map((part) => leftWithin(footing, frame, shadows, part));
}

/** What a camera sees of the ground that counts. */
export function seenPieces(found: FoundSight, within: Within, conditions: ConditionSets): readonly Piece[] {
  const regions = seenRegions(found, within);
  return regions.map((region) => ({ region, conditions, feet: [] }));
}

/**
 * What of that is lit at night, by which lights can reach it.
 * @returns null where there are too many lamps
 */
export function litPieces(
  camera: Camera,
  found: FoundSight,
  within: Within,
  rule: BandRule,
  lit: LitGround,
): readonly Piece[] | null {
  const pieces: Piece[] = [];
  const seen = seenRegions(found, within);
  for (const [at, part] of within.parts.entries()) {
    const parts = litParts(camera, found, part, seen[at]?.rings ?? [], lit);
    if (parts === null) return null;
    for (const { region, lights, feet } of parts)
      pieces.push({ region, conditions: conditionSets(camera, found.footing, rule, lights), feet });
  }
  return pieces;
}

/** Areas of pieces in which sets of conditions hold, one a set. */
export function pieceAreas(
  pieces: readonly Piece[],
  { footing }: FoundSight,
  setsOf: (conditions: ConditionSets) => readonly (readonly number[])[],
): readonly FoundArea[] {
  let sums: FoundArea[] = [];
  const { foot } = footing;
  for (const { region, conditions, feet } of pieces) {
    const sets = setsOf(conditions);
    const lenses = [
      ...conditions.sources,
      ...feet.map(({ p, q, delta }) => ({ p: p - foot[0], q: q - foot[1], delta })),
    ];
    const local = region.triangles.map((n, at) => n - (foot[at % 2] ?? 0));
    const found = chunks(sets).flatMap((some) =>
      areasWhere(local, conditions.of, conditions.count, some, lenses),
    );
    sums = sets.map((set, at) => {
      // The outline of a rectilinear lens has its area from its edges, better than from its triangles.
      const value = set.length === 0 ? region.area : (found[at]?.value ?? 0);
      return {
        value: (sums[at]?.value ?? 0) + value,
        bound: (sums[at]?.bound ?? 0) + (found[at]?.bound ?? 0),
      };
    });
  }
  return sums;
}

/** Sets that one walk over triangles can tell apart. */
const AT_ONCE = 30;

const chunks = (sets: readonly (readonly number[])[]): readonly (readonly (readonly number[])[])[] =>
  Array.from({ length: Math.ceil(sets.length / AT_ONCE) }, (_, at) =>
    sets.slice(at * AT_ONCE, (at + 1) * AT_ONCE),
  );

/**
 * Areas of pieces by groups of signed sets, one a group: none where there is no piece.
 * @param groupsOf as many groups of every piece
 */
export function signedAreas(
  pieces: readonly Piece[],
  found: FoundSight,
  groupsOf: (conditions: ConditionSets) => readonly (readonly SignedSet[])[],
): readonly FoundArea[] {
  let sums: FoundArea[] = [];
  for (const piece of pieces) {
    const groups = groupsOf(piece.conditions);
    const areas = pieceAreas([piece], found, () => groups.flat().map(({ set }) => set));
    let at = 0;
    sums = groups.map((group, index) => {
      let [value, bound] = [sums[index]?.value ?? 0, sums[index]?.bound ?? 0];
      for (const { sign } of group) {
        value += sign * (areas[at]?.value ?? 0);
        bound += areas[at]?.bound ?? 0;
        at += 1;
      }
      return { value, bound };
    });
  }
  return sums;
}
