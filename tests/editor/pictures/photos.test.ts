import { describe, expect, test } from 'vitest';
import { through, type Quad } from '../../../src/base/homography.ts';
import { CORNER_NAMES, quadWords } from '../../../src/editor/pictures/quadWords.ts';
import { pinnedAt, squaredOnto, tracedInstead } from '../../../src/editor/pictures/photoUses.ts';
import { wallAsked } from '../../../src/editor/pictures/wallAsked.ts';
import { squaredPictures } from '../../../src/editor/pictures/wallPictures.ts';
import type { Structure } from '../../../src/model/structure.ts';
import { addPicture } from '../../../src/plan/commands/addPicture.ts';
import { readPlan } from '../../../src/plan/read.ts';
import { planText } from '../../../src/plan/write.ts';
import type { PictureFile, Plan, WallPicture } from '../../../src/plan/plan.ts';
import { house, site } from '../site.ts';

const file: PictureFile = { sha: 'a'.repeat(64), type: 'image/jpeg', width: 1200, height: 900 };

/** The house is 8 by 6 with its first corner in the origin; its walls stand on 0.4. */
const plan = site(house({ base: 0.4 }));

const withPicture = (use: WallPicture, on: Plan = plan): Plan => {
  const added = addPicture(on, { file, use });
  if (!added.ok) throw new Error(added.faults.map(({ code }) => code).join());
  return added.value.plan;
};

/** A pinhole's picture of a point before the south wall, y = 0: an oracle that knows nothing of homographies. */
function seen([x, z]: readonly [number, number]): [number, number] {
  const eye = [2, -7, 1.6] as const;
  const [dx, dy, dz] = [x - eye[0], 0 - eye[1], z - eye[2]];
  const turn = (14 * Math.PI) / 180;
  const ahead = dx * Math.sin(turn) + dy * Math.cos(turn);
  const right = dx * Math.cos(turn) - dy * Math.sin(turn);
  const [across, up] = [(900 * right) / ahead, (900 * dz) / ahead];
  const roll = (7 * Math.PI) / 180;
  return [
    600 + across * Math.cos(roll) - up * Math.sin(roll),
    450 - across * Math.sin(roll) - up * Math.cos(roll),
  ];
}

