import { BufferGeometry, Float32BufferAttribute, Mesh, Vector2 } from 'three';
import type { Board } from '../../assess/scene.ts';
import type { Theme } from '../../draw/ink.ts';
import { shaderMaterial } from '../shading.ts';
import type { Sheet, Spot } from '../sheet.ts';
import { BOARD_EDGE } from './board.ts';
import { hullOf } from './hull.ts';

const MOST_CORNERS = 8;
/** How far down the sheet it falls and how wide its edge is, CSS px; how dark it is. */
const SHAPE = {
  light: { fall: 10, blur: 14, strength: 0.2, tone: [58 / 255, 47 / 255, 34 / 255] },
  dark: { fall: 12, blur: 16, strength: 0.6, tone: [0, 0, 0] },
} as const;

const vertex = /* glsl */ `
in vec2 place;
uniform vec2 uViewport;
void main() { gl_Position = vec4(place / uViewport * 2.0 - 1.0, 0.0, 1.0); }
`;

const fragment = /* glsl */ `
uniform vec2 uCorners[${MOST_CORNERS}];
uniform int uCount;
uniform float uBlur;
uniform vec4 uShadow;
out vec4 colour;
// Signed distance to a convex polygon, negative inside.
float away(vec2 p) {
  float least = 1e9;
  float side = -1.0;
  for (int i = 0; i < ${MOST_CORNERS}; i += 1) {
    if (i >= uCount) break;
    vec2 a = uCorners[i];
    vec2 run = uCorners[(i + 1) % uCount] - a;
    vec2 off = p - a;
    vec2 near = off - run * clamp(dot(off, run) / dot(run, run), 0.0, 1.0);
    least = min(least, dot(near, near));
    if (run.x * off.y - run.y * off.x < 0.0) side = 1.0;
  }
  return sqrt(least) * side;
}
void main() {
  float shade = 1.0 - smoothstep(-uBlur, uBlur, away(gl_FragCoord.xy));
  if (shade <= 0.0) discard;
  colour = vec4(uShadow.rgb, uShadow.a * shade);
}
`;

/** The one shadow on the sheet: soft, under the baseboard. It lies on the sheet, so it is made anew for each view. */
export class BoardShadow {
  readonly mesh: Mesh;
  private readonly uniforms = {
    uViewport: { value: new Vector2(1, 1) },
    uCorners: { value: Array.from({ length: MOST_CORNERS }, () => new Vector2()) },
    uCount: { value: 0 },
    uBlur: { value: 14 },
    uShadow: { value: [0, 0, 0, 0] },
  };
  private readonly places = new Float32BufferAttribute(new Float32Array(8), 2);
  private theme: Theme = 'light';

  constructor(order: number) {
    const material = shaderMaterial(vertex, fragment, this.uniforms, {
      transparent: true,
      depthTest: false,
      depthWrite: false,
    });
    const geometry = new BufferGeometry();
    geometry.setAttribute('place', this.places);
    geometry.setIndex([0, 1, 2, 0, 2, 3]);
    this.mesh = new Mesh(geometry, material);
    this.mesh.frustumCulled = false;
    this.mesh.renderOrder = order;
  }

  tint(theme: Theme): void {
    this.theme = theme;
    const { tone, strength } = SHAPE[theme];
    this.uniforms.uShadow.value = [...tone, strength];
  }

  /** @param ratio device pixels per CSS pixel */
  fall(board: Board, ground: number, sheet: Sheet, ratio: number): void {
    const { fall, blur } = SHAPE[this.theme];
    const { left, bottom, right, top } = board;
    const spots = [ground, ground - BOARD_EDGE].flatMap((z) =>
      [
        [left, bottom],
        [right, bottom],
        [right, top],
        [left, top],
      ].flatMap(([x = 0, y = 0]): Spot[] => {
        const spot = sheet.spotFromSite([x, y, z]);
        return spot ? [{ x: spot.x * ratio, y: (sheet.height - spot.y - fall) * ratio }] : [];
      }),
    );
    const corners = hullOf(spots).slice(0, MOST_CORNERS);
    // A corner behind the eye leaves no outline to draw by.
    this.mesh.visible = spots.length === 8 && corners.length > 2;
    if (!this.mesh.visible) return;
    const pad = blur * ratio;
    const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
    const [l, r] = [Math.min(...xs) - pad, Math.max(...xs) + pad];
    const [b, t] = [Math.min(...ys) - pad, Math.max(...ys) + pad];
    this.places.set([l, b, r, b, r, t, l, t]);
    this.places.needsUpdate = true;
    corners.forEach(({ x, y }, i) => this.uniforms.uCorners.value[i]?.set(x, y));
    this.uniforms.uCount.value = corners.length;
    this.uniforms.uBlur.value = pad;
    this.uniforms.uViewport.value.set(sheet.width * ratio, sheet.height * ratio);
  }
}
