import { Float32BufferAttribute, InstancedBufferAttribute, InstancedBufferGeometry, Sphere } from 'three';

/** A quad drawn once for each entry of some per-instance attributes, whose room grows by halves as it is needed. */
export class Quads {
  readonly geometry = new InstancedBufferGeometry();
  private readonly sizes: Readonly<Record<string, number>>;

  /** @param sizes numbers an instance, by attribute */
  constructor(sizes: Readonly<Record<string, number>>) {
    this.sizes = sizes;
    this.geometry.setAttribute('corner', new Float32BufferAttribute([-1, 0, 1, 0, -1, 1, 1, 1], 2));
    this.geometry.setIndex([0, 1, 2, 2, 1, 3]);
    this.geometry.boundingSphere = new Sphere(undefined, Infinity);
    this.set(0, {});
  }

  /** Shows the first `count` entries of the given arrays. */
  set(count: number, arrays: Readonly<Record<string, Float32Array>>): void {
    for (const [name, size] of Object.entries(this.sizes)) {
      const source = arrays[name];
      const held = this.geometry.getAttribute(name) as InstancedBufferAttribute | undefined;
      if (!held || held.array.length < count * size) {
        const room = new Float32Array(Math.max(4, Math.ceil(count * 1.5)) * size);
        if (source) room.set(source.subarray(0, count * size));
        this.geometry.setAttribute(name, new InstancedBufferAttribute(room, size));
        // A buffer keeps its size on the card, so a larger one needs the geometry's bindings made anew.
        if (held) this.geometry.dispose();
      } else if (source) {
        held.array.set(source.subarray(0, count * size));
        held.clearUpdateRanges();
        held.addUpdateRange(0, count * size);
        held.needsUpdate = true;
      }
    }
    this.geometry.instanceCount = count;
  }

  dispose(): void {
    this.geometry.dispose();
  }
}
