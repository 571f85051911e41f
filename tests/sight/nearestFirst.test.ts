import { expect, test } from 'vitest';
import type { Solid } from '../../src/model/solid.ts';
import { facetsOf } from '../../src/sight/facets.ts';
import { footingOf } from '../../src/sight/footing.ts';
import { frameHalfPlanes } from '../../src/sight/frame.ts';
import { cutPolygon, halfPlanesOf } from '../../src/sight/halfPlanes.ts';
import { lensInside, touchedSolids } from '../../src/sight/lensInside.ts';
import { OwnerRows } from '../../src/sight/ownerRows.ts';
import { fillOwners } from '../../src/sight/raster.ts';
import { uncovered } from '../../src/sight/region.ts';
import { rowSpansOf } from '../../src/sight/rowSpans.ts';
import { shadowsOf } from '../../src/sight/shadows.ts';
import { horizontalPlane, type Plane } from '../../src/base/plane.ts';
import { boundsOf, lampOver, sightOf } from '../../src/sight/sightOf.ts';
import { ballSolid, gableSolid } from '../bench/shapes.ts';
import { chanceFrom, trials, type Chance } from '../house/seeded.ts';
import { boxSolid, randomYard } from './boxSolid.ts';
import { wideCamera } from './wideCamera.ts';

const WINDOW = [
  [-20, -20],
  [20, -20],
  [20, 20],
  [-20, 20],
] as const;
/** Looks north over a wall 5 m away. */
const CAMERA = { ...wideCamera, eye: [0, 0, 3] as const, pan: 0, tilt: 20 };
const WALL = boxSolid('wall', [0, 5, 0], [8, 0.2, 2]);

const seen = (solids: readonly Solid[]) => {
  const { solids: shadows, screens, sight } = sightOf(CAMERA, horizontalPlane(0), WINDOW, facetsOf(solids));
  const throwers = new Set(shadows.solid.subarray(0, shadows.count));
  return { throwers, screens: screens.count, area: sight.seen.area };
};

test('what a wall hides wholly throws no shadow, and nothing else is seen for it', () => {
  const { throwers, area } = seen([WALL, boxSolid('behind', [1, 7, 0], [1, 1, 1])]);
  expect([...throwers]).toEqual([0]);
  expect(area).toBe(seen([WALL]).area);
});

test('what looks over a wall, stands beside it or before it throws its shadow', () => {
  const over = seen([WALL, boxSolid('over', [1, 7, 0], [1, 1, 2])]);
  // Higher than the lens, its shadow has no end, however near its top would lie beyond the lens.
  const tower = seen([WALL, boxSolid('tower', [0, 9, 0], [1, 1, 7])]);
  expect(tower.throwers).toEqual(new Set([0, 1]));
  const beside = seen([WALL, boxSolid('beside', [5.4, 6.5, 0], [1, 1, 1])]);
  const before = seen([WALL, boxSolid('before', [1, 3, 0], [1, 1, 1])]);
  for (const { throwers } of [over, beside, before]) expect(throwers).toEqual(new Set([0, 1]));
  expect(over.area).toBeLessThan(seen([WALL]).area - 1);
});

test('a face that a wall hides wholly throws no shadow, though another of its solid does', () => {
  // A porch lower than the wall, on a house that looks over it.
  const house = gableSolid('house', [0, 9.5, 0.4], [3, 3, 3]);
  const porch = boxSolid('porch', [0, 7.5, 0], [1, 0.4, 0.9]);
  const both: Solid = {
    ...house,
    positions: Float64Array.of(...porch.positions, ...house.positions),
    triangles: Uint32Array.of(
      ...porch.triangles,
      ...house.triangles.map((corner) => corner + porch.positions.length / 3),
    ),
  };
  const thrown = (solids: readonly Solid[]) => {
    const { solids: found } = sightOf(CAMERA, horizontalPlane(0), WINDOW, facetsOf(solids));
    return found.solid.subarray(0, found.count).filter((solid) => solid === solids.length - 1).length;
  };
  expect(thrown([both])).toBeGreaterThan(thrown([house]));
  expect(thrown([WALL, both])).toBe(thrown([WALL, house]));
  expect(thrown([WALL, house])).toBeGreaterThan(0);
});

test('what lies with its very middle straight below the lens throws its shadow', () => {
  const board = boxSolid('board', [0, 0, 2], [2, 2, 0.2]);
  const { throwers } = seen([WALL, board]);
  expect(throwers).toEqual(new Set([0, 1]));
});

