import { describe, expect, test } from 'vitest';
import { insideSolid } from '../../src/model/inside.ts';
import { placeMount } from '../../src/model/mounting.ts';
import { solidsOf } from '../../src/model/solids.ts';
import type { Structure } from '../../src/model/structure.ts';
import { NO_LIMITS, type Mount } from '../../src/optics/mount.ts';
import {
  barrierWith,
  buildingWith,
  canopyWith,
  flat,
  openingWith,
  rectangle,
  treeWith,
} from './sampleStructures.ts';
import { bare } from '../plan/wholePlan.ts';

const house = buildingWith({ roof: { ...flat, kind: 'hip', overhang: 0.5 } });
const site = (...list: Structure[]): Record<string, Structure> =>
  Object.fromEntries(list.map((structure) => [structure.id, structure]));

const placed = (mount: Mount, structures = site(house), ground = 0) => {
  const outcome = placeMount(mount, structures, ground);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.faults));
  return outcome.value;
};
const faultOf = (mount: Mount, structures = site(house)) => {
  const outcome = placeMount(mount, structures);
  return outcome.ok ? null : outcome.faults.map(({ code, path, allowed }) => ({ code, path, allowed }));
};
const near = (values: readonly number[]): unknown[] => values.map((v): unknown => expect.closeTo(v, 9));

const flush = {
  kind: 'flush',
  ...bare,
  host: 'house',
  face: 0,
  corner: 'start',
  distance: 2,
  height: 2.5,
  standOff: 0.06,
} as const;
const arm = {
  kind: 'arm',
  ...bare,
  host: 'house',
  face: 1,
  corner: 'end',
  distance: 1,
  height: 2.4,
  reach: 0.3,
  drop: 0.1,
} as const;
const soffit = {
  kind: 'soffit',
  ...bare,
  host: 'house',
  face: 2,
  corner: 'start',
  distance: 4,
  inset: 0.2,
  drop: 0.09,
} as const;
const pole = {
  kind: 'pole',
  at: [20, 5],
  height: 4,
  reach: 0.3,
  facing: 90,
  diameter: 0.1,
  limits: NO_LIMITS,
} as const;
const corner = { kind: 'corner', ...bare, host: 'house', face: 0, height: 2, reach: 0.2 } as const;

