import {
  DoubleSide,
  Float32BufferAttribute,
  InstancedBufferAttribute,
  InstancedBufferGeometry,
  Mesh,
  Sphere,
  type IUniform,
} from 'three';
import { shaderMaterial } from '../shading.ts';

/** A quad drawn once for each entry of some arrays; the room for them grows by halves as it is needed. */
export class Quads {
  readonly mesh: Mesh;
  private readonly sizes: Readonly<Record<string, number>>;
  private room = 0;
  private attributes: Readonly<Record<string, InstancedBufferAttribute>> = {};

  /** @param sizes numbers an entry, by attribute */
  constructor(
    sizes: Readonly<Record<string, number>>,
    vertex: string,
    fragment: string,
    uniforms: Record<string, IUniform>,
    order: number,
    depthTest: boolean,
  ) {
    this.sizes = sizes;
    const material = shaderMaterial(vertex, fragment, uniforms, {
      side: DoubleSide,
      transparent: true,
      depthWrite: false,
      depthTest,
    });
    this.mesh = new Mesh(this.make(4), material);
    this.mesh.frustumCulled = false;
    this.mesh.renderOrder = order;
    this.mesh.visible = false;
  }

  /** Shows the first `count` entries of the given arrays. */
  show(count: number, arrays: Readonly<Record<string, Float32Array>>): void {
    this.mesh.visible = count > 0;
    if (count === 0) return;
    if (count > this.room) {
      // A card's buffer keeps its size, so more room is another geometry.
      this.mesh.geometry.dispose();
      this.mesh.geometry = this.make(Math.ceil(count * 1.5));
    }
    for (const [name, size] of Object.entries(this.sizes)) {
      const [held, source] = [this.attributes[name], arrays[name]];
      if (!held || !source) throw new Error(`lines need ${name}`);
      held.array.set(source.subarray(0, count * size));
      held.clearUpdateRanges();
      held.addUpdateRange(0, count * size);
      held.needsUpdate = true;
    }
    const { geometry } = this.mesh;
    if (geometry instanceof InstancedBufferGeometry) geometry.instanceCount = count;
  }

  private make(room: number): InstancedBufferGeometry {
    this.room = room;
    const geometry = new InstancedBufferGeometry();
    geometry.setAttribute('corner', new Float32BufferAttribute([-1, 0, 1, 0, -1, 1, 1, 1], 2));
    geometry.setIndex([0, 1, 2, 2, 1, 3]);
    geometry.boundingSphere = new Sphere(undefined, Infinity);
    this.attributes = Object.fromEntries(
      Object.entries(this.sizes).map(([name, size]) => [
        name,
        new InstancedBufferAttribute(new Float32Array(room * size), size),
      ]),
    );
    for (const [name, attribute] of Object.entries(this.attributes)) geometry.setAttribute(name, attribute);
    return geometry;
  }
}
