/** GLSL that reads the wash: the state of a pixel as one number. */
export const readWash = /* glsl */ `
uniform sampler2D uWash;
const int BARE = 0;
const int HIDDEN = 1;
const int SCREENED = 2;
// Seen by a camera that has no light there.
const int DARK = 3;
const int TOO_FEW = 4;
// The coarsest band; finer ones follow.
const int BAND = 5;

int washAt(vec2 pixel) {
  ivec2 most = textureSize(uWash, 0) - 1;
  ivec4 w = ivec4(texelFetch(uWash, clamp(ivec2(floor(pixel)), ivec2(0), most), 0) * 255.0 + 0.5);
  if (w.r > 0) return DARK + w.r - 1;
  return w.g > 0 ? SCREENED : w.b > 0 ? HIDDEN : BARE;
}
`;
