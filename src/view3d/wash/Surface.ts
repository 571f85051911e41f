import {
  BufferGeometry,
  DataTexture,
  DoubleSide,
  Float32BufferAttribute,
  Mesh,
  NearestFilter,
  NoBlending,
  NormalBlending,
  RedFormat,
  ShapeUtils,
  UnsignedByteType,
  Vector2,
  Vector3,
  Vector4,
  Uint32BufferAttribute,
  type IUniform,
  type Material,
  type Texture,
} from 'three';
import type { Board } from '../../assess/scene.ts';
import { subtract, type Vec3 } from '../../base/vector.ts';
import type { FlatSurface } from '../../model/surface.ts';
import { pointOn } from '../planeFrame.ts';
import { CORAL_STRENGTH } from '../../draw/ink.ts';
import type { TerrainFaces } from '../ground/terrainFaces.ts';
import { shaderMaterial, type WindowUniforms } from '../shading.ts';
import { CLOSED_LABEL, DARK_LABEL, type Asked, type CellLabels } from './cellLabels.ts';
import { MOST_BANDS } from './lensShader.ts';
import { readWash } from './readWash.ts';

const vertex = /* glsl */ `
in vec3 position;
// In coordinates of the surface, for what is drawn on it.
in vec2 at;
uniform mat4 modelViewMatrix;
uniform mat4 projectionMatrix;
out vec2 vAt;
out vec3 vPlace;
void main() {
  vAt = at;
  vPlace = position;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
}
`;

const fragment = /* glsl */ `
in vec2 vAt;
in vec3 vPlace;
uniform vec3 uGround; uniform vec3 uCoral;
uniform vec3 uBandInk[${MOST_BANDS}];
uniform float uRatio;
// Opaque ground, or a plane above it through which lower things show.
uniform bool uRaised;
uniform float uFill;
// How much of what is drawn gives way to the ground where it is not that of what stands.
uniform float uVeil;
uniform bool uWashed;
uniform float uPitch;
uniform float uBetween;
uniform sampler2D uShade;
// Left, bottom, width and height of the board.
uniform vec4 uBoard;
uniform float uContact;
// Slopes of uneven ground are a little darker than the flat, most of all to the north.
uniform bool uUneven;
// Cells are asked where screens close up (1), and what lamps light (2); before the lens at all (3); or instead of it (4).
uniform int uAsked;
uniform sampler2D uCells;
uniform vec4 uCellBox;
out vec4 colour;
${readWash}
int cellAt(vec2 at) {
  vec2 place = (at - uCellBox.xy) / uCellBox.zw;
  return int(texture(uCells, clamp(place, 0.0, 1.0)).r * 255.0 + 0.5);
}

int judgedAt(int seen) {
  if (uAsked == 4) return uWashed ? cellAt(vAt) : BARE;
  if (uAsked == 0 || seen == BARE || seen == HIDDEN) return seen;
  int label = cellAt(vAt);
  if (seen == SCREENED) return label == ${CLOSED_LABEL} ? HIDDEN : seen;
  if (uAsked == 1) return seen;
  if (uAsked == 2) return label == 0 || label == ${CLOSED_LABEL} ? seen : max(seen, BAND + label - 1);
  return label == ${DARK_LABEL} ? DARK : label == 0 || label == ${CLOSED_LABEL} ? TOO_FEW : BAND + label - 1;
}

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

float slopeShade() {
  if (!uUneven) return 0.0;
  vec3 n = normalize(cross(dFdx(vPlace), dFdy(vPlace)));
  n *= sign(n.z);
  return clamp(0.3 * (0.6 * length(n.xy) + 0.4 * n.y), 0.0, 0.3);
}

void main() {
  vec2 pixel = gl_FragCoord.xy;
  float shade = uRaised ? 0.0 : texture(uShade, (vAt - uBoard.xy) / uBoard.zw).r * uContact;
  int washed = uWashed ? washAt(pixel) : BARE;
  int state = judgedAt(washed);
  vec4 paint = uRaised ? vec4(uGround, 0.0) : vec4(uGround * (1.0 - shade) * (1.0 - slopeShade()), 1.0);
  float lines = hatch(vAt, uPitch);
  if (uBetween > 0.0) lines = max(lines, uBetween * hatch(vAt + vec2(uPitch * 0.35355339), uPitch));
  if (state == DARK) {
    // The other diagonal, broken: not to be taken for what is hidden.
    vec2 other = vec2(vAt.x, -vAt.y);
    float drawn = hatch(other, uPitch * 1.2) * dashes(other, uPitch * 1.2) * ${CORAL_STRENGTH};
    paint = uRaised ? vec4(uCoral, drawn) : vec4(mix(paint.rgb, uCoral, drawn), 1.0);
  } else if (state >= BAND) {
    // Ink pools just inside an edge.
    float reach = 2.0 * uRatio;
    float pooled = 0.0;
    for (int i = 0; i < 4; i += 1) {
      vec2 step_ = i == 0 ? vec2(reach, 0.0) : i == 1 ? vec2(-reach, 0.0) : i == 2 ? vec2(0.0, reach) : vec2(0.0, -reach);
      vec2 there = vAt + dFdx(vAt) * step_.x + dFdy(vAt) * step_.y;
      if (uAsked == 4 ? cellAt(there) != state : washAt(pixel + step_) != washed) pooled = 1.0;
    }
    vec3 ink = uBandInk[state - BAND] * (1.0 - 0.08 * pooled) * (1.0 - 0.7 * shade);
    paint = vec4(ink, uRaised ? uFill : 1.0);
  } else if (state == HIDDEN || state == SCREENED) {
    float drawn = lines * ${CORAL_STRENGTH} * (state == SCREENED ? dashes(vAt, uPitch) : 1.0);
    paint = uRaised ? vec4(uCoral, drawn) : vec4(mix(paint.rgb, uCoral, drawn), 1.0);
  }
  if (state != BARE) paint = uRaised ? vec4(paint.rgb, paint.a * (1.0 - uVeil)) : mix(paint, vec4(uGround * (1.0 - shade), 1.0), uVeil);
  if (paint.a <= 0.0) discard;
  colour = paint;
}
`;

