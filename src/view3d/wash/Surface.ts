import {
  BufferGeometry,
  DoubleSide,
  Float32BufferAttribute,
  Mesh,
  NoBlending,
  NormalBlending,
  Vector3,
  Vector4,
  type IUniform,
  type Texture,
} from 'three';
import type { Board } from '../../assess/scene.ts';
import type { Vec3 } from '../../base/vector.ts';
import { CORAL_STRENGTH } from '../../draw/ink.ts';
import { shaderMaterial, type WindowUniforms } from '../shading.ts';
import { MOST_BANDS } from './lensShader.ts';
import { readWash } from './readWash.ts';

const vertex = /* glsl */ `
in vec3 position;
uniform mat4 modelViewMatrix;
uniform mat4 projectionMatrix;
out vec2 vAt;
void main() {
  vAt = position.xy;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
}
`;

const fragment = /* glsl */ `
in vec2 vAt;
uniform vec3 uGround; uniform vec3 uInk; uniform vec3 uCoral;
uniform vec3 uBandInk[${MOST_BANDS}];
uniform float uRatio;
// Opaque ground, or a plane above it through which lower things show.
uniform bool uRaised;
uniform float uFill;
uniform bool uWashed;
uniform float uPitch;
uniform float uBetween;
uniform sampler2D uShade;
// Left, bottom, width and height of the board.
uniform vec4 uBoard;
uniform float uContact;
out vec4 colour;
${readWash}

// Lines at 45° with a pitch in metres; where they are finer than pixels, their mean.
float hatch(vec2 at, float pitch) {
  float cell = (at.x + at.y) * 0.70710678 / pitch;
  float wide = fwidth(cell);
  float half_ = max(0.075, 0.5 * wide);
  float off = abs(fract(cell) - 0.5);
  return clamp((half_ + 0.5 * wide - off) / wide, 0.0, 1.0) * min(1.0, 0.3 / max(wide, 0.3));
}

float dashes(vec2 at, float pitch) {
  return step(fract((at.x - at.y) * 0.70710678 / (pitch * 2.4) + 0.5 * floor((at.x + at.y) * 0.70710678 / pitch)), 0.55);
}

void main() {
  vec2 pixel = gl_FragCoord.xy;
  float shade = uRaised ? 0.0 : texture(uShade, (vAt - uBoard.xy) / uBoard.zw).r * uContact;
  int state = uWashed ? washAt(pixel) : BARE;
  vec4 paint = uRaised ? vec4(uGround, 0.0) : vec4(uGround * (1.0 - shade), 1.0);
  float lines = hatch(vAt, uPitch);
  if (uBetween > 0.0) lines = max(lines, uBetween * hatch(vAt + vec2(uPitch * 0.35355339), uPitch));
  if (state >= BAND) {
    // Ink pools just inside an edge.
    float reach = 2.0 * uRatio;
    float pooled = 0.0;
    for (int i = 0; i < 4; i += 1) {
      vec2 step_ = i == 0 ? vec2(reach, 0.0) : i == 1 ? vec2(-reach, 0.0) : i == 2 ? vec2(0.0, reach) : vec2(0.0, -reach);
      if (washAt(pixel + step_) != state) pooled = 1.0;
    }
    vec3 ink = uBandInk[state - BAND] * (1.0 - 0.08 * pooled) * (1.0 - 0.7 * shade);
    paint = vec4(ink, uRaised ? uFill : 1.0);
  } else if (state == HIDDEN || state == SCREENED) {
    float drawn = lines * ${CORAL_STRENGTH} * (state == SCREENED ? dashes(vAt, uPitch) : 1.0);
    paint = uRaised ? vec4(uCoral, drawn) : vec4(mix(paint.rgb, uCoral, drawn), 1.0);
  }
  if (paint.a <= 0.0) discard;
  colour = paint;
}
`;

/** The target surface over the whole board, painted by the wash. */
export class Surface {
  readonly mesh: Mesh;
  readonly uniforms = {
    uGround: { value: new Vector3() },
    uInk: { value: new Vector3() },
    uCoral: { value: new Vector3() },
    uBandInk: { value: Array.from({ length: MOST_BANDS }, () => new Vector3()) },
    uRaised: { value: false },
    uFill: { value: 0.84 },
    uWashed: { value: true },
    uPitch: { value: 0.5 },
    uBetween: { value: 0 },
    uShade: { value: null as Texture | null },
    uBoard: { value: new Vector4(0, 0, 1, 1) },
    uContact: { value: 0 },
  };

  constructor(wash: IUniform<Texture>, window: WindowUniforms, raised: boolean, order: number) {
    this.uniforms.uRaised.value = raised;
    const material = shaderMaterial(
      vertex,
      fragment,
      { ...window, ...this.uniforms, uWash: wash },
      {
        side: DoubleSide,
        transparent: true,
        blending: raised ? NormalBlending : NoBlending,
        depthWrite: false,
        depthTest: raised,
      },
    );
    this.mesh = new Mesh(new BufferGeometry(), material);
    this.mesh.frustumCulled = false;
    this.mesh.renderOrder = order;
  }

  /** Covers the board at a height, in site coordinates relative to the origin. */
  lay(board: Board, height: number, origin: Vec3): void {
    const [l, b, r, t] = [
      board.left - origin[0],
      board.bottom - origin[1],
      board.right - origin[0],
      board.top - origin[1],
    ];
    const z = height - origin[2];
    this.mesh.geometry.dispose();
    this.mesh.geometry = new BufferGeometry();
    this.mesh.geometry.setAttribute(
      'position',
      new Float32BufferAttribute([l, b, z, r, b, z, r, t, z, l, t, z], 3),
    );
    this.mesh.geometry.setIndex([0, 1, 2, 0, 2, 3]);
    this.uniforms.uBoard.value.set(l, b, r - l, t - b);
  }
}
