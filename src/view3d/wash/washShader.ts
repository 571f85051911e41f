import { lens, MOST_BANDS, MOST_CAPS } from './lensShader.ts';

/** Plane coordinates relative to the lens's foot, so that single precision is exact to micrometres near it. */
export const washVertex = /* glsl */ `
in vec2 place;
uniform mat4 modelViewMatrix;
uniform mat4 projectionMatrix;
out vec2 vPlace;
void main() {
  vPlace = place;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(place, 0.0, 1.0);
}
`;

export const FRAME_PASS = 0;
export const SCREEN_PASS = 1;
export const SEEN_PASS = 2;

/** Red: 0 not seen, 1 seen with too few pixels, 2 and up the bands; green: seen through screens at most; blue: in frame; alpha: count. */
export const washFragment = /* glsl */ `
in vec2 vPlace;
uniform vec3 uU; uniform vec3 uV; uniform vec3 uNormal;
uniform float uHeight;
uniform float uRange;
uniform bool uFramed;
uniform int uPass;
uniform int uBandCount;
uniform float uBands[${MOST_BANDS}];
uniform int uCapCount;
// Tangent of the greatest depression, and the band kept past it.
uniform vec2 uCaps[${MOST_CAPS}];
out vec4 colour;
${lens}
void main() {
  vec3 target = vPlace.x * uU + vPlace.y * uV - uHeight * uNormal;
  Ray ray = rayTo(target);
  if (!uFramed && !inFrame(ray)) discard;
  if (uPass == ${FRAME_PASS}) { colour = vec4(0.0, 0.0, 1.0, 0.0); return; }
  if (uPass == ${SCREEN_PASS}) { colour = vec4(0.0, 1.0, 0.0, 0.0); return; }
  int band = 0;
  if (dot(target, target) <= uRange * uRange) {
    float density = densityAt(ray, target);
    for (int i = 0; i < ${MOST_BANDS}; i += 1) if (i < uBandCount && density >= uBands[i]) band = i + 1;
    float over = length(target.xy);
    for (int i = 0; i < ${MOST_CAPS}; i += 1)
      if (i < uCapCount && -target.z > over * uCaps[i].x) band = min(band, int(uCaps[i].y));
  }
  colour = vec4(float(band + 1), 255.0, 0.0, band > 0 ? 1.0 : 0.0) / 255.0;
}
`;
