import type { Spot } from '../sheet.ts';

/** Where a disc may stand beside its camera, px: up and right first. */
const OFFSETS: readonly (readonly [x: number, y: number])[] = [
  [28, -38],
  [-28, -38],
  [42, -20],
  [-42, -20],
  [0, -48],
  [44, 8],
  [-44, 8],
  [30, 38],
  [-30, 38],
];
const CLEAR = 30;
const EDGE = 16;

/** A place for the disc of each camera that meets neither a disc nor a body of another, as far as there is one. */
export function discSpots(bodies: readonly Spot[], width: number, height: number): Spot[] {
  const discs: Spot[] = [];
  bodies.forEach((body, i) => {
    const others = [...bodies.filter((_, other) => other !== i), ...discs];
    const places = OFFSETS.map(([x, y]) => ({ x: body.x + x, y: body.y + y }));
    const free = places.find(
      (place) =>
        place.x > EDGE &&
        place.x < width - EDGE &&
        place.y > EDGE &&
        place.y < height - EDGE &&
        others.every((other) => Math.hypot(other.x - place.x, other.y - place.y) > CLEAR),
    );
    discs.push(free ?? places[0] ?? body);
  });
  return discs;
}
