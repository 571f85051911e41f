import { Vector3, type IUniform, type Mesh } from 'three';
import { covered, spread } from '../lines/spread.ts';
import { Quads } from '../lines/quads.ts';
import type { WindowUniforms } from '../shading.ts';
import type { Edges } from './edges.ts';

/** Widths (CSS px) and strengths of silhouette, crease and fine line. */
export interface EdgeStyle {
  readonly widths: readonly [silhouette: number, crease: number, fine: number];
  readonly strengths: readonly [silhouette: number, crease: number, fine: number];
}

export const DRAWN: EdgeStyle = { widths: [1.55, 0.95, 0.7], strengths: [1, 0.75, 0.33] };
export const HOVERED: EdgeStyle = { widths: [2.2, 0, 0], strengths: [1, 0, 0] };
export const SELECTED_CASING: EdgeStyle = { widths: [3.1, 3.1, 0], strengths: [1, 1, 0] };
export const SELECTED: EdgeStyle = { widths: [1.6, 1.6, 0], strengths: [1, 1, 0] };

const vertex = /* glsl */ `
in vec3 from; in vec3 to; in vec3 left; in vec3 right; in float kind;
uniform vec3 uEye;
uniform vec3 uWidths;
uniform vec3 uStrengths;
flat out float vHalf;
flat out float vStrength;
${spread}
void main() {
  vec3 sight = uEye - from;
  bool a = dot(left, sight) > 0.0;
  bool b = dot(right, sight) > 0.0;
  int style = a != b ? 0 : int(kind);
  if ((!a && !b) || (a == b && kind < 0.5) || uWidths[style] <= 0.0) { hide(); return; }
  vHalf = uWidths[style] * 0.5 * uRatio;
  vStrength = uStrengths[style];
  spread(from, to, vHalf, 3e-5);
}
`;

const fragment = /* glsl */ `
uniform vec3 uInk;
flat in float vHalf;
flat in float vStrength;
out vec4 colour;
${covered}
void main() {
  float cover = covered(vHalf) * vStrength;
  if (cover <= 0.0) discard;
  colour = vec4(uInk, cover);
}
`;

/** Silhouettes and creases of some solids as lines of one width on the screen; which is which is decided for each view. */
export class InkEdges {
  private readonly quads: Quads;
  readonly ink: IUniform<Vector3> = { value: new Vector3() };

  constructor(style: EdgeStyle, window: WindowUniforms, eye: IUniform<Vector3>, order: number) {
    const uniforms = {
      ...window,
      uEye: eye,
      uInk: this.ink,
      uWidths: { value: new Vector3(...style.widths) },
      uStrengths: { value: new Vector3(...style.strengths) },
    };
    this.quads = new Quads(
      { from: 3, to: 3, left: 3, right: 3, kind: 1 },
      vertex,
      fragment,
      uniforms,
      order,
      true,
    );
  }

  get mesh(): Mesh {
    return this.quads.mesh;
  }

  show({ count, from, to, left, right, kind }: Edges): void {
    this.quads.show(count, { from, to, left, right, kind });
  }
}
