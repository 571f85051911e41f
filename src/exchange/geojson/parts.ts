import { areaPathsD, differenceD, FillRule, intersectD, unionD, type PathsD } from 'clipper2-ts';
import type { Vec2 } from '../../base/vector.ts';
import { inRing, signedArea } from '../../model/ring.ts';
import type { Ring } from '../../model/structure.ts';
import type { Ground } from './building.ts';

/** An outline gives way as a whole where its parts cover this share of it. */
const COVERED = 0.9;
/** What is left of an outline beside its parts and smaller than this is a seam, m². */
const LEAST_REST = 2;
/** Tops and feet nearer than this are one, m: mapped heights are good to that. */
const SEAM = 1;
/** Side of a square of the index of parts, m. */
const SQUARE = 64;
/** Decimals that the clipping keeps: millimetres. */
const DECIMALS = 3;

/** A part of a building: its plan, and where it begins above the ground, m. */
export interface Part {
  readonly ground: Ground;
  readonly base: number;
}

/** Parts of buildings, to be found by place. */
export class Parts<P extends Part> {
  private readonly squares = new Map<string, P[]>();
  private readonly boxes = new Map<P, Box>();

  constructor(parts: readonly P[]) {
    for (const part of parts) {
      const box = boxOf(part.ground.outline);
      this.boxes.set(part, box);
      for (const key of squaresOf(box)) {
        const square = this.squares.get(key);
        if (square) square.push(part);
        else this.squares.set(key, [part]);
      }
    }
  }

  /** The parts that lie, by more than half of their area, within an outline. */
  within(outline: Ground): readonly P[] {
    const box = boxOf(outline.outline);
    const near = new Set(squaresOf(box).flatMap((key) => this.squares.get(key) ?? []));
    const around = pathsOf(outline);
    return [...near].filter((part) => {
      const other = this.boxes.get(part);
      if (!other || !meets(box, other)) return false;
      const paths = pathsOf(part.ground);
      const shared = Math.abs(areaPathsD(intersectD(around, paths, FillRule.NonZero, DECIMALS)));
      return shared > 0.5 * Math.abs(areaPathsD(paths));
    });
  }
}

/**
 * Whether an outline that ends at `top` gives way to a part. One that begins where the outline ends stands on it, as a
 * tower on its podium.
 */
export const replaces = (part: Part, top: number): boolean => part.base < top - SEAM;

/**
 * What of an outline stands beside its parts: nothing where they cover it, the outline itself where it has none.
 * What is left keeps its corners to the millimetre.
 */
export function besideParts(outline: Ground, parts: readonly Part[]): readonly Ground[] {
  if (parts.length === 0) return [outline];
  const around = pathsOf(outline);
  const whole = unionD(
    parts.flatMap(({ ground }) => pathsOf(ground)),
    [],
    FillRule.NonZero,
    DECIMALS,
  );
  const rest = differenceD(around, whole, FillRule.NonZero, DECIMALS);
  const size = Math.abs(areaPathsD(around));
  if (Math.abs(areaPathsD(rest)) < (1 - COVERED) * size) return [];
  return groundsOf(rest).filter(({ outline: ring }) => signedArea(ring) > LEAST_REST);
}

/** Paths of outer rings (counter-clockwise) and holes (clockwise) as grounds, each hole with the ring around it. */
function groundsOf(paths: PathsD): readonly Ground[] {
  const rings = paths.map((path): Ring => path.map(({ x, y }) => [x, y] as const));
  const outers = rings.filter((ring) => signedArea(ring) > 0);
  const inners = rings.filter((ring) => signedArea(ring) < 0);
  return outers.map((outline) => ({
    outline,
    holes: inners.filter((hole) => hole[0] !== undefined && inRing(hole[0], outline)),
  }));
}

const pathsOf = ({ outline, holes }: Ground): PathsD =>
  [outline, ...holes].map((ring) => ring.map(([x, y]) => ({ x, y })));

type Box = readonly [left: number, bottom: number, right: number, top: number];

function boxOf(ring: readonly Vec2[]): Box {
  let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of ring) {
    left = Math.min(left, x);
    bottom = Math.min(bottom, y);
    right = Math.max(right, x);
    top = Math.max(top, y);
  }
  return [left, bottom, right, top];
}

const meets = (a: Box, b: Box): boolean => a[0] <= b[2] && b[0] <= a[2] && a[1] <= b[3] && b[1] <= a[3];

function squaresOf([left, bottom, right, top]: Box): readonly string[] {
  const keys: string[] = [];
  for (let i = Math.floor(left / SQUARE); i <= Math.floor(right / SQUARE); i += 1)
    for (let j = Math.floor(bottom / SQUARE); j <= Math.floor(top / SQUARE); j += 1) keys.push(`${i} ${j}`);
  return keys;
}
