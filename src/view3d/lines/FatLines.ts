import { Vector2, Vector3, type IUniform, type Mesh } from 'three';
import { inkVector, type WindowUniforms } from '../shading.ts';
import { Quads } from './quads.ts';
import { covered, spread } from './spread.ts';

const vertex = /* glsl */ `
in vec3 from; in vec3 to;
uniform float uWidth;
${spread}
void main() { spread(from, to, uWidth * 0.5 * uRatio, 4e-5); }
`;

const fragment = /* glsl */ `
uniform vec3 uInk;
uniform float uStrength;
uniform float uWidth;
uniform float uRatio;
// Drawn and left out, CSS px; x = 0 draws all.
uniform vec2 uDash;
out vec4 colour;
${covered}
void main() {
  float cover = covered(uWidth * 0.5 * uRatio) * uStrength;
  if (uDash.x > 0.0) {
    float at = mod(vPlace.x / uRatio, uDash.x + uDash.y);
    cover *= clamp((uDash.x - at) * uRatio + 0.5, 0.0, 1.0);
  }
  if (cover <= 0.0) discard;
  colour = vec4(uInk, cover);
}
`;

export interface LineStyle {
  /** CSS px. */
  readonly width: number;
  readonly strength?: number;
  readonly dash?: readonly [drawn: number, left: number];
  /** False draws over everything. */
  readonly depthTest?: boolean;
  readonly order: number;
}

/** The ends of some segments relative to the origin. */
export interface Ends {
  readonly from: Float32Array;
  readonly to: Float32Array;
}

/** Segments as lines of one width on the screen. */
export class FatLines {
  private readonly quads: Quads;
  private readonly ink: IUniform<Vector3> = { value: new Vector3() };

  constructor(style: LineStyle, window: WindowUniforms) {
    const uniforms = {
      ...window,
      uInk: this.ink,
      uWidth: { value: style.width },
      uStrength: { value: style.strength ?? 1 },
      uDash: { value: new Vector2(...(style.dash ?? [0, 0])) },
    };
    this.quads = new Quads(
      { from: 3, to: 3 },
      vertex,
      fragment,
      uniforms,
      style.order,
      style.depthTest ?? true,
    );
  }

  get mesh(): Mesh {
    return this.quads.mesh;
  }

  tint(hex: string): void {
    this.ink.value = inkVector(hex);
  }

  /** The same in parts that are at hand: both ends of each segment, three numbers an end. */
  showParts(parts: readonly Ends[]): void {
    const size = parts.reduce((sum, part) => sum + part.from.length, 0);
    const [from, to] = [new Float32Array(size), new Float32Array(size)];
    let at = 0;
    for (const part of parts) {
      from.set(part.from, at);
      to.set(part.to, at);
      at += part.from.length;
    }
    this.quads.show(size / 3, { from, to });
  }

  /** Six numbers a segment: its two ends relative to the origin. */
  show(segments: readonly number[]): void {
    const count = Math.floor(segments.length / 6);
    const from = new Float32Array(count * 3);
    const to = new Float32Array(count * 3);
    for (let i = 0; i < count * 6; i += 1) {
      const at = Math.floor(i / 6) * 3 + (i % 3);
      (i % 6 < 3 ? from : to)[at] = segments[i] ?? 0;
    }
    this.quads.show(count, { from, to });
  }
}
