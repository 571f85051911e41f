/** The most faces that hold what a lens sees: the sides of a cube. */
export const MOST_FACES = 6;

export const warpVertex = /* glsl */ `
in vec2 place;
void main() { gl_Position = vec4(place, 0.0, 1.0); }
`;

/*
 * Reads the picture of a bent lens off flat ones. What a pixel looks at is the exact inverse of the lens law, as
 * optics/lens.ts and optics/projection.ts have it.
 */
export const warpFragment = /* glsl */ `
uniform sampler2D uFaces;
uniform vec2 uSize;
uniform float uK;
// Focal length in pixels of the window, across and down; half the window.
uniform vec2 uFocal;
uniform vec2 uHalf;
uniform vec3 uBeyond;
uniform int uCount;
// Directions of each face along those of the lens: right, up, ahead.
uniform vec3 uRight[${MOST_FACES}];
uniform vec3 uUp[${MOST_FACES}];
uniform vec3 uAhead[${MOST_FACES}];
// Least slopes, and how far both reach.
uniform vec4 uSlopes[${MOST_FACES}];
// Where a face stands among all, px.
uniform vec4 uPart[${MOST_FACES}];
out vec4 colour;

void main() {
  vec2 place = (gl_FragCoord.xy - uHalf) / uFocal;
  float g = length(place);
  float bent = uK * g;
  if (uK < 0.0 && -bent > 1.0) { colour = vec4(uBeyond, 1.0); return; }
  float theta = uK > 0.0 ? atan(bent) / uK : uK < 0.0 ? asin(-bent) / -uK : g;
  if (theta > 3.14159265) { colour = vec4(uBeyond, 1.0); return; }
  float side = g > 1e-7 ? sin(theta) / g : 1.0;
  vec3 way = vec3(place * side, cos(theta));
  int best = 0;
  float most = -2.0;
  for (int i = 0; i < ${MOST_FACES}; i += 1) {
    if (i >= uCount) break;
    float ahead = dot(uAhead[i], way);
    if (ahead > most) { most = ahead; best = i; }
  }
  vec2 slopes = vec2(dot(uRight[best], way), dot(uUp[best], way)) / most;
  vec2 at = uPart[best].xy + (slopes - uSlopes[best].xy) / uSlopes[best].zw * uPart[best].zw;
  colour = vec4(texture(uFaces, at / uSize).rgb, 1.0);
}
`;
