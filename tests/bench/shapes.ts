import type { Vec3 } from '../../src/base/vector.ts';
import type { Solid } from '../../src/model/solid.ts';

const solid = (id: string, positions: readonly number[], triangles: readonly number[]): Solid => ({
  id,
  structure: id,
  name: id,
  passage: 'solid',
  positions: Float64Array.from(positions),
  triangles: Uint32Array.from(triangles),
});

/** A pitched roof over a rectangle: ridge along x, gables upright. Closed, 8 triangles. */
export function gableSolid(id: string, [x, y, z]: Vec3, [width, depth, rise]: Vec3): Solid {
  const [w, d] = [width / 2, depth / 2];
  const positions = [
    [x - w, y - d, z],
    [x + w, y - d, z],
    [x + w, y + d, z],
    [x - w, y + d, z],
    [x - w, y, z + rise],
    [x + w, y, z + rise],
  ].flat();
  const underside = [3, 2, 1, 3, 1, 0];
  const slopes = [0, 1, 5, 0, 5, 4, 2, 3, 4, 2, 4, 5];
  const gables = [1, 2, 5, 3, 0, 4];
  return solid(id, positions, [...underside, ...slopes, ...gables]);
}

/**
 * A ball of meridians and bands from pole to pole: 2 · meridians · (bands − 1) triangles, closed.
 * @param bump greatest share by which its radius rises and falls
 */
export function ballSolid(
  id: string,
  [x, y, z]: Vec3,
  radius: number,
  { meridians, bands, bump }: { readonly meridians: number; readonly bands: number; readonly bump: number },
): Solid {
  const positions = [x, y, z - radius, x, y, z + radius];
  for (let band = 1; band < bands; band += 1)
    for (let meridian = 0; meridian < meridians; meridian += 1) {
      const rise = -Math.PI / 2 + (Math.PI * band) / bands;
      const turn = (2 * Math.PI * meridian) / meridians;
      const r = radius * (1 + bump * Math.sin(7 * turn) * Math.sin(9 * rise) * Math.cos(rise));
      positions.push(
        x + r * Math.cos(rise) * Math.cos(turn),
        y + r * Math.cos(rise) * Math.sin(turn),
        z + r * Math.sin(rise),
      );
    }
  const at = (band: number, meridian: number) => 2 + (band - 1) * meridians + (meridian % meridians);
  const triangles: number[] = [];
  for (let meridian = 0; meridian < meridians; meridian += 1) {
    triangles.push(0, at(1, meridian + 1), at(1, meridian));
    triangles.push(1, at(bands - 1, meridian), at(bands - 1, meridian + 1));
    for (let band = 1; band < bands - 1; band += 1) {
      const [a, b] = [at(band, meridian), at(band, meridian + 1)];
      const [c, d] = [at(band + 1, meridian + 1), at(band + 1, meridian)];
      triangles.push(a, b, c, a, c, d);
    }
  }
  return solid(id, positions, triangles);
}
