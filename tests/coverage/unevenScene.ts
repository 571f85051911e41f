import type { Solid } from '../../src/model/solid.ts';
import { solidsOf } from '../../src/model/solids.ts';
import type { Terrain, TerrainBoard } from '../../src/model/terrain.ts';
import { terrainOfGrid } from '../../src/model/terrainGrid.ts';
import { terrainOfSpots } from '../../src/model/terrainSpots.ts';
import type { Camera } from '../../src/optics/camera.ts';
import { horizontalPlane } from '../../src/base/plane.ts';
import type { Chance } from '../house/seeded.ts';
import { barrierWith } from '../model/sampleStructures.ts';
import { LAWS, cameraWith } from '../optics/sampleCamera.ts';
import { boxSolid } from '../sight/boxSolid.ts';

/** Hills of a few metres on a board, from spots or from a grid. */
export function hills(chance: Chance, board: TerrainBoard, relief: number): Terrain {
  const waves = Array.from({ length: 5 }, () => ({
    x: chance.between(-0.4, 0.4),
    y: chance.between(-0.4, 0.4),
    at: chance.between(0, 6),
    high: chance.between(0.1, 0.4) * relief,
  }));
  const height = (x: number, y: number) =>
    waves.reduce((sum, wave) => sum + wave.high * Math.sin(wave.x * x + wave.y * y + wave.at), 0);
  const [width, depth] = [board.right - board.left, board.top - board.bottom];
  if (chance.next() < 0.5) {
    const spots = Array.from({ length: chance.whole(20, 300) }, () => {
      const at = [board.left + chance.next() * width, board.bottom + chance.next() * depth] as const;
      return { at, height: height(...at) };
    });
    return terrainOfSpots(spots, board).terrain;
  }
  const cell = chance.between(1, 4);
  const [columns, rows] = [Math.ceil(width / cell), Math.ceil(depth / cell)];
  const heights = Array.from({ length: columns * rows }, (_, at) =>
    height(
      board.left + ((at % columns) + 0.5) * cell,
      board.bottom + (Math.floor(at / columns) + 0.5) * cell,
    ),
  );
  return terrainOfGrid({ left: board.left, bottom: board.bottom, cell, columns, rows, heights }, board)
    .terrain;
}

/** Boxes set into the ground, some of them screens or glass, and a fence of mesh that closes up at a low angle. */
export function thingsOn(terrain: Terrain, chance: Chance, board: TerrainBoard, count: number): Solid[] {
  const boxes = Array.from({ length: count }, (_, at) => {
    const [x, y] = [chance.between(board.left, board.right), chance.between(board.bottom, board.top)];
    return boxSolid(
      `box-${at}`,
      [x, y, terrain.heightAt(x, y) - chance.between(0.2, 1)],
      [chance.between(0.1, 5), chance.between(0.1, 5), chance.between(1, 5)],
      chance.next() < 0.5 ? 0 : chance.between(0, 360),
      chance.pick(['solid', 'solid', 'solid', 'screen', 'clear'] as const),
    );
  });
  const fence = barrierWith({
    passage: 'screen',
    base: terrain.heightAt(0, 0) - 1,
    height: 3,
    line: [
      [-6, 1],
      [6, 2],
      [8, 9],
    ],
  });
  return [...boxes, ...solidsOf(fence, 0).solids];
}

/** A camera some metres over the ground of a board. */
export function cameraOver(terrain: Terrain, chance: Chance, board: TerrainBoard): Camera {
  const [x, y] = [chance.between(board.left, board.right), chance.between(board.bottom, board.top)];
  return cameraWith({
    eye: [x, y, terrain.heightAt(x, y) + chance.between(0.05, 6)],
    pan: chance.between(0, 360),
    tilt: chance.between(-10, 60),
    roll: chance.pick([0, 0, 15]),
    k: chance.pick(LAWS),
    focalLength: chance.between(1.8, 5),
    range: chance.between(20, 80),
  });
}

/** The same half a millimetre off an upright face of a box, where that is above the ground, and looking along it or anywhere. */
export function cameraTouching(
  terrain: Terrain,
  chance: Chance,
  { positions }: Solid,
  camera: Camera,
): Camera {
  const side = chance.whole(0, 3);
  const at = (corner: number, axis: number) => positions[corner * 3 + axis] ?? 0;
  const [from, to] = [side, (side + 1) % 4];
  const [ex, ey] = [at(to, 0) - at(from, 0), at(to, 1) - at(from, 1)];
  const length = Math.hypot(ex, ey);
  const share = chance.between(0.1, 0.9);
  const [x, y] = [at(from, 0) + share * ex, at(from, 1) + share * ey];
  const [low, high] = [Math.max(at(0, 2), terrain.heightAt(x, y)), at(4, 2)];
  if (high < low + 0.1) return camera;
  const off = chance.pick([5e-4, -5e-4]);
  return {
    ...camera,
    eye: [x + (off * ey) / length, y - (off * ex) / length, low + chance.between(0.2, 0.9) * (high - low)],
    pan: chance.pick([camera.pan, (Math.atan2(ex, ey) * 180) / Math.PI]),
  };
}

/** Square cells over a board. */
export const cellsOver = (board: TerrainBoard, cell: number) => ({
  plane: horizontalPlane(0),
  left: board.left,
  bottom: board.bottom,
  cell,
  columns: Math.ceil((board.right - board.left) / cell),
  rows: Math.ceil((board.top - board.bottom) / cell),
});