/** The target surface over the whole board, painted by the wash. */
export class Surface {
  readonly mesh: Mesh;
  readonly uniforms = {
    uGround: { value: new Vector3() },
    uCoral: { value: new Vector3() },
    uBandInk: { value: Array.from({ length: MOST_BANDS }, () => new Vector3()) },
    uRaised: { value: false },
    /** A wall's own paint covers it; a plane in the air lets lower things through. */
    uFill: { value: 0.84 },
    uVeil: { value: 0 },
    uWashed: { value: true },
    uPitch: { value: 0.5 },
    uBetween: { value: 0 },
    uShade: { value: null as Texture | null },
    uBoard: { value: new Vector4(0, 0, 1, 1) },
    uContact: { value: 0 },
    uUneven: { value: false },
    uAsked: { value: 0 },
    uCells: { value: null as Texture | null },
    uCellBox: { value: new Vector4(0, 0, 1, 1) },
  };

  private readonly material: Material;
  private readonly raised: boolean;
  private cells = labelTexture(new Uint8Array(1), 1, 1);

  constructor(wash: IUniform<Texture>, window: WindowUniforms, raised: boolean, order: number) {
    this.uniforms.uRaised.value = raised;
    this.raised = raised;
    this.material = shaderMaterial(
      vertex,
      fragment,
      { ...window, ...this.uniforms, uWash: wash },
      {
        side: DoubleSide,
        transparent: true,
        blending: raised ? NormalBlending : NoBlending,
        depthWrite: false,
        depthTest: raised,
        polygonOffset: true,
        polygonOffsetFactor: 2,
        polygonOffsetUnits: 4,
      },
    );
    this.mesh = new Mesh(new BufferGeometry(), this.material);
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
    this.put([l, b, z, r, b, z, r, t, z, l, t, z], [l, b, r, b, r, t, l, t], [0, 1, 2, 0, 2, 3]);
    this.uniforms.uBoard.value.set(l, b, r - l, t - b);
  }

