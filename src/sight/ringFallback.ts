import { differenceD, FillRule, type PathD, type PathsD } from 'clipper2-ts';
import type { Vec2 } from '../base/vector.ts';
import { cutPolygon } from './halfPlanes.ts';
import { STRIDE, type Shadows } from './shadows.ts';

/** Decimals of a metre that the library keeps. */
const DECIMALS = 6;

/** Rings of a window less its shadows by a polygon library, for the few outlines whose own pieces do not close. */
export function ringsByUnion(window: readonly Vec2[], shadows: Shadows): Float64Array[] {
  const clips: PathsD = [];
  for (let shadow = 0; shadow < shadows.count; shadow += 1) {
    const sides = Array.from({ length: shadows.sides[shadow] ?? 0 }, (_, side) => {
      const at = shadow * STRIDE + side * 3;
      return [shadows.numbers[at] ?? 0, shadows.numbers[at + 1] ?? 0, shadows.numbers[at + 2] ?? 0] as const;
    });
    const corners = cutPolygon(window, sides);
    if (corners.length > 0) clips.push(pathOf(corners));
  }
  const left = differenceD([pathOf(window)], clips, FillRule.NonZero, DECIMALS);
  return left.map((path) => Float64Array.from(path.flatMap(({ x, y }) => [x, y])));
}

const pathOf = (corners: readonly Vec2[]): PathD => corners.map(([x, y]) => ({ x, y }));
