import {
  BufferGeometry,
  DoubleSide,
  Float32BufferAttribute,
  Group,
  LinearFilter,
  LinearMipmapLinearFilter,
  Mesh,
  Texture,
  type IUniform,
} from 'three';
import { subtract, type Vec3 } from '../../base/vector.ts';
import type { LaidPicture } from '../../editor/pictures/siteCorners.ts';
import { FatLines } from '../lines/FatLines.ts';
import { shaderMaterial, type WindowUniforms } from '../shading.ts';
import { readWash } from '../wash/readWash.ts';

/** Gives the picture with these bytes; null where the device has none. */
export type PictureBitmap = (sha: string) => Promise<ImageBitmap | null>;

const vertex = /* glsl */ `
in vec3 position; in vec2 uv;
uniform mat4 modelViewMatrix;
uniform mat4 projectionMatrix;
out vec2 vUv;
void main() {
  vUv = uv;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
}
`;

const fragment = /* glsl */ `
in vec2 vUv;
uniform sampler2D uPicture;
uniform float uStrength;
uniform bool uWashed;
out vec4 colour;
${readWash}
void main() {
  // A band's token is exact: the picture lies under it.
  if (uWashed && washAt(gl_FragCoord.xy) >= BAND) discard;
  vec4 found = texture(uPicture, vUv);
  colour = vec4(found.rgb, found.a * uStrength);
}
`;

interface Laid {
  readonly sha: string;
  readonly mesh: Mesh;
  readonly strength: IUniform<number>;
  texture: Texture | null;
}

/** Pictures of the site on the ground, under what is seen of it, each with a dashed edge. */
export class PictureLayer {
  private readonly root = new Group();
  private readonly edges: FatLines;
  private readonly laid = new Map<string, Laid>();
  private readonly wash: IUniform<Texture>;
  private readonly washed: IUniform<boolean>;
  private readonly bitmap: PictureBitmap;
  private readonly changed: () => void;

  /** @param changed is called when a picture has come */
  constructor(
    group: Group,
    wash: IUniform<Texture>,
    washed: IUniform<boolean>,
    window: WindowUniforms,
    bitmap: PictureBitmap,
    changed: () => void,
  ) {
    [this.wash, this.washed, this.bitmap, this.changed] = [wash, washed, bitmap, changed];
    this.edges = new FatLines({ width: 1, strength: 0.7, dash: [6, 4], depthTest: false, order: 3 }, window);
    this.root.add(this.edges.mesh);
    group.add(this.root);
  }

  tint(ink: string): void {
    this.edges.tint(ink);
  }

  /** From below, nothing lies on the ground. */
  fromBelow(below: boolean): void {
    this.root.visible = !below;
  }

  show(pictures: readonly LaidPicture[], origin: Vec3): void {
    for (const [id, one] of this.laid) {
      const still = pictures.find((picture) => picture.id === id);
      if (still?.sha === one.sha) continue;
      this.root.remove(one.mesh);
      one.mesh.geometry.dispose();
      one.texture?.dispose();
      this.laid.delete(id);
    }
    pictures.forEach(({ id, sha, corners, strength }, i) => {
      const one = this.laid.get(id) ?? this.fetch(id, sha);
      one.strength.value = strength;
      one.mesh.renderOrder = 2 + i / 1000;
      const places = corners.flatMap((corner) => subtract(corner, origin));
      one.mesh.geometry.setAttribute('position', new Float32BufferAttribute(places, 3));
    });
    this.edges.show(
      pictures.flatMap(({ corners }) =>
        corners.flatMap((corner, i) => {
          const next = corners[(i + 1) % corners.length] ?? corner;
          return [...subtract(corner, origin), ...subtract(next, origin)];
        }),
      ),
    );
  }

  private fetch(id: string, sha: string): Laid {
    const picture: IUniform<Texture | null> = { value: null };
    const strength = { value: 1 };
    const material = shaderMaterial(
      vertex,
      fragment,
      { uPicture: picture, uStrength: strength, uWash: this.wash, uWashed: this.washed },
      { side: DoubleSide, transparent: true, depthTest: false, depthWrite: false },
    );
    const geometry = new BufferGeometry();
    geometry.setAttribute('uv', new Float32BufferAttribute([0, 0, 1, 0, 1, 1, 0, 1], 2));
    geometry.setIndex([0, 1, 2, 0, 2, 3]);
    const mesh = new Mesh(geometry, material);
    mesh.frustumCulled = false;
    mesh.visible = false;
    this.root.add(mesh);
    const laid: Laid = { sha, mesh, strength, texture: null };
    this.laid.set(id, laid);
    void this.bitmap(sha).then((bitmap) => {
      // It may have been taken away, or another laid in its place, meanwhile.
      if (!bitmap || this.laid.get(id) !== laid) return;
      laid.texture = textureOf(bitmap);
      picture.value = laid.texture;
      mesh.visible = true;
      this.changed();
    });
    return laid;
  }
}

function textureOf(bitmap: ImageBitmap): Texture {
  const texture = new Texture(bitmap);
  // The first row of a bitmap is its top; corners are counted from there as well.
  texture.flipY = false;
  texture.minFilter = LinearMipmapLinearFilter;
  texture.magFilter = LinearFilter;
  texture.anisotropy = 4;
  texture.needsUpdate = true;
  return texture;
}