  /** Covers uneven ground, or what lies a height above it. */
  layOver({ positions, triangles }: TerrainFaces, board: Board, height: number, origin: Vec3): void {
    const position: number[] = [];
    const at: number[] = [];
    for (let i = 0; i < positions.length; i += 3) {
      const [x, y] = [(positions[i] ?? 0) - origin[0], (positions[i + 1] ?? 0) - origin[1]];
      position.push(x, y, (positions[i + 2] ?? 0) + height - origin[2]);
      at.push(x, y);
    }
    this.put(position, at, triangles, true);
    this.uniforms.uBoard.value.set(
      board.left - origin[0],
      board.bottom - origin[1],
      board.right - board.left,
      board.top - board.bottom,
    );
  }

  /** Covers a wall, a roof face or a patch. @param origin what its places are given from, a hair behind the face */
  layOn({ plane, rings }: FlatSurface, origin: Vec3): void {
    const [position, at, index]: [number[], number[], number[]] = [[], [], []];
    for (const ring of rings) {
      const first = at.length / 2;
      const contour = ring.map(([a, b]) => new Vector2(a, b));
      for (const [a, b] of ring) {
        position.push(...subtract(pointOn(plane, a, b), origin));
        at.push(a, b);
      }
      for (const face of ShapeUtils.triangulateShape(contour, []))
        index.push(...face.map((corner) => first + corner));
    }
    this.put(position, at, index);
  }

  /** Reads the cells before the lens; null reads the lens alone. @param shift of the surface's coordinates, m */
  ask(labels: CellLabels | null, asked: Asked, shift: readonly [number, number]): void {
    this.uniforms.uAsked.value = labels === null ? 0 : ASKED[asked];
    if (labels === null) return;
    const { left, bottom, cell, columns, rows } = labels.grid;
    this.uniforms.uCellBox.value.set(left - shift[0], bottom - shift[1], columns * cell, rows * cell);
    const { image } = this.cells;
    if (image.width === columns && image.height === rows) this.cells.image.data = labels.labels;
    else {
      this.cells.dispose();
      this.cells = labelTexture(labels.labels, columns, rows);
      this.uniforms.uCells.value = this.cells;
    }
    this.cells.needsUpdate = true;
  }

  private put(
    position: readonly number[],
    at: readonly number[],
    index: number[] | Uint32Array,
    uneven = false,
  ): void {
    const { material } = this;
    this.uniforms.uUneven.value = uneven;
    // Hills stand before what is behind them; a plane never does.
    material.depthTest = uneven || this.raised;
    material.depthWrite = uneven;
    this.mesh.geometry.dispose();
    this.mesh.geometry = new BufferGeometry();
    this.mesh.geometry.setAttribute('position', new Float32BufferAttribute(position, 3));
    this.mesh.geometry.setAttribute('at', new Float32BufferAttribute(at, 2));
    this.mesh.geometry.setIndex(new Uint32BufferAttribute(index, 1));
  }
}

/** How the shader asks the cells. */
const ASKED: Readonly<Record<Asked, number>> = { nothing: 0, screens: 1, lamps: 2, all: 3, ground: 4 };

/** Labels of cells as the shader reads them: one byte each, none between. */
function labelTexture(labels: Uint8Array<ArrayBuffer>, columns: number, rows: number): DataTexture {
  const texture = new DataTexture(labels, columns, rows, RedFormat, UnsignedByteType);
  texture.minFilter = NearestFilter;
  texture.magFilter = NearestFilter;
  texture.unpackAlignment = 1;
  return texture;
}
