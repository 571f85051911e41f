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

/** Red: 0 not seen, 1 seen without light, 2 with too few pixels, 3 and up the bands; green: seen through screens at most; blue: in frame; alpha: count. */
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
// Cosine and sine of the greatest angle from the side, one a cap.
uniform vec2 uSides[${MOST_CAPS}];
// Which way faces look: 0 anywhere, 1 along a direction, 2 to a place given from the lens.
uniform int uLooks;
uniform vec2 uLook;
// 0 by day, 1 at night; range and least cosine of the camera's own infrared, range 0 where it has none.
uniform int uNight;
uniform vec2 uInfrared;
out vec4 colour;
${lens}
// coverage/rule.ts: |l||d| sin(limit -+ angle), l where the face looks and d from lens to face over ground.
bool fromTheSide(vec2 d, vec2 side) {
  vec2 l = uLooks == 1 ? uLook : uLook - d;
  float along = -dot(l, d) * side.y;
  float across = (l.x * d.y - l.y * d.x) * side.x;
  return (side.x >= 0.0 ? min(along - across, along + across) : max(along - across, along + across)) < 0.0;
}

bool isDark(vec3 target) {
  if (uNight == 0) return false;
  float far = length(target);
  return far > uInfrared.x || dot(uForward, target) < uInfrared.y * far;
}

void main() {
  vec3 target = vPlace.x * uU + vPlace.y * uV - uHeight * uNormal;
  Ray ray = rayTo(target);
  if (!uFramed && !inFrame(ray)) discard;
  if (uPass == ${FRAME_PASS}) { colour = vec4(0.0, 0.0, 1.0, 0.0); return; }
  if (uPass == ${SCREEN_PASS}) { colour = vec4(0.0, 1.0, 0.0, 0.0); return; }
  if (isDark(target)) { colour = vec4(1.0, 255.0, 0.0, 0.0) / 255.0; return; }
  int band = 0;
  if (dot(target, target) <= uRange * uRange) {
    float density = densityAt(ray, target);
    for (int i = 0; i < ${MOST_BANDS}; i += 1) if (i < uBandCount && density >= uBands[i]) band = i + 1;
    float over = length(target.xy);
    for (int i = 0; i < ${MOST_CAPS}; i += 1)
      if (i < uCapCount && (-target.z > over * uCaps[i].x || (uLooks > 0 && fromTheSide(target.xy, uSides[i]))))
        band = min(band, int(uCaps[i].y));
  }
  colour = vec4(float(band + 2), 255.0, 0.0, band > 0 ? 1.0 : 0.0) / 255.0;
}
`;