test('a screen behind a screen keeps its shadow, since the first may not close up', () => {
  const screen = (id: string, y: number, height: number) =>
    boxSolid(id, [0, y, 0], [8, 0.2, height], 0, 'screen');
  const one = seen([screen('one', 5, 2)]).screens;
  expect(one).toBeGreaterThan(0);
  expect(
    seen([screen('one', 5, 2), boxSolid('two', [1, 7, 0], [1, 1, 1], 0, 'screen')]).screens,
  ).toBeGreaterThan(one);
});

test('two walls side by side hide together what neither hides alone, a roof on a house what looks over its walls', () => {
  const left = boxSolid('left', [-2, 5, 0], [4, 0.2, 2]);
  const right = boxSolid('right', [1.9, 5.1, 0], [4, 0.2, 2]);
  const behind = boxSolid('behind', [0, 8, 0], [1, 1, 1]);
  expect([...seen([left, right, behind]).throwers]).toEqual([0, 1]);
  expect([...seen([left, behind]).throwers]).toEqual([0, 1]);
  const house = boxSolid('house', [0, 8, 0], [8, 4, 1.5]);
  const roof = boxSolid('roof', [0, 8, 1.5], [8.4, 4.4, 1.2]);
  const yard = boxSolid('yard', [0, 12, 0], [1, 1, 1.2]);
  expect([...seen([house, roof, yard]).throwers]).toEqual([0, 1]);
  expect([...seen([house, yard]).throwers]).toEqual([0, 1]);
});

const side = (chance: Chance): Plane => {
  const turn = chance.between(0, 2 * Math.PI);
  const [s, c] = [Math.sin(turn), Math.cos(turn)];
  return { origin: [-8 * c, -8 * s, 3], u: [-s, c, 0], v: [0, 0, 1], normal: [c, s, 0] };
};

test('what is left out changes neither what hides any cell nor the area that is seen, on level planes and walls', () => {
  const chance = chanceFrom(59);
  let [all, kept, cells] = [0, 0, 0];
  for (let trial = 0; trial < trials(40, 1500); trial += 1) {
    // Screens are left whole, so that the same solids as screens are all there is.
    const solids = [
      ...randomYard(() => chance.next(), chance.whole(3, 120)),
      ...Array.from({ length: chance.whole(0, 6) }, (_, at) =>
        ballSolid(
          `ball-${at}`,
          [chance.between(-20, 20), chance.between(-20, 20), chance.between(0, 3)],
          1.5,
          {
            meridians: 7,
            bands: 5,
            bump: chance.pick([0, 0.3]),
          },
        ),
      ),
      ...Array.from({ length: chance.whole(0, 6) }, (_, at) =>
        gableSolid(
          `roof-${at}`,
          [chance.between(-20, 20), chance.between(-20, 20), chance.between(0, 3)],
          [6, 4, 2],
        ),
      ),
    ];
    const plane = chance.pick([horizontalPlane(chance.pick([0, 1.6])), horizontalPlane(-0.5), side(chance)]);
    const eye = [chance.between(-20, 20), chance.between(-20, 20), chance.between(1, 8)] as const;
    const facets = facetsOf(solids);
    if (lensInside(eye, facets) !== null || touchedSolids(eye, facets) !== null) continue;
    const footing = footingOf(eye, plane);
    const corners = [
      [-18, -18],
      [18, -18],
      [18, 18],
      [-18, 18],
    ] as const;
    const own = corners.map(([a, b]) => [a - footing.foot[0], b - footing.foot[1]] as const);
    const frame = frameHalfPlanes(
      {
        ...wideCamera,
        eye,
        pan: chance.between(0, 360),
        tilt: chance.between(-10, 90),
        roll: chance.pick([0, 20]),
      },
      footing,
    );
    const within = frame === null ? [] : cutPolygon(own, frame);
    if (frame === null || within.length === 0) continue;
    const bounds = boundsOf(within, frame, halfPlanesOf(own));
    const reach = Math.hypot(bounds.radius, footing.delta);
    const few = shadowsOf(facets, footing, bounds.halfPlanes, reach, 'solid');
    const open = facetsOf(solids.map((solid): Solid => ({ ...solid, passage: 'screen' })));
    const many = shadowsOf(open, footing, bounds.halfPlanes, reach, 'screen');
    all += many.count;
    kept += few.count;
    const grid = { plane, left: -18, bottom: -18, cell: 0.15, columns: 240, rows: 240 };
    const rows = rowSpansOf(grid, footing.foot, bounds.halfPlanes);
    const [one, two] = [many, few].map((shadows) => {
      const owners = new Int32Array(240 * 240).fill(-1);
      fillOwners(shadows, grid, footing.foot, rows, owners, new OwnerRows());
      return owners;
    });
    const apart = one?.findIndex((owner, cell) => owner !== two?.[cell]);
    expect(apart, `seed ${chance.seed}, trial ${trial}`).toBe(-1);
    cells += one?.filter((owner) => owner >= 0).length ?? 0;
    expect(uncovered(few, bounds).area, `seed ${chance.seed}, trial ${trial}`).toBeCloseTo(
      uncovered(many, bounds).area,
      6,
    );
  }
  // Neither all nor nothing.
  expect(kept / all).toBeLessThan(0.95);
  expect(cells).toBeGreaterThan(100_000);
});

