import {
  DataTexture,
  DoubleSide,
  Mesh,
  NearestFilter,
  RedFormat,
  UnsignedByteType,
  Vector3,
  Vector4,
  type Material,
  type Texture,
} from 'three';
import type { Assessment } from '../../assess/assessment.ts';
import type { Vec3 } from '../../base/vector.ts';
import type { CameraCoverage } from '../../coverage/coverage.ts';
import { bandColours, inkOnBand } from '../../draw/bandInk.ts';
import { ink, type Theme } from '../../draw/ink.ts';
import { inkVector, shaderMaterial, type WindowUniforms } from '../shading.ts';
import { askedOfCells } from '../wash/cellLabels.ts';
import { MOST_BANDS } from '../wash/lensShader.ts';
import { readWash } from '../wash/readWash.ts';
import type { Surface } from '../wash/Surface.ts';

const vertex = /* glsl */ `
in vec3 position;
in vec2 at;
uniform mat4 modelViewMatrix;
uniform mat4 projectionMatrix;
out vec2 vAt;
void main() {
  vAt = at;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
}
`;

/*
 * Signs on the ground, a row of + where the setting shown covers what the other does not, and of − where it is the other way
 * round: told by the two washes at the very pixel, or by cells where a wash cannot tell.
 */
const fragment = /* glsl */ `
in vec2 vAt;
uniform sampler2D uOther;
uniform sampler2D uCells;
uniform vec4 uCellBox;
uniform bool uByCells;
uniform int uLevel;
uniform float uPitch;
uniform vec3 uInk;
uniform vec3 uBandInk[${MOST_BANDS}];
out vec4 colour;
${readWash}
int otherAt(vec2 pixel) {
  ivec2 most = textureSize(uOther, 0) - 1;
  ivec4 w = ivec4(texelFetch(uOther, clamp(ivec2(floor(pixel)), ivec2(0), most), 0) * 255.0 + 0.5);
  return w.r > 0 ? DARK + w.r - 1 : BARE;
}

void main() {
  int own = washAt(gl_FragCoord.xy);
  int change;
  if (uByCells) {
    change = int(texture(uCells, clamp((vAt - uCellBox.xy) / uCellBox.zw, 0.0, 1.0)).r * 255.0 + 0.5);
  } else {
    bool here = own >= uLevel;
    bool there = otherAt(gl_FragCoord.xy) >= uLevel;
    change = here == there ? 0 : here ? 1 : 2;
  }
  if (change == 0) discard;
  // Rows are set off by half a sign, so that they are no grid of their own.
  vec2 place = vAt / uPitch;
  place.x += 0.5 * mod(floor(place.y), 2.0);
  vec2 off = abs(fract(place) - 0.5);
  float wide = max(length(fwidth(vAt)) / uPitch, 1e-4);
  vec2 bar = vec2(0.3, 0.07);
  float across = max(off.x - bar.x, off.y - bar.y);
  float upright = max(off.x - bar.y, off.y - bar.x);
  float away = change == 1 ? min(across, upright) : across;
  float cover = clamp(0.5 - away / wide, 0.0, 1.0);
  if (cover <= 0.0) discard;
  colour = vec4(own >= BAND ? uBandInk[own - BAND] : uInk, cover);
}
`;

/** The least state that counts at the coarsest band, as the shader numbers states. */
const BAND = 5;
/** Signs are so many hatch lines apart. */
const APART = 2.4;

/** Where ground is gained and lost: + and −, in what reads on the paint below. */
export class ChangeMarks {
  readonly mesh: Mesh;
  private readonly uniforms = {
    uOther: { value: null as Texture | null },
    uCells: { value: labelTexture(new Uint8Array(1), 1, 1) },
    uCellBox: { value: new Vector4(0, 0, 1, 1) },
    uByCells: { value: false },
    uLevel: { value: BAND },
    uPitch: { value: 1 },
    uInk: { value: new Vector3() },
    uBandInk: { value: Array.from({ length: MOST_BANDS }, () => new Vector3()) },
  };
  private readonly material: Material;
  private theme: Theme = 'light';
  private bands = 4;

  constructor(wash: { value: Texture }, window: WindowUniforms) {
    this.material = shaderMaterial(
      vertex,
      fragment,
      { ...window, ...this.uniforms, uWash: wash },
      { side: DoubleSide, transparent: true, depthWrite: false, polygonOffset: true, polygonOffsetUnits: 2 },
    );
    this.mesh = new Mesh(undefined, this.material);
    this.mesh.frustumCulled = false;
    this.mesh.visible = false;
  }

  tint(theme: Theme): void {
    this.theme = theme;
    this.uniforms.uInk.value = inkVector(ink[theme].ink);
    bandColours(this.bands, theme)
      .slice(0, MOST_BANDS)
      .forEach((band, at) => {
        this.uniforms.uBandInk.value[at] = inkVector(inkOnBand(band, theme));
      });
  }

  /**
   * @param left  as it stands
   * @param right what takes its place
   * @param band  index of the band at which ground counts
   */
  show(
    assessment: Assessment,
    left: CameraCoverage,
    right: CameraCoverage,
    band: number,
    origin: Vec3,
  ): void {
    this.bands = assessment.edition.bands.length;
    this.tint(this.theme);
    this.uniforms.uLevel.value = BAND + band;
    const asked = askedOfCells(assessment);
    const byCells = asked !== 'nothing' && asked !== 'screens';
    this.uniforms.uByCells.value = byCells;
    if (!byCells) return;
    const { grid } = right.cells;
    const labels = new Uint8Array(grid.columns * grid.rows);
    for (let cell = 0; cell < labels.length; cell += 1) {
      const [there, here] = [(left.cells.band[cell] ?? 0) > band, (right.cells.band[cell] ?? 0) > band];
      labels[cell] = there === here ? 0 : here ? 1 : 2;
    }
    this.uniforms.uCells.value.dispose();
    this.uniforms.uCells.value = labelTexture(labels, grid.columns, grid.rows);
    const [x, y] = assessment.surface === null ? origin : [0, 0];
    const { cell, columns, rows } = grid;
    this.uniforms.uCellBox.value.set(grid.left - x, grid.bottom - y, columns * cell, rows * cell);
  }

  /** Lies on a surface as its wash does, just over it. */
  lieOn({ mesh, uniforms }: Surface, other: Texture): void {
    this.mesh.geometry = mesh.geometry;
    this.mesh.renderOrder = mesh.renderOrder + 0.5;
    this.material.depthTest = Array.isArray(mesh.material) || mesh.material.depthTest;
    this.uniforms.uOther.value = other;
    this.uniforms.uPitch.value = uniforms.uPitch.value * APART;
  }

  dispose(): void {
    this.material.dispose();
    this.uniforms.uCells.value.dispose();
  }
}

function labelTexture(labels: Uint8Array<ArrayBuffer>, columns: number, rows: number): DataTexture {
  const texture = new DataTexture(labels, columns, rows, RedFormat, UnsignedByteType);
  texture.minFilter = NearestFilter;
  texture.magFilter = NearestFilter;
  texture.unpackAlignment = 1;
  texture.needsUpdate = true;
  return texture;
}
