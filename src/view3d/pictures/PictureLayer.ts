import {
  BufferGeometry,
  DoubleSide,
  Float32BufferAttribute,
  Group,
  Material,
  Mesh,
  Uint32BufferAttribute,
  type IUniform,
  type Texture,
} from 'three';
import { subtract, type Vec3 } from '../../base/vector.ts';
import type { LaidPicture } from '../../editor/pictures/siteCorners.ts';
import { BOARD_EDGE } from '../ground/board.ts';
import type { TerrainFaces } from '../ground/terrainFaces.ts';
import { drapedRing } from '../ground/terrainLines.ts';
import { FatLines } from '../lines/FatLines.ts';
import { shaderMaterial, type WindowUniforms } from '../shading.ts';
import { textureOf, type PictureBitmap } from './pictureTexture.ts';
import { readWash } from '../wash/readWash.ts';
import type { Surface } from '../wash/Surface.ts';

const vertex = /* glsl */ `
in vec3 position; in vec2 uv;
uniform mat4 modelViewMatrix;
uniform mat4 projectionMatrix;
out vec2 vUv;
out vec2 vAt;
void main() {
  vUv = uv;
  vAt = position.xy;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
}
`;

const fragment = /* glsl */ `
in vec2 vUv;
in vec2 vAt;
uniform int uAsked;
uniform sampler2D uCells;
uniform vec4 uCellBox;
uniform sampler2D uPicture;
uniform float uStrength;
uniform bool uWashed;
out vec4 colour;
${readWash}
void main() {
  // Over uneven ground it is laid out with all of it.
  if (any(lessThan(vUv, vec2(0.0))) || any(greaterThan(vUv, vec2(1.0)))) discard;
  // A band's token is exact: the picture lies under it.
  vec2 cell = (vAt - uCellBox.xy) / uCellBox.zw;
  bool onBoard = all(greaterThan(cell, vec2(0.0))) && all(lessThan(cell, vec2(1.0)));
  int painted = uAsked != 4 ? washAt(gl_FragCoord.xy) : onBoard ? int(texture(uCells, cell).r * 255.0 + 0.5) : BARE;
  if (uWashed && painted >= BAND) discard;
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
  private readonly ground: Surface['uniforms'];
  private readonly over: FatLines;
  private readonly bitmap: PictureBitmap;
  private readonly changed: () => void;

  /** @param changed is called when a picture has come */
  constructor(
    group: Group,
    wash: IUniform<Texture>,
    ground: Surface['uniforms'],
    window: WindowUniforms,
    bitmap: PictureBitmap,
    changed: () => void,
  ) {
    [this.wash, this.ground, this.bitmap, this.changed] = [wash, ground, bitmap, changed];
    this.edges = new FatLines({ width: 1, strength: 0.7, dash: [6, 4], depthTest: false, order: 3 }, window);
    this.over = new FatLines({ width: 1, strength: 0.7, dash: [6, 4], order: 3 }, window);
    this.root.add(this.edges.mesh, this.over.mesh);
    group.add(this.root);
  }

  tint(ink: string): void {
    this.edges.tint(ink);
    this.over.tint(ink);
  }

  /** From below, nothing lies on the ground. */
  fromBelow(below: boolean): void {
    this.root.visible = !below;
  }

  /** @param uneven ground that they are laid over; null where it is flat */
  show(pictures: readonly LaidPicture[], uneven: TerrainFaces | null, origin: Vec3): void {
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
      const { material, geometry } = one.mesh;
      if (material instanceof Material) material.depthTest = uneven !== null;
      const { places, uv, index } = uneven ? overGround(corners, uneven, origin) : onLevel(corners, origin);
      geometry.setAttribute('position', new Float32BufferAttribute(places, 3));
      geometry.setAttribute('uv', new Float32BufferAttribute(uv, 2));
      geometry.setIndex(new Uint32BufferAttribute(Uint32Array.from(index), 1));
    });
    const near = (value: number, i: number): number => value - (origin[i % 3] ?? 0);
    this.over.show(
      uneven
        ? pictures
            .flatMap(({ corners }) => [...drapedRing(uneven, corners), ...ringAt(corners, footOf(uneven))])
            .map(near)
        : [],
    );
    this.edges.show(
      (uneven ? [] : pictures).flatMap(({ corners }) =>
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
      {
        uPicture: picture,
        uStrength: strength,
        uWash: this.wash,
        uWashed: this.ground.uWashed,
        uAsked: this.ground.uAsked,
        uCells: this.ground.uCells,
        uCellBox: this.ground.uCellBox,
      },
      {
        side: DoubleSide,
        transparent: true,
        depthTest: false,
        depthWrite: false,
        // Before the ground that it lies on, which is pushed back by more.
        polygonOffset: true,
        polygonOffsetFactor: 1,
        polygonOffsetUnits: 2,
      },
    );
    const mesh = new Mesh(new BufferGeometry(), material);
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

interface Sheet {
  readonly places: readonly number[];
  readonly uv: readonly number[];
  readonly index: ArrayLike<number>;
}

/** A picture's own four corners. */
const WHOLE = { uv: [0, 0, 1, 0, 1, 1, 0, 1], index: [0, 1, 2, 0, 2, 3] } as const;

const onLevel = (corners: LaidPicture['corners'], origin: Vec3): Sheet => ({
  places: corners.flatMap((corner) => subtract(corner, origin)),
  ...WHOLE,
});

/**
 * The whole ground, with where each corner of it lies in the picture, a parallelogram by its upper left corner and two
 * sides; and the picture on the level of the board's foot, to be seen where it reaches past the board.
 */
function overGround(corners: LaidPicture['corners'], ground: TerrainFaces, origin: Vec3): Sheet {
  const [first, right, , down] = corners;
  const { positions: p, triangles } = ground;
  const [across, along] = [subtract(right, first), subtract(down, first)];
  const whole = across[0] * along[1] - across[1] * along[0];
  const [places, uv]: [number[], number[]] = [[], []];
  for (let i = 0; i < p.length; i += 3) {
    const [x, y] = [(p[i] ?? 0) - first[0], (p[i + 1] ?? 0) - first[1]];
    places.push((p[i] ?? 0) - origin[0], (p[i + 1] ?? 0) - origin[1], (p[i + 2] ?? 0) - origin[2]);
    uv.push((x * along[1] - y * along[0]) / whole, (across[0] * y - across[1] * x) / whole);
  }
  const below = places.length / 3;
  const level = footOf(ground);
  for (const [x, y] of corners) places.push(x - origin[0], y - origin[1], level - origin[2]);
  uv.push(...WHOLE.uv);
  const index = new Uint32Array(triangles.length + WHOLE.index.length);
  index.set(triangles);
  index.set(
    WHOLE.index.map((corner) => below + corner),
    triangles.length,
  );
  return { places, uv, index };
}

/** The level of the foot of the board under uneven ground. */
const footOf = ({ least }: TerrainFaces): number => least - BOARD_EDGE;

const ringAt = (corners: LaidPicture['corners'], z: number): number[] =>
  corners.flatMap(([x, y], i) => {
    const [nx, ny] = corners[(i + 1) % corners.length] ?? [x, y];
    return [x, y, z, nx, ny, z];
  });
