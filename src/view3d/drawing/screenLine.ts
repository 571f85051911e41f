import { add, dot, scale, subtract, type Vec3 } from '../../base/vector.ts';
import type { Sheet, Spot } from '../sheet.ts';

/** What is nearer to the eye than this, along the view, has no place on the window, m. */
const NEAR = 0.05;

/**
 * A line of the site as it appears: pieces of spots, cut where it runs behind the eye.
 * @param closed whether its end runs on to its beginning
 */
export function screenLine(sheet: Sheet, points: readonly Vec3[], closed: boolean): Spot[][] {
  const first = points[0];
  const whole = closed && first && points.length > 2 ? [...points, first] : points;
  const pieces: Spot[][] = [];
  let piece: Spot[] = [];
  const depth = (point: Vec3): number => dot(subtract(point, sheet.eye), sheet.ahead);
  const put = (point: Vec3): void => {
    const spot = sheet.spotFromSite(point);
    if (spot) piece.push({ x: spot.x, y: spot.y });
  };
  const end = (): void => {
    if (piece.length > 1) pieces.push(piece);
    piece = [];
  };
  whole.forEach((point, i) => {
    const before = whole[i - 1];
    const [here, there] = [depth(point), before ? depth(before) : null];
    if (there !== null && before && here > NEAR !== there > NEAR) {
      const share = (NEAR - there) / (here - there);
      put(add(before, scale(subtract(point, before), share)));
      if (here <= NEAR) end();
    }
    if (here > NEAR) put(point);
  });
  end();
  return pieces;
}

/** Pieces as the `d` of an SVG path, to a tenth of a pixel. */
export const pathOf = (pieces: readonly (readonly Spot[])[], closed = false): string =>
  pieces
    .map((piece) => `M${piece.map(({ x, y }) => `${tenth(x)},${tenth(y)}`).join('L')}${closed ? 'Z' : ''}`)
    .join('');

const tenth = (value: number): number => Math.round(value * 10) / 10;
