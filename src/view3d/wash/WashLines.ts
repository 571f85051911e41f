import { Vector3, type IUniform, type Mesh, type Texture } from 'three';
import { CORAL_STRENGTH } from '../../draw/ink.ts';
import { Quads } from '../lines/quads.ts';
import { covered, spread } from '../lines/spread.ts';
import type { WindowUniforms } from '../shading.ts';
import { MOST_BANDS } from './lensShader.ts';
import { readWash } from './readWash.ts';

/** `kind` of a segment on an outline; a contour has the index of its band + 1. */
export const OUTLINE = 0;
/** A segment where range or the angle from above ends a band. */
export const LIMIT = -1;

const vertex = /* glsl */ `
in vec3 from; in vec3 to; in float kind;
flat out int vKind;
${spread}
void main() {
  vKind = int(kind);
  spread(from, to, 0.7 * uRatio, 4e-5);
}
`;

/*
 * A line is drawn only where the wash differs across it: so what another camera sees better leaves no line, and an outline
 * shows what it parts by reading both sides.
 */
const fragment = /* glsl */ `
flat in int vKind;
uniform float uRatio;
uniform vec3 uInk; uniform vec3 uCoral;
uniform vec3 uContourInk[${MOST_BANDS}];
out vec4 colour;
${readWash}
${covered}
void main() {
  vec2 middle = gl_FragCoord.xy - vNormal * vPlace.y;
  float aside = 1.5 * uRatio + 0.5;
  int a = washAt(middle + vNormal * aside);
  int b = washAt(middle - vNormal * aside);
  if (a == b) discard;
  int low = min(a, b);
  int high = max(a, b);
  float dash = step(mod(vPlace.x / uRatio, 9.0), 5.0);
  if (vKind > 0) {
    int band = BAND + vKind - 1;
    if (low < TOO_FEW || low >= band || high < band) discard;
    colour = vec4(uContourInk[vKind - 1], covered(0.7 * uRatio));
  } else if (vKind < 0) {
    if (low < DARK) discard;
    colour = low <= TOO_FEW
      ? vec4(uInk, covered(0.5 * uRatio) * 0.7 * dash)
      : vec4(uContourInk[high - BAND], covered(0.5 * uRatio) * 0.8);
  } else if (low == HIDDEN) {
    colour = vec4(uCoral, covered(0.5 * uRatio) * ${CORAL_STRENGTH});
  } else if (low == SCREENED) {
    colour = vec4(uCoral, covered(0.5 * uRatio) * ${CORAL_STRENGTH} * dash);
  } else if (low == DARK || low == TOO_FEW || high == DARK || high == TOO_FEW) {
    colour = vec4(uInk, covered(0.5 * uRatio) * 0.7 * dash);
  } else {
    colour = vec4(uInk, covered(0.6 * uRatio) * 0.55);
  }
  if (colour.a <= 0.0) discard;
}
`;

/** Contours and outlines on the target surface. */
export class WashLines {
  private readonly quads: Quads;
  readonly uniforms = {
    uInk: { value: new Vector3() },
    uCoral: { value: new Vector3() },
    uContourInk: { value: Array.from({ length: MOST_BANDS }, () => new Vector3()) },
  };

  constructor(wash: IUniform<Texture>, window: WindowUniforms, raised: boolean, order: number) {
    const uniforms = { ...window, ...this.uniforms, uWash: wash };
    this.quads = new Quads({ from: 3, to: 3, kind: 1 }, vertex, fragment, uniforms, order, raised);
  }

  get mesh(): Mesh {
    return this.quads.mesh;
  }

  show(count: number, from: Float32Array, to: Float32Array, kind: Float32Array): void {
    this.quads.show(count, { from, to, kind });
  }
}
