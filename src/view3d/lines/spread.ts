/**
 * GLSL that spreads a segment to a quad of a given width on the screen. Trims it at the near plane and writes positions
 * with w = 1, so that what is interpolated runs evenly over the screen.
 */
export const spread = /* glsl */ `
in vec2 corner;
uniform mat4 modelViewMatrix;
uniform mat4 projectionMatrix;
uniform vec2 uViewport;
uniform float uRatio;
uniform float uBias;
out vec2 vPlace;
flat out float vLength;
flat out vec2 vNormal;

void hide() { gl_Position = vec4(2.0, 2.0, 2.0, 1.0); }

// The half width is in device pixels; the bias draws a line before the faces that it lies on.
void spread(vec3 from, vec3 to, float halfWidth, float bias) {
  vec4 a = modelViewMatrix * vec4(from, 1.0);
  vec4 b = modelViewMatrix * vec4(to, 1.0);
  float near = projectionMatrix[3][2] / (projectionMatrix[2][2] - 1.0);
  if (a.z > -near && b.z > -near) { hide(); return; }
  if (a.z > -near) a = mix(b, a, (b.z + near) / (b.z - a.z));
  else if (b.z > -near) b = mix(a, b, (a.z + near) / (a.z - b.z));
  a = projectionMatrix * a;
  b = projectionMatrix * b;
  vec3 p = a.xyz / a.w;
  vec3 q = b.xyz / b.w;
  vec2 run = (q.xy - p.xy) * 0.5 * uViewport;
  vLength = length(run);
  vec2 along = vLength > 1e-4 ? run / vLength : vec2(1.0, 0.0);
  vNormal = vec2(-along.y, along.x);
  float pad = halfWidth + 1.0;
  float end = corner.y * 2.0 - 1.0;
  vPlace = vec2(corner.y * vLength + end * pad, corner.x * pad);
  vec3 at = mix(p, q, corner.y);
  vec2 shift = along * end * pad + vNormal * corner.x * pad;
  gl_Position = vec4(at.xy + shift * 2.0 / uViewport, at.z - bias * uBias, 1.0);
}
`;

/** GLSL for the fragment: how much of a pixel the line covers. */
export const covered = /* glsl */ `
in vec2 vPlace;
flat in float vLength;
flat in vec2 vNormal;
float covered(float halfWidth) {
  float off = length(vec2(vPlace.x - clamp(vPlace.x, 0.0, vLength), vPlace.y));
  return clamp(halfWidth + 0.5 - off, 0.0, 1.0);
}
`;