describe('a photo squared onto a wall', () => {
  test('shows each place of the wall where a pinhole saw it', () => {
    // A window 1.2 wide and 1.1 high, 2.5 along and 0.9 up, is all that was set.
    const corners: Quad = [seen([2.5, 1.3]), seen([3.7, 1.3]), seen([3.7, 2.4]), seen([2.5, 2.4])];
    const use: WallPicture = {
      kind: 'wall',
      structure: 'house',
      face: 0,
      corners,
      along: 2.5,
      sill: 0.9,
      width: 1.2,
      height: 1.1,
      strength: 0.5,
    };
    const [shown] = squaredPictures(withPicture(use));
    if (!shown) throw new Error('the photo is not shown');
    expect(shown.strength).toBe(0.5);
    expect(shown.plane.normal[1]).toBeCloseTo(-1, 12);
    for (const [a, b] of [
      [0, 0],
      [8, 0],
      [4.4, 2.1],
      [0.3, 1.9],
    ] as const) {
      const found = through(shown.map, [a, b]);
      const [u, v] = seen([a, 0.4 + b]);
      expect(found?.[0]).toBeCloseTo(u, 6);
      expect(found?.[1]).toBeCloseTo(v, 6);
    }
  });

  test('on the left-hand side of a wall, whose first corner is on the right, lies as it is seen from there', () => {
    const barrier: Structure = {
      kind: 'barrier',
      sort: 'wall',
      id: 'wall',
      name: 'Wall',
      hidden: false,
      locked: false,
      line: [
        [0, 0],
        [8, 0],
      ],
      closed: false,
      base: 0,
      height: 2,
      thickness: 0.2,
      passage: 'solid',
      openings: [],
      got: { line: 'guessed', height: 'guessed', thickness: 'guessed' },
    };
    const wall = site(barrier);
    const use = squaredOnto(wall, 'wall', 0, file);
    if (!use) throw new Error('a wall has a left-hand side');
    const [shown] = squaredPictures(withPicture({ ...use, along: 2, width: 3, height: 2 }, wall));
    if (!shown) throw new Error('the photo is not shown');
    expect(shown.plane.normal[1]).toBeCloseTo(1, 12);
    // Seen from the north, x = 5 is on the left: the lower left corner of the rectangle from x = 2 to x = 5.
    const { origin, u } = shown.plane;
    const at = (x: number) => through(shown.map, [(x - origin[0]) * u[0], 0]);
    expect(at(5)?.[0]).toBeCloseTo(use.corners[0][0], 6);
    expect(at(5)?.[1]).toBeCloseTo(use.corners[0][1], 6);
    expect(at(2)?.[0]).toBeCloseTo(use.corners[1][0], 6);
  });

  test('begins as the whole wall, keeps its strength in the file, and is gone with what is not drawn', () => {
    const use = squaredOnto(plan, 'house', 1, file);
    if (!use) throw new Error('there is such a wall');
    expect([use.along, use.sill, use.width]).toEqual([0, 0, 6]);
    expect(quadWords(use.corners)).toBeNull();
    const next = withPicture({ ...use, strength: 0.35 });
    const read = readPlan(planText(next));
    expect(read.ok && read.value.pictures).toEqual(next.pictures);
    const { house: hidden } = next.structures;
    if (!hidden) throw new Error('there is a house');
    expect(squaredPictures(next)).toHaveLength(1);
    expect(squaredPictures({ ...next, structures: { house: { ...hidden, hidden: true } } })).toEqual([]);
    expect(squaredOnto(plan, 'house', 77, file)).toBeNull();
    expect(squaredOnto(plan, 'constructor', 0, file)).toBeNull();
  });

  test('a file from before photos had a strength shows them whole', () => {
    const use = squaredOnto(plan, 'house', 0, file);
    if (!use) throw new Error('there is such a wall');
    const text = planText(withPicture({ ...use, strength: 0.35 })).replace(/,\s*"strength": 0\.35/, '');
    expect(text).not.toContain('strength');
    const read = readPlan(text);
    const [picture] = read.ok ? Object.values(read.value.pictures) : [];
    expect(picture?.use).toEqual({ ...use, strength: 1 });
  });

  test('goes onto the wall that is asked about, else the first of what is selected', () => {
    const ground = { kind: 'ground', height: 0 } as const;
    const wall = {
      kind: 'surface',
      height: 0,
      surface: { of: 'wall', structure: 'house', face: 2 },
    } as const;
    const chosen = { kind: 'structure', id: 'house' } as const;
    expect(wallAsked({ plan, selected: chosen, target: ground })).toEqual({ structure: 'house', face: 0 });
    expect(wallAsked({ plan, selected: null, target: wall })).toEqual({ structure: 'house', face: 2 });
    expect(wallAsked({ plan, selected: chosen, target: wall })).toEqual({ structure: 'house', face: 2 });
    expect(wallAsked({ plan, selected: null, target: ground })).toBeNull();
  });
});

describe('four points that are no rectangle', () => {
  const good: Quad = [
    [100, 800],
    [1000, 820],
    [980, 100],
    [120, 90],
  ];
  const with_ = (corner: number, at: readonly [number, number]): Quad => {
    const [a, b, c, d] = good.map((old, k) => (k === corner ? at : old));
    return a && b && c && d ? [a, b, c, d] : good;
  };

  test('are told by name and how to mend them', () => {
    expect(quadWords(good)).toBeNull();
    const [a, b, c, d] = good;
    expect(quadWords([b, a, c, d])).toMatch(/^The sides cross/);
    expect(quadWords([b, a, d, c])).toMatch(/wrong way round/);
    for (const [corner, other] of [
      [0, b],
      [1, c],
      [2, d],
      [3, a],
    ] as const) {
      expect(quadWords(with_(corner, [Number.NaN, 0]))).toMatch(
        new RegExp(`^${CORNER_NAMES[corner] ?? ''} has no place`),
      );
      expect(quadWords(with_(corner, other))).toMatch(/lies on another point/);
    }
    // Deep within the triangle of the other three.
    expect(quadWords(with_(2, [400, 600]))).toMatch(/^Upper right lies within/);
  });
});

describe('a pinned photo', () => {
  test('is raised to the eye on the ground, and stays where it is on a wall or a roof', () => {
    expect(pinnedAt(plan, [3, -2, 0])).toEqual({ kind: 'photo', at: [3, -2, 1.6], heading: null });
    expect(pinnedAt(plan, [3, 0, 2.2]).at).toEqual([3, 0, 2.2]);
  });

  test('can be traced instead, with its corner where it was', () => {
    const use = tracedInstead({ kind: 'photo', at: [3, -2, 1.6], heading: 40 });
    expect([use.at, use.metresPerPixel]).toEqual([[3, -2], null]);
  });
});
