import { describe, expect, test } from 'vitest';
import type { Solid } from '../../src/model/solid.ts';
import { answerOf } from '../property/engine.ts';
import { boxSolid } from './boxSolid.ts';
import { wideCamera } from './wideCamera.ts';

const window = { left: -15, bottom: -15, right: 15, top: 15 };

test('walls in line exactly a metre from the lens: what lies inside them has the area of their footprints', () => {
  const solids = [
    boxSolid('house', [0, 0, 0], [8, 6, 3]),
    boxSolid('annex', [6, -1, 0], [4, 4, 3]),
    boxSolid('step', [2, -3.3, 0], [1.4, 0.6, 0.0005]),
  ];
  // 150° across and straight down: half the width is 2.4 m · tan 75° = 8.96 m, half the height more than the window.
  for (const [x, tilt, pan] of [
    [-4, 45, 45],
    [1, 90, 0],
    [0, 90, 90],
  ] as const) {
    const camera = { ...wideCamera, eye: [x, -4, 2.4] as const, pan, tilt, focalLength: 0.3, range: 60 };
    const { areas, found } = answerOf({ solids, camera, z: 0, window }, 'exact');
    expect(found.sight.seen.ringsClosed, `${x}, ${tilt}`).toBe(true);
    // 48 and 16 m² of footprint touch, and the step reaches out 0.6 m by 1.4 m.
    expect(areas.insideFrame.value, `${x}, ${tilt}`).toBeCloseTo(48 + 16 + 0.84, 7);
  }
});

test('a roof that springs from the plane itself bounds its shadow there', () => {
  // A gable along y: eaves at ±2 m and 1.8 m up, ridge 3 m up; lens 4.8 m up and 6 m to the east.
  const gable = {
    id: 'gable',
    structure: 'gable',
    name: 'gable',
    passage: 'solid' as const,
    positions: Float64Array.from([-3, 3].flatMap((y) => [-2, y, 0, 2, y, 0, 2, y, 1.8, 0, y, 3, -2, y, 1.8])),
    triangles: Uint32Array.from(
      [
        [0, 1, 2, 0, 2, 3, 0, 3, 4],
        [5, 7, 6, 5, 8, 7, 5, 9, 8],
        [1, 0, 5, 1, 5, 6, 2, 1, 6, 2, 6, 7, 3, 2, 7, 3, 7, 8, 4, 3, 8, 4, 8, 9, 0, 4, 9, 0, 9, 5],
      ].flat(),
    ),
  };
  const camera = { ...wideCamera, eye: [6, 0, 4.8] as const, tilt: 90, focalLength: 0.05 };
  const { areas, found } = answerOf({ solids: [gable], camera, z: 1.8, window }, 'exact');
  // Lines through the ridge's ends (0, ±3, 3) meet the plane at share 3/1.8 of the way: (−4, ±5). The shadow is the
  // trapezium between them and the eaves (2, ±3).
  expect(found.sight.seen.area).toBeCloseTo(900 - 6 * (3 + 5), 9);
  expect(found.sight.seen.ringsClosed).toBe(true);
  // A hair above the eaves the cut of the house is 4 m by 6 m.
  expect(areas.byState.hidden.value).toBeCloseTo(48 - 24, 9);
});

describe('boxes in line that overlap count as the one box they make up', () => {
  const down = { ...wideCamera, eye: [0, 0, 4] as const, tilt: 90, focalLength: 0.3 };
  const areasFor = (solids: readonly Solid[]) =>
    answerOf({ solids, camera: down, z: 0, window }, 'exact').areas;

  test('with one foot along their fronts', () => {
    // 12.25 m to the north: there the box of the longer shadow just passed by the foot of the other.
    for (const y of [1, 2.5, 12.25]) {
      const box = (id: string, left: number, right: number) =>
        boxSolid(id, [(left + right) / 2, y + 1, 0], [right - left, 2, 1]);
      const two = areasFor([box('one', -1, 1), box('two', 0.5, 2.5)]);
      expect(two.seen.value, `${y}`).toBeCloseTo(areasFor([box('both', -1, 2.5)]).seen.value, 8);
    }
  });

  test('where a wall cuts through both along one line', () => {
    const wall = boxSolid('wall', [0, 3.5, 0], [6, 4, 3.5]);
    const low = (id: string, left: number, right: number) =>
      boxSolid(id, [(left + right) / 2, 2.5, 0], [right - left, 3, 1.5]);
    const hidden = (solids: readonly Solid[]) =>
      areasFor(solids).byHider.find(({ solid }) => solid === solids.length - 1)?.area.value ?? 0;
    expect(hidden([low('one', -5, -1), low('two', -2, 4), wall])).toBeCloseTo(
      hidden([low('both', -5, 4), wall]),
      8,
    );
  });
});

test('from below, ground under a board that lies on the plane is inside it, and not seen as well', () => {
  const board = boxSolid('board', [4, 5, 1.5], [5, 1, 0.5]);
  const up = { ...wideCamera, eye: [0, 0, 1] as const, tilt: -90, focalLength: 0.05 };
  const { areas } = answerOf({ solids: [board], camera: up, z: 1.5, window }, 'exact');
  expect(areas.insideFrame.value).toBeCloseTo(5, 8);
  expect(areas.seen.value).toBeCloseTo(900 - 5, 8);
  expect(areas.byState['out of frame'].value).toBeCloseTo(0, 6);
});
