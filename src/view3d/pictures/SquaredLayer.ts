import {
  BufferGeometry,
  Float32BufferAttribute,
  FrontSide,
  Group,
  Matrix3,
  Mesh,
  ShapeUtils,
  Vector2,
  type IUniform,
  type Texture,
} from 'three';
import { add, scale, subtract, type Vec3 } from '../../base/vector.ts';
import type { SquaredPicture } from '../../editor/pictures/wallPictures.ts';
import { pointOn } from '../planeFrame.ts';
import { shaderMaterial } from '../shading.ts';
import { textureOf, type PictureBitmap } from './pictureTexture.ts';

/** How far before its wall a photo is drawn, m: recesses are behind it, frames and cameras before it. */
const LIFT = 0.01;

const vertex = /* glsl */ `
in vec3 position; in vec2 at;
uniform mat4 modelViewMatrix;
uniform mat4 projectionMatrix;
out vec2 vAt;
void main() {
  vAt = at;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
}
`;

// The map is projective, so it is worked out for each pixel: between corners it is not straight.
const fragment = /* glsl */ `
in vec2 vAt;
uniform sampler2D uPicture;
uniform vec2 uSize;
uniform mat3 uMap;
uniform float uStrength;
out vec4 colour;
void main() {
  vec3 found = uMap * vec3(vAt, 1.0);
  vec2 at = found.xy / found.z / uSize;
  // Beyond the horizon of the photo, or beside it.
  if (found.z <= 0.0 || any(lessThan(at, vec2(0.0))) || any(greaterThan(at, vec2(1.0)))) discard;
  vec4 seen = texture(uPicture, at);
  colour = vec4(seen.rgb, seen.a * uStrength);
}
`;

interface Squared {
  readonly sha: string;
  readonly mesh: Mesh;
  readonly size: Vector2;
  readonly map: Matrix3;
  readonly strength: IUniform<number>;
  texture: Texture | null;
}

/** Photos squared onto walls, each on its wall as far as it reaches. */
export class SquaredLayer {
  private readonly root = new Group();
  private readonly squared = new Map<string, Squared>();
  private readonly bitmap: PictureBitmap;
  private readonly changed: () => void;

  /** @param changed is called when a photo has come */
  constructor(group: Group, bitmap: PictureBitmap, changed: () => void) {
    [this.bitmap, this.changed] = [bitmap, changed];
    group.add(this.root);
  }

  show(pictures: readonly SquaredPicture[], origin: Vec3): void {
    for (const [id, one] of this.squared) {
      if (pictures.find((picture) => picture.id === id)?.sha === one.sha) continue;
      this.root.remove(one.mesh);
      one.mesh.geometry.dispose();
      one.texture?.dispose();
      this.squared.delete(id);
    }
    pictures.forEach((picture, i) => {
      const one = this.squared.get(picture.id) ?? this.fetch(picture);
      one.strength.value = picture.strength;
      one.size.set(...picture.size);
      one.map.set(...picture.map);
      // After the faces of solids and their panes, before edges.
      one.mesh.renderOrder = 12 + i / 1000;
      lay(one.mesh, picture, origin);
    });
  }

  private fetch({ id, sha }: SquaredPicture): Squared {
    const picture: IUniform<Texture | null> = { value: null };
    const strength = { value: 1 };
    const [size, map] = [new Vector2(1, 1), new Matrix3()];
    const material = shaderMaterial(
      vertex,
      fragment,
      { uPicture: picture, uStrength: strength, uSize: { value: size }, uMap: { value: map } },
      { side: FrontSide, transparent: true, depthWrite: false },
    );
    const mesh = new Mesh(new BufferGeometry(), material);
    mesh.frustumCulled = false;
    mesh.visible = false;
    this.root.add(mesh);
    const squared: Squared = { sha, mesh, size, map, strength, texture: null };
    this.squared.set(id, squared);
    void this.bitmap(sha).then((bitmap) => {
      // It may have been taken away, or another put in its place, meanwhile.
      if (!bitmap || this.squared.get(id) !== squared) return;
      squared.texture = textureOf(bitmap);
      picture.value = squared.texture;
      mesh.visible = true;
      this.changed();
    });
    return squared;
  }
}

function lay(mesh: Mesh, { plane, rings }: SquaredPicture, origin: Vec3): void {
  const [position, at, index]: [number[], number[], number[]] = [[], [], []];
  const lift = scale(plane.normal, LIFT);
  for (const ring of rings) {
    const first = at.length / 2;
    for (const [a, b] of ring) {
      position.push(...subtract(add(pointOn(plane, a, b), lift), origin));
      at.push(a, b);
    }
    const contour = ring.map(([a, b]) => new Vector2(a, b));
    for (const face of ShapeUtils.triangulateShape(contour, []))
      index.push(...face.map((corner) => first + corner));
  }
  mesh.geometry.dispose();
  mesh.geometry = new BufferGeometry();
  mesh.geometry.setAttribute('position', new Float32BufferAttribute(position, 3));
  mesh.geometry.setAttribute('at', new Float32BufferAttribute(at, 2));
  mesh.geometry.setIndex(index);
}
