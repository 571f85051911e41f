import type { Vec2 } from '../../base/vector.ts';

/** How much red, green and blue light a surface throws back, each 0 to 1 (linear), and how much infrared. */
export interface Tint {
  readonly red: number;
  readonly green: number;
  readonly blue: number;
  readonly infrared: number;
}

/**
 * A tint of our own drawing.
 * @param hex      #RRGGBB as it looks by day
 * @param infrared share of infrared that is thrown back; by default as bright as by day
 */
export function tint(hex: string, infrared?: number): Tint {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) =>
    linearOf(Number.parseInt(hex.slice(at, at + 2), 16) / 255),
  );
  return { red, green, blue, infrared: infrared ?? 0.2126 * red + 0.7152 * green + 0.0722 * blue };
}

/** Light of a screen value in [0, 1], and back. Source: IEC 61966-2-1 (sRGB), from memory. */
const linearOf = (value: number): number =>
  value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;

export const screenOf = (light: number): number =>
  light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055;

/** A shape of a drawing in metres, x right and z up as who looks at it has them. */
export type Shape =
  | { readonly kind: 'ellipse'; readonly at: Vec2; readonly half: Vec2; readonly tint: Tint }
  | {
      readonly kind: 'ring';
      readonly at: Vec2;
      readonly radius: number;
      readonly wide: number;
      readonly tint: Tint;
    }
  | { readonly kind: 'stroke'; readonly through: readonly Vec2[]; readonly wide: number; readonly tint: Tint }
  | { readonly kind: 'box'; readonly from: Vec2; readonly to: Vec2; readonly tint: Tint };

/** The tint of the topmost shape, which is the last, at a place; null beside all of them. */
export function tintAt(shapes: readonly Shape[], x: number, z: number): Tint | null {
  for (let at = shapes.length - 1; at >= 0; at -= 1) {
    const shape = shapes[at];
    if (shape !== undefined && holds(shape, x, z)) return shape.tint;
  }
  return null;
}

function holds(shape: Shape, x: number, z: number): boolean {
  switch (shape.kind) {
    case 'ellipse': {
      const [across, up] = [(x - shape.at[0]) / shape.half[0], (z - shape.at[1]) / shape.half[1]];
      return across * across + up * up <= 1;
    }
    case 'ring':
      return Math.abs(Math.hypot(x - shape.at[0], z - shape.at[1]) - shape.radius) <= shape.wide / 2;
    case 'box':
      return x >= shape.from[0] && x <= shape.to[0] && z >= shape.from[1] && z <= shape.to[1];
    case 'stroke': {
      const { through, wide } = shape;
      for (let at = 1; at < through.length; at += 1) {
        const [from, to] = [through[at - 1], through[at]];
        if (from !== undefined && to !== undefined && isNear(from, to, x, z, wide / 2)) return true;
      }
      return false;
    }
  }
}

/** Whether a place lies within a reach of a line from one point to another. */
function isNear(from: Vec2, to: Vec2, x: number, z: number, reach: number): boolean {
  const [dx, dz] = [to[0] - from[0], to[1] - from[1]];
  const length2 = dx * dx + dz * dz;
  const share =
    length2 === 0 ? 0 : Math.max(0, Math.min(1, ((x - from[0]) * dx + (z - from[1]) * dz) / length2));
  const [ox, oz] = [x - from[0] - share * dx, z - from[1] - share * dz];
  return ox * ox + oz * oz <= reach * reach;
}
