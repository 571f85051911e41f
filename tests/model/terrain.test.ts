import { expect, test } from 'vitest';
import type { Vec2 } from '../../src/base/vector.ts';
import { terrainOf, type Terrain, type TerrainBoard } from '../../src/model/terrain.ts';
import { terrainOfGrid } from '../../src/model/terrainGrid.ts';
import { terrainOfSpots } from '../../src/model/terrainSpots.ts';
import { faultText } from '../../src/plan/faultText.ts';
import { chanceFrom, trials, type Chance } from '../house/seeded.ts';
import { meshFaults } from './meshChecks.ts';

const NOWHERE: Vec2 = [Number.NaN, Number.NaN];
const BOARD: TerrainBoard = { left: -30, bottom: -20, right: 50, top: 40 };

const spot = (x: number, y: number, height: number) => ({ at: [x, y] as const, height });

const anySpots = (chance: Chance, count: number) =>
  Array.from({ length: count }, () =>
    spot(chance.between(-25, 25), chance.between(-15, 15), chance.between(-3, 9)),
  );

/** Heights at which a vertical line through a place meets the top of a mesh, by the plane equation of each triangle. */
function crossings({ solid, surface }: Terrain, [x, y]: Vec2): number[] {
  const corner = (t: number, k: number) =>
    [0, 1, 2].map((axis) => solid.positions[(solid.triangles[t * 3 + k] ?? 0) * 3 + axis] ?? 0);
  const found: number[] = [];
  for (let t = 0; t < surface; t += 1) {
    const [a, b, c] = [corner(t, 0), corner(t, 1), corner(t, 2)];
    const [ax = 0, ay = 0, az = 0] = a;
    const [bx = 0, by = 0, bz = 0] = b;
    const [cx = 0, cy = 0, cz = 0] = c;
    // Solved for how far along the two edges from the first corner.
    const det = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
    const s = ((x - ax) * (cy - ay) - (cx - ax) * (y - ay)) / det;
    const r = ((bx - ax) * (y - ay) - (x - ax) * (by - ay)) / det;
    if (s >= -1e-9 && r >= -1e-9 && s + r <= 1 + 1e-9) found.push(az + s * (bz - az) + r * (cz - az));
  }
  return found;
}

/** Random places of the board where the height is not that of the triangle there. */
function astray(terrain: Terrain, chance: Chance, places: number): string[] {
  const wrong: string[] = [];
  for (let at = 0; at < places; at += 1) {
    const place = [chance.between(BOARD.left, BOARD.right), chance.between(BOARD.bottom, BOARD.top)] as const;
    const met = crossings(terrain, place);
    const height = terrain.heightAt(...place);
    if (met.length === 0 || met.some((one) => Math.abs(one - height) > 1e-9)) wrong.push(place.join(' '));
  }
  return wrong;
}

test('the ground of spot heights is closed, outward, and as high as its triangles everywhere', () => {
  const chance = chanceFrom(41);
  for (let trial = 0; trial < trials(12, 200); trial += 1) {
    const { terrain, faults } = terrainOfSpots(anySpots(chance, chance.whole(3, 60)), BOARD);
    expect(faults).toEqual([]);
    expect(meshFaults(terrain.solid), `trial ${trial}`).toEqual([]);
    expect(astray(terrain, chance, 40), `seed ${chance.seed}, trial ${trial}`).toEqual([]);
  }
});

test('the ground of a grid is closed, outward, and as high as its triangles everywhere', () => {
  const chance = chanceFrom(42);
  for (let trial = 0; trial < trials(12, 200); trial += 1) {
    const [columns, rows] = [chance.whole(1, 12), chance.whole(1, 12)];
    const heights = Array.from({ length: columns * rows }, () => chance.between(-3, 9));
    const grid = {
      left: chance.between(-40, 40),
      bottom: chance.between(-30, 30),
      cell: chance.between(0.5, 20),
    };
    const { terrain } = terrainOfGrid({ ...grid, columns, rows, heights }, BOARD);
    expect(meshFaults(terrain.solid), `trial ${trial}`).toEqual([]);
    expect(astray(terrain, chance, 40), `seed ${chance.seed}, trial ${trial}`).toEqual([]);
  }
});

test('between spots no other spot lies in the circle through the corners of a triangle', () => {
  const chance = chanceFrom(43);
  const spots = anySpots(chance, 80);
  const { terrain } = terrainOfSpots(spots, BOARD);
  const { positions, triangles } = terrain.solid;
  let own = 0;
  for (let t = 0; t < terrain.surface; t += 1) {
    const ids = [0, 1, 2].map((k) => triangles[t * 3 + k] ?? 0);
    if (ids.some((id) => id >= spots.length)) continue;
    own += 1;
    const [a, b, c] = ids.map((id): Vec2 => [positions[id * 3] ?? 0, positions[id * 3 + 1] ?? 0]);
    const [[ax, ay], [bx, by], [cx, cy]] = [a ?? NOWHERE, b ?? NOWHERE, c ?? NOWHERE];
    const d = 2 * (ax * (by - cy) + bx * (cy - ay) + cx * (ay - by));
    const [a2, b2, c2] = [ax * ax + ay * ay, bx * bx + by * by, cx * cx + cy * cy];
    const ux = (a2 * (by - cy) + b2 * (cy - ay) + c2 * (ay - by)) / d;
    const uy = (a2 * (cx - bx) + b2 * (ax - cx) + c2 * (bx - ax)) / d;
    const radius = Math.hypot(ax - ux, ay - uy);
    for (const { at } of spots) expect(Math.hypot(at[0] - ux, at[1] - uy)).toBeGreaterThan(radius - 1e-7);
  }
  expect(own).toBeGreaterThan(80);
});

