import { areaPathsD, differenceD, FillRule, intersectD, type PathsD } from 'clipper2-ts';
import type { Window } from './sight.ts';
import { trianglesOf } from './triangulate.ts';

/** Decimals of a metre that the library keeps. */
const DECIMALS = 6;

/** A part of the ground that the same regions cover: which, and its triangles. */
export interface RegionPart {
  readonly members: readonly number[];
  readonly triangles: Float64Array;
}

/** What a part and its halves may differ in area, m² per m² and m²: the library rounds corners, but seldom goes wrong by far more. */
const SLACK = { share: 1e-6, square: 2e-4 };

/**
 * Cuts a ground by regions with straight sides into parts by which of them cover it; parts that none covers are left out.
 * @returns null where the library lost some of a part or made more of it
 */
export function regionParts(
  ground: Window,
  regions: readonly (readonly Float64Array[])[],
): readonly RegionPart[] | null {
  let parts: { members: number[]; paths: PathsD }[] = [
    { members: [], paths: [ground.map(([x, y]) => ({ x, y }))] },
  ];
  let isWhole = true;
  regions.forEach((rings, region) => {
    const clip = rings.map(pathOf);
    if (clip.length === 0) return;
    parts = parts.flatMap(({ members, paths }) => {
      const inside = intersectD(paths, clip, FillRule.NonZero, DECIMALS);
      const outside = differenceD(paths, clip, FillRule.NonZero, DECIMALS);
      const [all, kept] = [areaPathsD(paths), areaPathsD(inside) + areaPathsD(outside)];
      if (Math.abs(kept - all) > SLACK.square + SLACK.share * all) isWhole = false;
      if (inside.length === 0) return [{ members, paths }];
      const within = { members: [...members, region], paths: inside };
      return outside.length === 0 ? [within] : [within, { members, paths: outside }];
    });
  });
  if (!isWhole) return null;
  return parts.flatMap(({ members, paths }) =>
    members.length === 0
      ? []
      : [
          {
            members,
            triangles: trianglesOf(
              paths.map((path) => Float64Array.from(path.flatMap(({ x, y }) => [x, y]))),
            ),
          },
        ],
  );
}

function pathOf(ring: Float64Array): PathsD[number] {
  return Array.from({ length: ring.length / 2 }, (_, at) => ({
    x: ring[at * 2] ?? 0,
    y: ring[at * 2 + 1] ?? 0,
  }));
}
