import type { Vec2 } from './vector.ts';

/** 2²⁷ + 1: cuts a double into two halves whose products are exact. */
const HALVING = 134_217_729;
/** Beyond this share of the two products, rounding cannot have turned the sign of the plain formula. */
const SURE = 4 * Number.EPSILON;

/**
 * Which side of the line from `a` to `b` the point `c` lies on: 1 left, −1 right, 0 exactly on it.
 * The sign is that of exact arithmetic on the given doubles. Cost: two products, but for points almost on the line.
 * Source: exact sums of doubles as lists of parts that do not overlap (two-sum, two-product).
 */
export function orientation(a: Vec2, b: Vec2, c: Vec2): -1 | 0 | 1 {
  const left = (a[0] - c[0]) * (b[1] - c[1]);
  const right = (a[1] - c[1]) * (b[0] - c[0]);
  const plain = left - right;
  if (Math.abs(plain) > SURE * (Math.abs(left) + Math.abs(right))) return plain > 0 ? 1 : -1;
  return exactSign(a, b, c);
}

/** The same determinant multiplied out: six products, each kept whole. */
function exactSign(a: Vec2, b: Vec2, c: Vec2): -1 | 0 | 1 {
  let sum: number[] = [];
  const addProduct = (x: number, y: number): void => {
    const high = x * y;
    sum = grown(sum, lowPart(x, y, high));
    sum = grown(sum, high);
  };
  addProduct(a[0], b[1]);
  addProduct(-a[0], c[1]);
  addProduct(-c[0], b[1]);
  addProduct(-a[1], b[0]);
  addProduct(a[1], c[0]);
  addProduct(c[1], b[0]);
  const largest = sum.findLast((part) => part !== 0) ?? 0;
  return largest > 0 ? 1 : largest < 0 ? -1 : 0;
}

/** What rounding took from the product `high` of x and y. */
function lowPart(x: number, y: number, high: number): number {
  const xUp = HALVING * x;
  const xHigh = xUp - (xUp - x);
  const xLow = x - xHigh;
  const yUp = HALVING * y;
  const yHigh = yUp - (yUp - y);
  const yLow = y - yHigh;
  return xLow * yLow - (high - xHigh * yHigh - xLow * yHigh - xHigh * yLow);
}

/** Adds a number to a sum kept as parts from small to large, losing nothing. */
function grown(parts: readonly number[], added: number): number[] {
  const result: number[] = [];
  let carried = added;
  for (const part of parts) {
    const total = carried + part;
    const virtual = total - carried;
    const lost = carried - (total - virtual) + (part - virtual);
    if (lost !== 0) result.push(lost);
    carried = total;
  }
  result.push(carried);
  return result;
}
