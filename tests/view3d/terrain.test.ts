import { describe, expect, test } from 'vitest';
import { createSession, runSteps } from '../../src/assess/session.ts';
import type { Ground } from '../../src/model/ground.ts';
import { terrainOf } from '../../src/model/terrain.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { BOARD_EDGE } from '../../src/view3d/ground/board.ts';
import { GROUND, groundOf, heightOn, skirtOf } from '../../src/view3d/ground/terrainFaces.ts';
import { boardEdges, drapedLine, heightLines, heightStep } from '../../src/view3d/ground/terrainLines.ts';
import { askedOfCells, cellLabels } from '../../src/view3d/wash/cellLabels.ts';
import { demo } from '../editor/plans.ts';
import { chanceFrom, trials } from '../house/seeded.ts';

const BOARD = { left: -10, bottom: -8, right: 12, top: 9 };

/** z = 1 + x/10 − y/20 between the spots, which reach beyond the board. */
const plane = (x: number, y: number): number => 1 + x / 10 - y / 20;
const slope: Ground = {
  kind: 'spots',
  spots: [
    [-20, -20],
    [20, -20],
    [20, 20],
    [-20, 20],
    [3, -1],
  ].map(([x = 0, y = 0]) => ({ at: [x, y] as const, height: plane(x, y), got: 'measured' as const })),
};
const bumps: Ground = {
  kind: 'grid',
  left: -8,
  bottom: -6,
  cell: 2,
  columns: 8,
  rows: 6,
  heights: Array.from({ length: 48 }, (_, i) => ((i * 7) % 11) / 4),
  got: 'measured',
};

function made(ground: Ground) {
  const found = terrainOf(ground, BOARD);
  if (!found) throw new Error('this ground is flat');
  const faces = groundOf({ solids: [found.terrain.solid], board: BOARD });
  if (!faces) throw new Error('no ground was found');
  return { ...found.terrain, faces };
}

describe('the faces of uneven ground', () => {
  test('cover the board and no more, and are found once', () => {
    for (const ground of [slope, bumps]) {
      const { solid, faces } = made(ground);
      const { positions: p, triangles } = faces;
      let area = 0;
      for (let i = 0; i < triangles.length; i += 3) {
        const [a = [0, 0], b = [0, 0], c = [0, 0]] = [0, 1, 2].map((k) => {
          const at = (triangles[i + k] ?? 0) * 3;
          return [p[at] ?? 0, p[at + 1] ?? 0];
        });
        for (const [x = 0, y = 0] of [a, b, c]) {
          expect(Math.abs(x - 1)).toBeLessThanOrEqual(11);
          expect(Math.abs(y - 0.5)).toBeLessThanOrEqual(8.5);
        }
        const [ux, uy] = [(b[0] ?? 0) - (a[0] ?? 0), (b[1] ?? 0) - (a[1] ?? 0)];
        area += (ux * ((c[1] ?? 0) - (a[1] ?? 0)) - uy * ((c[0] ?? 0) - (a[0] ?? 0))) / 2;
      }
      expect(area).toBeCloseTo(22 * 17, 9);
      expect(groundOf({ solids: [solid], board: { ...BOARD } })).toBe(faces);
      expect(groundOf({ solids: [solid], board: { ...BOARD, left: -9 } })).not.toBe(faces);
    }
    expect(GROUND).toBe(made(slope).solid.id);
  });

  test('a plumb line meets them at the height of the terrain', () => {
    const chance = chanceFrom(20_261_125);
    for (const ground of [slope, bumps]) {
      const { faces, heightAt } = made(ground);
      for (let i = 0; i < trials(200, 5000); i += 1) {
        const x = chance.between(BOARD.left, BOARD.right);
        const y = chance.between(BOARD.bottom, BOARD.top);
        expect(heightOn(faces, x, y), `${x} ${y}`).toBeCloseTo(heightAt(x, y), 9);
      }
      expect(heightOn(faces, 500, 0)).toBeNull();
    }
  });

  test('their board closes with the sides: every edge of the rim is met once by the skirt', () => {
    const { faces } = made(bumps);
    const { rim, foot, posts } = boardEdges(faces, 0);
    expect(posts.length / 6).toBe(4);
    expect(rim.length).toBe(foot.length);
    // Green's theorem: the rim encloses the whole board, counter-clockwise.
    let area = 0;
    for (let i = 0; i < rim.length; i += 6)
      area += ((rim[i] ?? 0) * (rim[i + 4] ?? 0) - (rim[i + 3] ?? 0) * (rim[i + 1] ?? 0)) / 2;
    expect(area).toBeCloseTo(22 * 17, 9);
    const { positions, triangles } = skirtOf(faces);
    const low = Math.min(...positions.filter((_, i) => i % 3 === 2));
    expect(low).toBeCloseTo(0 - BOARD_EDGE, 12);
    // Its faces look outward: the outward flow of (x, y, 0) is the area of the sides' far ends, above nought.
    for (let i = 0; i < triangles.length; i += 3) {
      const [a = [0, 0, 0], b = [0, 0, 0], c = [0, 0, 0]] = [0, 1, 2].map((k) => {
        const at = (triangles[i + k] ?? 0) * 3;
        return Array.from(positions.subarray(at, at + 3));
      });
      const [ux = 0, uy = 0, uz = 0] = b.map((value, k) => value - (a[k] ?? 0));
      const [vx = 0, vy = 0, vz = 0] = c.map((value, k) => value - (a[k] ?? 0));
      const [nx, ny] = [uy * vz - uz * vy, uz * vx - ux * vz];
      expect(nx * ((a[0] ?? 0) - 1) + ny * (a[1] ?? 0)).toBeGreaterThanOrEqual(0);
    }
  });
});

