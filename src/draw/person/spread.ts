import type { Sampled } from './sampled.ts';

/**
 * The mean of a picture over a straight way that it goes while it is exposed, in pixels of the camera.
 * @param along right and down, px; the picture stands in the middle of it
 */
export function smeared(picture: Sampled, along: readonly [right: number, down: number]): Sampled {
  const { width, height, step } = picture;
  const [right, down] = [along[0] / step, along[1] / step];
  const length = Math.hypot(right, down);
  if (length < LEAST) return picture;
  const count = Math.ceil(2 * length) + 1;
  const shifts = Array.from({ length: count }, (_, at) => {
    const share = (at + 0.5) / count - 0.5;
    return [share * right, share * down] as const;
  });
  const mean = (plane: Float32Array, deep: number): Float32Array => {
    const out = new Float32Array(plane.length);
    for (const [dx, dy] of shifts) addShifted(plane, out, { width, height, deep }, dx, dy, 1 / count);
    return out;
  };
  return {
    ...picture,
    day: mean(picture.day, 3),
    infrared: mean(picture.infrared, 1),
    cover: mean(picture.cover, 1),
  };
}

/** A smear of less than this is no smear, px. */
const LEAST = 0.15;

interface Size {
  readonly width: number;
  readonly height: number;
  /** Numbers a pixel. */
  readonly deep: number;
}

/** Adds a plane, moved by a way in pixels, to another; between pixels by shares of four. */
function addShifted(
  plane: Float32Array,
  out: Float32Array,
  { width, height, deep }: Size,
  dx: number,
  dy: number,
  weight: number,
): void {
  const [left, top] = [Math.floor(dx), Math.floor(dy)];
  const [right, down] = [dx - left, dy - top];
  for (const [shiftX, shiftY, share] of [
    [left, top, (1 - right) * (1 - down)],
    [left + 1, top, right * (1 - down)],
    [left, top + 1, (1 - right) * down],
    [left + 1, top + 1, right * down],
  ] as const) {
    if (share === 0) continue;
    for (let row = Math.max(0, shiftY); row < Math.min(height, height + shiftY); row += 1)
      for (let column = Math.max(0, shiftX); column < Math.min(width, width + shiftX); column += 1)
        for (let part = 0; part < deep; part += 1) {
          const to = deep * (row * width + column) + part;
          const from = deep * ((row - shiftY) * width + column - shiftX) + part;
          out[to] = (out[to] ?? 0) + weight * share * (plane[from] ?? 0);
        }
  }
}

/**
 * Spreads light over neighbouring pixels as lens and sensor do.
 * @param sigma px, up to about 1
 */
export function blurred(
  plane: Float32Array,
  width: number,
  height: number,
  deep: number,
  sigma: number,
): Float32Array {
  const raw = [-2, -1, 0, 1, 2].map((off) => Math.exp((-off * off) / (2 * sigma * sigma)));
  const sum = raw.reduce((total, one) => total + one, 0);
  const pass = (from: Float32Array, isDown: boolean): Float32Array => {
    const out = new Float32Array(from.length);
    for (let row = 0; row < height; row += 1)
      for (let column = 0; column < width; column += 1)
        for (let part = 0; part < deep; part += 1) {
          let light = 0;
          for (let off = -2; off <= 2; off += 1) {
            // What lies at the rim goes on beyond it.
            const x = isDown ? column : Math.min(width - 1, Math.max(0, column + off));
            const y = isDown ? Math.min(height - 1, Math.max(0, row + off)) : row;
            light += ((raw[off + 2] ?? 0) / sum) * (from[deep * (y * width + x) + part] ?? 0);
          }
          out[deep * (row * width + column) + part] = light;
        }
    return out;
  };
  return pass(pass(plane, false), true);
}
