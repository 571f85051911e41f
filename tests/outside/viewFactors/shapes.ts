/*
 * Source of the figures: view factors of radiation, closed forms and worked examples. Solid angle of a rectangle: a heat transfer
 * library's page FDiff_5 citing Howell's catalogue B-106 (read). Element to parallel and to upright rectangle, to a disc off its axis,
 * and rectangle to rectangle: pages of the same library citing Siegel and Howell, 4th edition, pages 842 and 843, and a public test
 * that repeats them (read); formulae of the catalogue, B-3 and B-4, from memory; they meet the printed examples. Others computed.
 */
import type { Vec2, Vec3 } from '../../../src/base/vector.ts';
import type { Solid } from '../../../src/model/solid.ts';
import { strip } from '../lineOfSight/strip.ts';

/** A plate between two lines of a drawing in x and y, level, its lower face at `low` and 1 cm thick. */
const levelPlate = (near: readonly Vec2[], far: readonly Vec2[], low: number): Solid =>
  strip('plate', near, far, [low, low + 0.01], (x, y, z) => [x, y, z]);

/** A level rectangle, its lower face at a height. */
export const levelRectangle = ([x0, y0]: Vec2, [x1, y1]: Vec2, low: number): Solid =>
  levelPlate(
    [
      [x0, y0],
      [x1, y0],
    ],
    [
      [x0, y1],
      [x1, y1],
    ],
    low,
  );

/** An upright rectangle x0 to x1, z0 to z1, its face at y. */
export const uprightRectangle = ([x0, z0]: Vec2, [x1, z1]: Vec2, y: number): Solid =>
  strip(
    'plate',
    [
      [x0, z0],
      [x1, z0],
    ],
    [
      [x0, z1],
      [x1, z1],
    ],
    [y, y + 0.01],
    (x, z, along) => [x, along, z],
  );

/** A level disc about (x, 0), of the same area as the circle and so many corners that it strays by less than 1 part in 10⁵. */
export function levelDisc(x: number, radius: number, low: number): Solid {
  const corners = 720;
  const turn = (2 * Math.PI) / corners;
  const outer = radius * Math.sqrt(turn / Math.sin(turn));
  const arc = (side: 1 | -1): readonly Vec2[] =>
    Array.from({ length: corners / 2 - 1 }, (_, at) => {
      const angle = side * (at + 1) * turn;
      return [x + outer * Math.cos(angle), outer * Math.sin(angle)];
    });
  return levelPlate(arc(-1), arc(1), low);
}

/** Share of all directions. */
export const uniform = (u: number, v: number): Vec3 => {
  const [z, angle] = [2 * u - 1, 2 * Math.PI * v];
  const level = Math.sqrt(1 - z * z);
  return [level * Math.cos(angle), level * Math.sin(angle), z];
};

/** Directions about straight up, as dense as their cosine with it. */
export const cosineWeighted = (u: number, v: number): Vec3 => {
  const [level, angle] = [Math.sqrt(u), 2 * Math.PI * v];
  return [level * Math.cos(angle), level * Math.sin(angle), Math.sqrt(1 - u)];
};

/** Element with normal up through the corner of a parallel rectangle a × b, c above. */
export function parallel(a: number, b: number, c: number): number {
  const [A, B] = [a / c, b / c];
  const part = (p: number, q: number) => (p / Math.sqrt(1 + p * p)) * Math.atan(q / Math.sqrt(1 + p * p));
  return (part(A, B) + part(B, A)) / (2 * Math.PI);
}

/** Element to an upright rectangle, a high and b long from the element's corner, c away. */
export function upright(a: number, b: number, c: number): number {
  const away = Math.sqrt(a * a + c * c);
  return (Math.atan(b / c) - (c / away) * Math.atan(b / away)) / (2 * Math.PI);
}

/** Share of all directions that meet a rectangle a × b, c away, from a point level with its corner. */
export const solidShare = (a: number, b: number, c: number): number =>
  Math.atan((a * b) / (c * Math.sqrt(a * a + b * b + c * c))) / (4 * Math.PI);