test.each([0, 90, 180, 270, 315, 30])(
  'looking along %i°, a wall hides wholly what stands behind it, and what the frame misses throws nothing',
  (pan) => {
    const [s, c] = [Math.sin((pan * Math.PI) / 180), Math.cos((pan * Math.PI) / 180)];
    const at = (x: number, y: number, z: number) => [c * x + s * y, c * y - s * x, z] as const;
    const throwers = (...solids: readonly Solid[]) => {
      const found = sightOf({ ...CAMERA, pan }, horizontalPlane(0), WINDOW, facetsOf(solids));
      return [...new Set(found.solids.solid.subarray(0, found.solids.count))];
    };
    const wall = boxSolid('wall', at(0, 5, 0), [4, 0.2, 2], -pan);
    const behind = boxSolid('behind', at(0.2, 9.5, 0), [1, 1, 0.8], -pan);
    expect(throwers(behind, wall)).toEqual([1]);
    expect(throwers(boxSolid('before', at(1, 3, 0), [1, 1, 1], -pan), wall)).toEqual([0, 1]);
    // To the side, behind the camera and above it.
    const out = [at(-14, 2, 0), at(14, 2, 0), at(0, -6, 0), at(0, 4, 3.5)];
    expect(throwers(wall, ...out.map((place, n) => boxSolid(`out-${n}`, place, [1, 1, 1], -pan)))).toEqual([
      0,
    ]);
  },
);

test('a raised board hides what lies in its shadow, not what stands before that or casts beyond it', () => {
  // From 3 m up its shadow reaches from 10 m away to 14.6.
  const board = boxSolid('board', [0, 2.5, 2.4], [9, 1, 0.1]);
  expect([...seen([board, boxSolid('before', [0, 6, 0], [1, 1, 1])]).throwers]).toEqual([0, 1]);
  expect([...seen([board, boxSolid('in', [0, 8.5, 1.1], [1, 0.3, 0.1])]).throwers]).toEqual([0]);
  expect([...seen([board, boxSolid('beyond', [0, 13, 0], [1, 1, 1])]).throwers]).toEqual([0, 1]);
});

test('between the sill and the lintel of one solid is seen what stands behind it', () => {
  const sill = boxSolid('frame', [0, 5, 0], [8, 0.2, 0.6]);
  const lintel = boxSolid('frame', [0, 5, 1.8], [8, 0.2, 0.1]);
  const frame: Solid = {
    ...sill,
    positions: Float64Array.of(...sill.positions, ...lintel.positions),
    triangles: Uint32Array.of(...sill.triangles, ...lintel.triangles.map((corner) => corner + 8)),
  };
  // Their shadows reach to 6.4 m and begin again at 12.2 m; its own ends at 11.4 m.
  expect([...seen([frame, boxSolid('behind', [0, 9, 0], [1, 1, 0.5])]).throwers]).toEqual([0, 1]);
});

test('of a lamp too what looks over a wall keeps its shadow, and what the wall hides has none', () => {
  const throwers = (...solids: readonly Solid[]) => {
    const { shadows } = lampOver(CAMERA.eye, horizontalPlane(0), WINDOW, facetsOf(solids));
    return shadows === null ? [] : [...new Set(shadows.solid.subarray(0, shadows.count))];
  };
  expect(throwers(WALL, boxSolid('over', [1, 7, 0], [1, 1, 2]))).toEqual([0, 1]);
  expect(throwers(WALL, boxSolid('behind', [1, 7, 0], [1, 1, 1]))).toEqual([0]);
});

test('solids, screens and glass each throw shadows of their own', () => {
  const of = (passage: 'solid' | 'screen' | 'clear', x: number) =>
    boxSolid(passage, [x, 5, 0], [1, 0.2, 1], 0, passage);
  const found = sightOf(
    CAMERA,
    horizontalPlane(0),
    WINDOW,
    facetsOf([of('solid', -2), of('screen', 0), of('clear', 2)]),
  );
  const throwers = [found.solids, found.screens, found.glass].map(({ solid, count }) => [
    ...new Set(solid.subarray(0, count)),
  ]);
  expect(throwers).toEqual([[0], [1], [2]]);
});
