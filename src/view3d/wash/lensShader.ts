/** The most bands and caps that the shader holds; editions have at most seven levels. */
export const MOST_BANDS = 8;
export const MOST_CAPS = 4;

/*
 * What optics/lens.ts, optics/projection.ts and optics/density.ts say, at a point `target` m from the lens in the site
 * frame. `k` = 1 goes without angles, because sine and tangent of the graphics card are not exact.
 */
export const lens = /* glsl */ `
uniform vec3 uRight; uniform vec3 uDown; uniform vec3 uForward;
uniform float uK;
// Focal length in pixels, across and down; half the frame in pixels.
uniform vec2 uFocal;
uniform vec2 uHalfFrame;

struct Ray { float x; float y; float z; float off; float round; float slope; bool hasImage; };

Ray rayTo(vec3 target) {
  float x = dot(uRight, target);
  float y = dot(uDown, target);
  float z = dot(uForward, target);
  float off = length(vec2(x, y));
  float far2 = off * off + z * z;
  if (uK == 1.0) return Ray(x, y, z, off, 1.0 / z, far2 / (z * z), z > 0.0);
  float theta = atan(off, z);
  float most = uK == 0.0 ? 3.14159265 : min(3.14159265, 1.57079633 / abs(uK));
  float bent = uK * theta;
  float law = uK > 0.0 ? tan(bent) / uK : uK < 0.0 ? sin(bent) / uK : theta;
  float slope = uK > 0.0 ? 1.0 / (cos(bent) * cos(bent)) : uK < 0.0 ? cos(bent) : 1.0;
  float round = off > 1e-6 * abs(z) ? law / off : 1.0 / z;
  return Ray(x, y, z, off, round, slope, theta < most && (off > 0.0 || z > 0.0));
}

bool inFrame(Ray ray) {
  vec2 at = abs(uFocal * ray.round * vec2(ray.x, ray.y));
  return ray.hasImage && at.x <= uHalfFrame.x && at.y <= uHalfFrame.y;
}

// Pixels per metre along the horizontal square to the bearing.
float densityAt(Ray ray, vec3 target) {
  float over = length(target.xy);
  vec3 m = over > 1e-6 ? vec3(target.y, -target.x, 0.0) / over : vec3(1.0, 0.0, 0.0);
  vec3 d = vec3(dot(uRight, m), dot(uDown, m), dot(uForward, m));
  vec2 e = ray.off > 0.0 ? vec2(ray.x, ray.y) / ray.off : vec2(1.0, 0.0);
  float far2 = ray.off * ray.off + ray.z * ray.z;
  float outwards = ray.slope * (ray.z * dot(e, d.xy) - ray.off * d.z) / far2;
  float around = ray.round * (e.x * d.y - e.y * d.x);
  return length(uFocal * vec2(outwards * e.x - around * e.y, outwards * e.y + around * e.x));
}
`;
