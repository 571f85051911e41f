import { describe, expect, test } from 'vitest';
import { insideSolid } from '../../src/model/inside.ts';
import { placeMount } from '../../src/model/mounting.ts';
import { solidsOf } from '../../src/model/solids.ts';
import type { Structure } from '../../src/model/structure.ts';
import type { Mount } from '../../src/optics/mount.ts';
import { bare } from '../plan/wholePlan.ts';
import { barrierWith, buildingWith, rectangle } from './sampleStructures.ts';

const site = (...list: Structure[]): Record<string, Structure> =>
  Object.fromEntries(list.map((structure) => [structure.id, structure]));
const placed = (mount: Mount, structures: Record<string, Structure>) => {
  const outcome = placeMount(mount, structures);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.faults));
  return outcome.value;
};
const faultOf = (mount: Mount, structures: Record<string, Structure>) => {
  const outcome = placeMount(mount, structures);
  return outcome.ok ? null : outcome.faults;
};
const near = (values: readonly number[]): unknown[] => values.map((v): unknown => expect.closeTo(v, 9));

const corner = { kind: 'corner', ...bare, host: 'house', face: 0, height: 2, reach: 0.2 } as const;
const soffit = { kind: 'soffit', ...bare, drop: 0.09 } as const;

describe('a bracket around the corner of a wall or fence', () => {
  test('reaches out from the corner of a wall or fence, on the side on which it points outwards', () => {
    // From west to east, then north: the outer corner lies to the south-east, half the thickness out on either way.
    const wall = barrierWith({
      line: [
        [0, 0],
        [6, 0],
        [6, 5],
      ],
      thickness: 0.2,
      height: 2.5,
    });
    const half = Math.SQRT1_2;
    const at = { ...corner, host: wall.id };
    const outside = placed({ ...at, face: 3 }, site(wall));
    expect(outside.hole).toEqual(near([6.1, -0.1, 2]));
    expect(outside.outward).toEqual(near([half, -half, 0]));
    expect(outside.eye).toEqual(near([6.1 + 0.2 * half, -0.1 - 0.2 * half, 2]));
    // The other side of the same corner points inwards, and a free end is no corner.
    for (const face of [0, 1, 2])
      expect(faultOf({ ...at, face }, site(wall))).toMatchObject([{ code: 'mount.inner-corner' }]);
    // Drawn the other way round the outside lies on the left.
    const back = { ...wall, line: wall.line.toReversed() };
    expect(placed({ ...at, face: 1 }, site(back)).hole).toEqual(near([6.1, -0.1, 2]));
    expect(faultOf({ ...at, face: 3 }, site(back))).toMatchObject([{ code: 'mount.inner-corner' }]);
  });

  test('goes round a closed wall from its last side to its first', () => {
    const yard = barrierWith({
      line: [
        [0, 0],
        [6, 0],
        [6, 5],
        [0, 5],
      ],
      closed: true,
      thickness: 0.2,
      height: 2.5,
    });
    expect(placed({ ...corner, host: yard.id, face: 4 }, site(yard)).hole).toEqual(near([-0.1, -0.1, 2]));
    expect(faultOf({ ...corner, host: yard.id, face: 0 }, site(yard))).toMatchObject([
      { code: 'mount.inner-corner' },
    ]);
  });
});

describe('a camera under a ceiling', () => {
  test('hangs under the ceiling of a hollow building, in its room', () => {
    const shop = buildingWith({ id: 'shop', outline: rectangle(8, 6), wallThickness: 0.3, height: 3 });
    const hung = { ...soffit, host: 'shop', face: 4, corner: 'start', distance: 2, inset: 1 } as const;
    // 0.3 of wall, 2 along and 1 in from it, 0.09 below 2.8.
    const { eye, hole, outward } = placed(hung, site(shop));
    expect(eye).toEqual(near([2.3, 1.3, 2.71]));
    expect(hole).toEqual(near([2.3, 1.3, 2.8]));
    expect(outward).toEqual([0, 1, 0]);
    expect(solidsOf(shop).solids.some((solid) => insideSolid(solid, eye))).toBe(false);
    expect(faultOf({ ...hung, inset: 5.5 }, site(shop))).toMatchObject([{ code: 'mount.inset' }]);
    expect(faultOf({ ...hung, face: 8 }, site(shop))).toMatchObject([{ code: 'mount.face' }]);
  });

  test('keeps under the ceiling of a room that is no rectangle', () => {
    const lShape: [number, number][] = [
      [0, 0],
      [8, 0],
      [8, 3],
      [4, 3],
      [4, 6],
      [0, 6],
    ];
    const shop = buildingWith({ id: 'shop', outline: lShape, wallThickness: 0.3, height: 3 });
    const hung = { ...soffit, host: 'shop', face: 6, corner: 'end', distance: 1, inset: 2 } as const;
    expect(placed(hung, site(shop)).hole).toEqual(near([6.7, 2.3, 2.8]));
    // Farther in there is room at the west end only.
    expect(faultOf({ ...hung, inset: 4 }, site(shop))).toMatchObject([{ code: 'mount.inset' }]);
    expect(faultOf({ ...hung, distance: 5, inset: 4 }, site(shop))).toBeNull();
  });
});