describe('placeMount', () => {
  test('puts a flush lens its stand-off in front of the wall, at the height of the hole', () => {
    expect(placed(flush)).toEqual({
      eye: [2, -0.06, 2.5],
      hole: [2, 0, 2.5],
      outward: [0, -1, 0],
      host: 'South wall of House',
    });
  });
  test('measures from the named corner, so that the camera follows when the wall moves', () => {
    const longer = site({ ...house, outline: rectangle(12, 6) });
    expect(placed({ ...flush, corner: 'end' }, longer).hole).toEqual([10, 0, 2.5]);
  });
  test('puts an arm’s lens out from the wall and below its hole', () => {
    expect(placed(arm)).toEqual({
      eye: near([10.3, 5, 2.4]),
      hole: near([10, 5, 2.5]),
      outward: [1, 0, 0],
      host: 'East wall of House',
    });
  });
  test('hangs a lens under the soffit, which gives its height', () => {
    expect(placed(soffit)).toEqual({
      eye: near([6, 6.2, 2.91]),
      hole: near([6, 6.2, 3]),
      outward: near([0, 1, 0]),
      host: 'Soffit over the north wall of House',
    });
  });
  test('reaches from a pole towards the bearing it faces', () => {
    expect(placed(pole, {}, 0.5)).toEqual({
      eye: near([20.3, 5, 4.5]),
      hole: [20, 5, 0.5],
      outward: null,
      host: null,
    });
  });
  test('reaches out along the bisector of an outer corner', () => {
    const half = Math.SQRT1_2;
    expect(placed(corner)).toEqual({
      eye: near([-0.2 * half, -0.2 * half, 2]),
      hole: [0, 0, 2],
      outward: near([-half, -half, 0]),
      host: 'Corner of the west wall and the south wall of House',
    });
  });
  test('leaves a loose lens where it is', () => {
    expect(placed({ kind: 'loose', eye: [1, 2, 3] })).toEqual({
      eye: [1, 2, 3],
      hole: null,
      outward: null,
      host: null,
    });
  });
  test('measures mounting heights from the ground', () => {
    expect(placed(flush, site({ ...house, base: 7 }), 7).eye).toEqual([2, -0.06, 9.5]);
  });
  test('keeps the lens 2 mm off its host, however it is set', () => {
    const mounts: Mount[] = [
      { ...flush, standOff: 0 },
      { ...arm, reach: 0, drop: 0 },
      { ...soffit, inset: 0, drop: 0 },
      { ...corner, reach: 0 },
    ];
    const solids = solidsOf(house).solids;
    for (const mount of mounts) {
      const { eye } = placed(mount);
      for (const step of [-0.0019, 0.0019]) {
        for (const axis of [0, 1, 2]) {
          const [x, y, z] = eye.map((v, k) => (k === axis ? v + step : v));
          const isInside = solids.some((solid) => insideSolid(solid, [x ?? 0, y ?? 0, z ?? 0]));
          expect(isInside, `${mount.kind}, axis ${axis}, ${step}`).toBe(false);
        }
      }
    }
    expect(placed({ ...pole, reach: 0 }, {}).eye[0]).toBeGreaterThan(20.05 + 0.002);
  });

  test('says that the host is gone', () => {
    expect(faultOf(flush, {})).toMatchObject([{ code: 'mount.host', path: ['host'] }]);
    expect(faultOf(flush, site({ ...treeWith(), id: 'house' }))).toMatchObject([{ code: 'mount.face' }]);
  });
  test('says which faces there are when the one named is gone', () => {
    expect(faultOf({ ...flush, face: 7 })).toEqual([
      { code: 'mount.face', path: ['face'], allowed: 'South wall, East wall, North wall, West wall' },
    ]);
  });
  test('says how far the face goes', () => {
    expect(faultOf({ ...flush, distance: 10.5 })).toEqual([
      { code: 'mount.distance', path: ['distance'], allowed: 'from 0 to 10 m along the south wall' },
    ]);
    expect(faultOf({ ...flush, distance: -0.1 })).toMatchObject([{ code: 'mount.distance' }]);
  });
  test('says which heights there are', () => {
    expect(faultOf({ ...flush, height: 3.2 })).toEqual([
      { code: 'mount.height', path: ['height'], allowed: 'from 0 m to 2.998 m' },
    ]);
    // The hole of an arm is above its lens.
    expect(faultOf({ ...arm, height: 2.95 })).toEqual([
      { code: 'mount.height', path: ['height'], allowed: 'from -0.1 m to 2.898 m' },
    ]);
  });
  test('allows a gable wall up to its slope', () => {
    const gabled = site({ ...house, roof: { ...flat, kind: 'gable', pitch: 45 } });
    const high = { ...flush, face: 1, distance: 3, height: 5.9 };
    expect(placed(high, gabled).hole).toEqual(near([10, 3, 5.9]));
    expect(faultOf({ ...high, distance: 1 }, gabled)).toMatchObject([{ code: 'mount.height' }]);
  });
  test('refuses a hole in an opening', () => {
    const open = site({ ...house, openings: [openingWith({ along: 1.5 })] });
    expect(faultOf({ ...flush, height: 1.5 }, open)).toMatchObject([{ code: 'mount.opening' }]);
    expect(faultOf({ ...flush, height: 2.1 }, open)).toBeNull();
    const glazed = site({ ...house, openings: [openingWith({ along: 1.5, sill: 1, height: 1 })] });
    expect(faultOf({ ...flush, height: 0.9 }, glazed)).toBeNull();
    expect(faultOf({ ...flush, height: 1.1 }, glazed)).toMatchObject([{ code: 'mount.opening' }]);
    const gate = site(barrierWith({ openings: [openingWith()] }));
    expect(faultOf({ ...flush, host: 'fence', face: 2, distance: 2.5, height: 1 }, gate)).toMatchObject([
      { code: 'mount.opening' },
    ]);
  });
  test('says that there is no soffit', () => {
    expect(faultOf(soffit, site(buildingWith()))).toMatchObject([{ code: 'mount.soffit', path: ['face'] }]);
    expect(faultOf({ ...soffit, inset: 0.6 })).toMatchObject([{ code: 'mount.inset', path: ['inset'] }]);
  });
  test('hangs a lens under a canopy, and refuses what lies beside it', () => {
    const triangle = {
      ...canopyWith({
        outline: [
          [0, 0],
          [4, 0],
          [0, 4],
        ],
        posts: 0,
      }),
      id: 'house',
    };
    expect(placed({ ...soffit, face: 0, distance: 1, inset: 2 }, site(triangle)).hole).toEqual(
      near([1, 2, 2.45]),
    );
    expect(faultOf({ ...soffit, face: 0, distance: 3, inset: 2 }, site(triangle))).toMatchObject([
      { code: 'mount.inset' },
    ]);
  });
  test('refuses a corner that points inwards', () => {
    const outline = [
      [0, 0],
      [9, 0],
      [9, 4],
      [5, 4],
      [5, 8],
      [0, 8],
    ] as const;
    const lShape = site(buildingWith({ outline }));
    expect(faultOf({ ...corner, face: 3 }, lShape)).toMatchObject([{ code: 'mount.inner-corner' }]);
    expect(faultOf({ ...corner, face: 2 }, lShape)).toBeNull();
  });
  test('refuses numbers that are none', () => {
    expect(faultOf({ ...flush, height: Number.NaN })).toMatchObject([
      { code: 'size.number', path: ['height'] },
    ]);
    expect(faultOf({ kind: 'loose', eye: [0, Number.POSITIVE_INFINITY, 1] })).toMatchObject([
      { code: 'size.number', path: ['eye', 1] },
    ]);
  });
});