describe('lines on uneven ground', () => {
  test('of equal height lie where a slope has that height, as long as the board is there', () => {
    const lines = heightLines(made(slope).faces);
    const lengths = new Map<number, number>();
    for (let i = 0; i < lines.length; i += 6) {
      const [x = 0, y = 0, z = 0, x2 = 0, y2 = 0, z2 = 0] = lines.slice(i, i + 6);
      expect(z).toBe(z2);
      expect(plane(x, y)).toBeCloseTo(z, 9);
      lengths.set(z, (lengths.get(z) ?? 0) + Math.hypot(x2 - x, y2 - y));
    }
    // z = 1 through (0, 0): from (−4, −8) to (4.5, 9).
    expect(lengths.get(1)).toBeCloseTo(Math.hypot(8.5, 17), 6);
  });

  test('of height are no more than can be read', () => {
    expect(heightStep(0, 0.4)).toBe(0.1);
    expect(heightStep(2, 5.1)).toBe(0.2);
    expect(heightStep(0, 30)).toBe(2);
    expect(heightStep(0, 9000)).toBe(200);
  });

  test('laid from place to place keep to the ground and to their length', () => {
    const { faces, heightAt } = made(bumps);
    const pieces = drapedLine(faces, [-9, -7], [11, 8]);
    let over = 0;
    for (let i = 0; i < pieces.length; i += 6) {
      const [x = 0, y = 0, z = 0, x2 = 0, y2 = 0, z2 = 0] = pieces.slice(i, i + 6);
      over += Math.hypot(x2 - x, y2 - y);
      for (const s of [0, 0.5, 1])
        expect(z + s * (z2 - z)).toBeCloseTo(heightAt(x + s * (x2 - x), y + s * (y2 - y)), 9);
    }
    expect(over).toBeCloseTo(25, 9);
  });
});

test('uneven ground is painted by its cells: the best of all cameras, then what keeps them from it', () => {
  const plan: Plan = { ...demo(), ground: slope };
  const assessment = runSteps(
    createSession().steps(
      plan,
      { target: { kind: 'ground', height: 0 }, alone: null, situation: null, causes: 'quick' },
      1,
    ),
  );
  expect(groundOf(assessment.scene)).not.toBeNull();
  expect(askedOfCells(assessment)).toBe('ground');
  const { labels } = cellLabels(assessment, assessment.cameras, 'ground');
  const { site, cameras } = assessment;
  const met = new Map<number, number>();
  const wrong: number[] = [];
  labels.forEach((label, cell) => {
    met.set(label, (met.get(label) ?? 0) + 1);
    const states = cameras.map(({ cells }) => cells.state[cell] ?? 1);
    const kept = [5, 4, 3, 2].find((state) => states.includes(state)) ?? 1;
    const band = site.band[cell] ?? 0;
    // A band is counted from 1 where labels have 5.
    if (label !== (band > 0 ? band + 4 : kept - 1)) wrong.push(cell);
  });
  expect(wrong).toEqual([]);
  for (const label of [0, 1, 6, 7, 8]) expect(met.get(label) ?? 0, `label ${label}`).toBeGreaterThan(20);
});
