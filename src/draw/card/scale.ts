/** Scales that are drawn in, 1 to so much. */
const SCALES = [
  1, 2, 5, 10, 20, 25, 50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 750, 1000, 2000,
] as const;

/** The largest scale at which something of a size in metres fits a room in millimetres: 1 to how much. */
export function scaleFor(size: readonly [number, number], room: readonly [number, number]): number {
  const needed = Math.max((size[0] * 1000) / Math.max(1, room[0]), (size[1] * 1000) / Math.max(1, room[1]));
  return SCALES.find((one) => one >= needed - 1e-9) ?? Math.ceil(needed / 1000) * 1000;
}
