import { DEPTH, STRIDE, type Shadows } from '../sight/shadows.ts';

/** A box around targets from the lens, in coordinates of the target plane (m): its middle and half its size. */
export interface TargetBox {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly hx: number;
  readonly hy: number;
  readonly hz: number;
}

/**
 * Faces as what they hide: each caster hides the targets for which all its half-spaces a·x + b·y + c·z + k are ≥ 0; there its
 * depth, as linear, tells who is nearer the lens.
 */
export interface Casters {
  readonly count: number;
  /** The first half-space of each caster, and one past the last. */
  readonly first: Int32Array;
  /** Four numbers a half-space, a² + b² + c² = 1. */
  readonly sides: Float64Array;
  /** 1 a half-space along which what its solid hides may end; 0 where another face of the solid goes on beyond it. */
  readonly ends: Uint8Array;
  /** Four numbers a caster. */
  readonly depths: Float64Array;
  readonly solid: Int32Array;
}

/** Collects casters. */
class CasterList {
  private readonly first: number[] = [0];
  private readonly sides: number[] = [];
  private readonly ends: number[] = [];
  private readonly depths: number[] = [];
  private readonly solid: number[] = [];

  /** Adds a half-space of the caster at hand; false where nothing lies in it. */
  side(a: number, b: number, c: number, k: number, mayEnd: boolean): boolean {
    const size = Math.hypot(a, b, c);
    if (size < 1e-300) return k >= 0;
    this.sides.push(a / size, b / size, c / size, k / size);
    this.ends.push(mayEnd ? 1 : 0);
    return true;
  }

  /** Closes the caster at hand. */
  close(solid: number, a: number, b: number, c: number, k: number): void {
    this.first.push(this.ends.length);
    this.depths.push(a, b, c, k);
    this.solid.push(solid);
  }

  /** Drops the caster at hand. */
  drop(): void {
    const from = this.first.at(-1) ?? 0;
    this.ends.length = from;
    this.sides.length = from * 4;
  }

  made(): Casters {
    return {
      count: this.solid.length,
      first: Int32Array.from(this.first),
      sides: Float64Array.from(this.sides),
      ends: Uint8Array.from(this.ends),
      depths: Float64Array.from(this.depths),
      solid: Int32Array.from(this.solid),
    };
  }
}

/**
 * The shadows on a plane as casters, in plane coordinates relative to the foot.
 * @param whole whether each side may be an end: where a lens touches a solid its back faces hide too
 */
export function flatCasters(shadows: Shadows, whole: boolean): Casters {
  const list = new CasterList();
  const { numbers } = shadows;
  for (let shadow = 0; shadow < shadows.count; shadow += 1) {
    const base = shadow * STRIDE;
    const outline = shadows.outline[shadow] ?? 0;
    let isSome = true;
    for (let side = 0; side < (shadows.sides[shadow] ?? 0); side += 1) {
      const at = base + side * 3;
      const mayEnd = whole || (outline & (1 << side)) !== 0;
      isSome &&= list.side(numbers[at] ?? 0, numbers[at + 1] ?? 0, 0, numbers[at + 2] ?? 0, mayEnd);
    }
    const depth = base + DEPTH;
    if (isSome)
      list.close(
        shadows.solid[shadow] ?? -1,
        numbers[depth] ?? 0,
        numbers[depth + 1] ?? 0,
        0,
        numbers[depth + 2] ?? 0,
      );
    else list.drop();
  }
  return list.made();
}