test('beyond the outermost spots the ground has the height of the nearest point between them', () => {
  const chance = chanceFrom(44);
  const spots = [spot(0, 0, 1), spot(10, 0, 2), spot(12, 8, 5), spot(3, 11, -1), spot(5, 5, 3)];
  const ring = spots.slice(0, 4);
  const { terrain } = terrainOfSpots(spots, BOARD);
  const wrong: string[] = [];
  for (let trial = 0; trial < trials(300, 3000); trial += 1) {
    const [x, y] = [chance.between(BOARD.left, BOARD.right), chance.between(BOARD.bottom, BOARD.top)];
    let [inside, best, height] = [true, Infinity, 0];
    ring.forEach((from, at) => {
      const to = ring[(at + 1) % ring.length] ?? from;
      const [ex, ey] = [to.at[0] - from.at[0], to.at[1] - from.at[1]];
      const along = ((x - from.at[0]) * ex + (y - from.at[1]) * ey) / (ex * ex + ey * ey);
      if (ex * (y - from.at[1]) - ey * (x - from.at[0]) < 0) inside = false;
      const share = Math.min(1, Math.max(0, along));
      const away = Math.hypot(x - from.at[0] - share * ex, y - from.at[1] - share * ey);
      if (away < best) [best, height] = [away, from.height + share * (to.height - from.height)];
    });
    if (!inside && Math.abs(terrain.heightAt(x, y) - height) > 1e-9) wrong.push(`${x} ${y}`);
  }
  expect(wrong, 'seed 44').toEqual([]);
});

test('a grid meets each of its heights at the centre of its cell, and goes on level beyond the last', () => {
  const heights = [1, 2, 4, 8, 16, 32];
  const { terrain, faults } = terrainOfGrid(
    { left: 0, bottom: 0, cell: 2, columns: 3, rows: 2, heights },
    BOARD,
  );
  expect(faults).toEqual([]);
  expect(heights.map((_, at) => terrain.heightAt((at % 3) * 2 + 1, Math.floor(at / 3) * 2 + 1))).toEqual(
    heights,
  );
  expect(terrain.heightAt(-20, 1)).toBe(1);
  expect(terrain.heightAt(49, 39)).toBe(32);
  expect(terrain.heightAt(3, -19)).toBe(2);
  expect([terrain.least, terrain.most]).toEqual([1, 32]);
});

test('cells without height take that of the nearest with it, and a note says how many', () => {
  const [columns, rows] = [17, 13];
  const chance = chanceFrom(45);
  for (let trial = 0; trial < trials(20, 300); trial += 1) {
    const heights = Array.from({ length: columns * rows }, (_, at) =>
      chance.next() < 0.06 || at === 100 ? at : null,
    );
    const { terrain, faults } = terrainOfGrid({ left: 0, bottom: 0, cell: 1, columns, rows, heights }, BOARD);
    expect(faults.map(({ code, given }) => [code, given])).toEqual([
      ['ground.filled', heights.filter((one) => one === null).length],
    ]);
    heights.forEach((_, at) => {
      const [i, j] = [at % columns, Math.floor(at / columns)];
      const away = (to: number) => Math.hypot((to % columns) - i, Math.floor(to / columns) - j);
      const nearest = Math.min(...heights.flatMap((one, to) => (one === null ? [] : [away(to)])));
      expect(away(terrain.heightAt(i + 0.5, j + 0.5)) - nearest, `trial ${trial}`).toBeLessThan(0.35);
    });
  }
});

test('a grid of nothing but unknown cells is flat, and says so', () => {
  const { terrain, faults } = terrainOfGrid(
    { left: 0, bottom: 0, cell: 1, columns: 2, rows: 1, heights: [null, null] },
    BOARD,
  );
  expect(faults.map(({ code }) => code)).toEqual(['ground.unknown']);
  expect([terrain.least, terrain.most, terrain.heightAt(3, 3)]).toEqual([0, 0, 0]);
});

test('spots at one place count with their mean, and a note names them', () => {
  const { terrain, faults } = terrainOfSpots(
    [spot(0, 0, 1), spot(9, 0, 1), spot(0, 9, 1), spot(0, 0, 3)],
    BOARD,
  );
  expect(faults.map(faultText)).toEqual([
    'Two spot heights are at one place (1 and 4) (spots › 4). Their mean holds; take one of them out.',
  ]);
  expect(terrain.heightAt(0, 0)).toBe(2);
});

test('spots on one line, or at two places, leave the ground flat at their mean with a fault', () => {
  const line = terrainOfSpots([spot(0, 0, 1), spot(10, 20, 2), spot(20, 40.001, 6)], BOARD);
  expect(line.faults.map(({ code }) => code)).toEqual(['ground.spots-line']);
  const two = terrainOfSpots([spot(0, 0, 1), spot(10, 20, 2), spot(10, 20, 6)], BOARD);
  expect(two.faults.map(({ code }) => code)).toEqual(['ground.spots-repeated', 'ground.spots-few']);
  for (const { terrain } of [line, two]) {
    expect([terrain.least, terrain.most, terrain.heightAt(7, 7)]).toEqual([3, 3, 3]);
    expect(meshFaults(terrain.solid)).toEqual([]);
  }
});

test('flat ground needs no terrain; the rest make one', () => {
  expect(terrainOf({ kind: 'flat', height: 2 }, BOARD)).toBeNull();
  const spots = [spot(0, 0, 1), spot(9, 0, 1), spot(0, 9, 4)].map((one) => ({
    ...one,
    got: 'measured' as const,
  }));
  expect(terrainOf({ kind: 'spots', spots }, BOARD)?.terrain.most).toBe(4);
});
