import {
  BufferGeometry,
  DoubleSide,
  Float32BufferAttribute,
  FrontSide,
  Mesh,
  NoBlending,
  Vector3,
  type IUniform,
} from 'three';
import type { Vec3 } from '../../base/vector.ts';
import type { Ink } from '../../draw/ink.ts';
import type { Solid } from '../../model/solid.ts';
import { inkVector, shaderMaterial } from '../shading.ts';
import { faceNormals } from './edges.ts';
import { onceEachFrom } from './onceEach.ts';

const vertex = /* glsl */ `
in vec3 position; in vec3 normal;
uniform mat4 modelViewMatrix;
uniform mat4 projectionMatrix;
out vec3 vAt;
flat out vec3 vNormal;
void main() {
  vAt = position;
  vNormal = normal;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
}
`;

// Tone from the normal alone: top, south, east and north weighed by the squares of its parts, west as east.
const tone = /* glsl */ `
in vec3 vAt;
flat in vec3 vNormal;
uniform vec3 uTop; uniform vec3 uSouth; uniform vec3 uEast; uniform vec3 uNorth;
vec3 tone() {
  vec3 part = vNormal * vNormal;
  vec3 lid = vNormal.z > 0.0 ? uTop : uNorth * 0.94;
  vec3 colour = part.z * lid + part.x * uEast + part.y * (vNormal.y < 0.0 ? uSouth : uNorth);
  float wall = 1.0 - abs(vNormal.z);
  return colour * (1.0 - 0.07 * wall * (1.0 - clamp(vAt.z / 1.2, 0.0, 1.0)));
}
`;

const solidFragment = /* glsl */ `
${tone}
out vec4 colour;
void main() { colour = vec4(tone(), 1.0); }
`;

// A mesh one sees through: a veil of its tone under a lattice of lines, both anchored to the face.
const screenFragment = /* glsl */ `
${tone}
uniform vec3 uInk;
uniform float uPitch;
uniform float uVeil;
out vec4 colour;
float lines(float at) {
  float cell = at / uPitch;
  float wide = fwidth(cell);
  float off = abs(fract(cell) - 0.5);
  return (1.0 - smoothstep(0.06, 0.06 + wide, off)) * clamp(1.4 - wide, 0.0, 1.0) + clamp(wide - 0.4, 0.0, 1.0) * 0.16;
}
void main() {
  vec3 n = abs(vNormal);
  vec2 at = n.z > 0.7 ? vAt.xy : vec2(dot(vAt.xy, normalize(vec2(-vNormal.y, vNormal.x))), vAt.z);
  float drawn = uPitch > 0.0 ? max(lines(at.x + at.y), lines(at.x - at.y)) * 0.5 : 0.0;
  colour = vec4(mix(tone(), uInk, drawn / (drawn + uVeil * (1.0 - drawn))), drawn + uVeil * (1.0 - drawn));
}
`;

export interface CardUniforms {
  readonly uTop: IUniform<Vector3>;
  readonly uSouth: IUniform<Vector3>;
  readonly uEast: IUniform<Vector3>;
  readonly uNorth: IUniform<Vector3>;
  readonly uInk: IUniform<Vector3>;
  /** Of the lattice on screens, m. */
  readonly uPitch: IUniform<number>;
}

export const cardUniforms = (): CardUniforms => ({
  uTop: { value: new Vector3() },
  uSouth: { value: new Vector3() },
  uEast: { value: new Vector3() },
  uNorth: { value: new Vector3() },
  uInk: { value: new Vector3() },
  uPitch: { value: 0.12 },
});

export function tint(uniforms: CardUniforms, colours: Ink): void {
  uniforms.uTop.value = inkVector(colours.cardTop);
  uniforms.uSouth.value = inkVector(colours.cardSouth);
  uniforms.uEast.value = inkVector(colours.cardEast);
  uniforms.uNorth.value = inkVector(colours.cardNorth);
  uniforms.uInk.value = inkVector(colours.ink);
}

/** Solids as card: faces in even light, without a cast shadow. */
export function solidMesh(uniforms: CardUniforms): Mesh {
  const material = shaderMaterial(
    vertex,
    solidFragment,
    { ...uniforms },
    {
      side: FrontSide,
      // Everything is drawn in the order that it is given, so opaque things count as transparent ones that do not blend.
      transparent: true,
      blending: NoBlending,
      polygonOffset: true,
      polygonOffsetFactor: 3,
      polygonOffsetUnits: 4,
    },
  );
  return drawn(new Mesh(new BufferGeometry(), material));
}

/** Screens and glass, which one sees through. `veil` is the share of card between the lines. */
export function screenMesh(uniforms: CardUniforms, veil: number, lattice: boolean): Mesh {
  const material = shaderMaterial(
    vertex,
    screenFragment,
    { ...uniforms, uVeil: { value: veil }, ...(lattice ? {} : { uPitch: { value: 0 } }) },
    {
      side: lattice ? FrontSide : DoubleSide,
      transparent: true,
      depthWrite: false,
      polygonOffset: true,
      polygonOffsetFactor: 3,
      polygonOffsetUnits: 2,
    },
  );
  return drawn(new Mesh(new BufferGeometry(), material));
}

function drawn(mesh: Mesh): Mesh {
  mesh.frustumCulled = false;
  mesh.visible = false;
  return mesh;
}

/** Each triangle's corners with its normal, near the origin first and then in single precision. */
const cornersOf = onceEachFrom((solid: Solid, origin) => {
  const places = new Float32Array(solid.triangles.length * 3);
  const faces = new Float32Array(places.length);
  const normals = faceNormals(solid);
  solid.triangles.forEach((corner, i) => {
    for (const axis of [0, 1, 2] as const) {
      places[i * 3 + axis] = (solid.positions[corner * 3 + axis] ?? 0) - origin[axis];
      faces[i * 3 + axis] = normals[i - (i % 3) + axis] ?? 0;
    }
  });
  return { places, faces };
});

/** Puts solids into a mesh, relative to an origin near them, each triangle with its own normal. */
export function fill(mesh: Mesh, solids: readonly Solid[], origin: Vec3): void {
  const corners = solids.reduce((sum, { triangles }) => sum + triangles.length, 0);
  const positions = new Float32Array(corners * 3);
  const normals = new Float32Array(corners * 3);
  let at = 0;
  for (const solid of solids) {
    const { places, faces } = cornersOf(solid, origin);
    positions.set(places, at);
    normals.set(faces, at);
    at += places.length;
  }
  mesh.geometry.dispose();
  mesh.geometry = new BufferGeometry();
  mesh.geometry.setAttribute('position', new Float32BufferAttribute(positions, 3));
  mesh.geometry.setAttribute('normal', new Float32BufferAttribute(normals, 3));
  mesh.visible = corners > 0;
}
