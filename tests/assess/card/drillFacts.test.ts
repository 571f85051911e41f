import { describe, expect, test } from 'vitest';
import { tan } from '../../../src/base/angle.ts';
import type { Taped } from '../../../src/assess/card/taped.ts';
import { drillFacts, type DrillFacts, type OnWall } from '../../../src/assess/card/drillFacts.ts';
import { sceneOf } from '../../../src/assess/sceneOf.ts';
import { NO_LIMITS } from '../../../src/optics/mount.ts';
import type { Barrier, Block, Canopy } from '../../../src/model/structure.ts';
import { bare, factsOf, houseReversed, houseTurned, siteOf, turned } from '../../draw/card/cardSites.ts';

/* Numbers of these tests are worked by hand from the house that `houseTurned` describes. */

const tapedOf = (taped: readonly Taped[]): string[] =>
  taped.map(({ edge, size, side }) => `${Math.round(size * 1000)} ${side} ${edge}`);

function wallOf({ spot }: DrillFacts): OnWall {
  if (spot.kind !== 'wall' && spot.kind !== 'soffit') throw new Error(spot.kind);
  return spot.wall;
}

/** 3.8 m from the left end of the first wall, the hole at 2.5 m, the lens 0.2 m out and 0.1 m below it. */
const arm = {
  ...bare,
  kind: 'arm',
  host: 'house',
  face: 0,
  corner: 'start',
  distance: 3.8,
  height: 2.4,
  reach: 0.2,
  drop: 0.1,
} as const;

describe('a hole in a wall', () => {
  // The door's right jamb is at 2.9, the window's left one at 5.0, the eaves are at 3.0.
  const byHand = [
    '900 left right jamb of Door',
    '1200 right left jamb of Window',
    '2500 below ground',
    '500 above underside of the eaves',
  ];

  test.each([0, 37.5, 90, 123, 180, 222.2, 270, 359])(
    'is taped from the same edges on the same sides with the house turned by %d°',
    (turn) => {
      const wall = wallOf(factsOf(siteOf([houseTurned(turn)], arm)));
      expect(tapedOf(wall.taped)).toEqual(byHand);
      expect(wall.view.openings.map(({ name, left, right }) => [name, left, right])).toEqual([
        ['Door', expect.closeTo(2, 9), expect.closeTo(2.9, 9)],
        ['Window', expect.closeTo(5, 9), expect.closeTo(6.2, 9)],
      ]);
      expect(wall.view.services.map(({ name, at: [x, y], inside }) => [name, x, y, inside])).toEqual([
        ['Garden tap', expect.closeTo(6, 9), expect.closeTo(0.5, 9), false],
        ['Hall socket', expect.closeTo(3.5, 9), expect.closeTo(0.4, 9), true],
      ]);
    },
  );

  test('has left and right as one stands before it: whoever faces north has west on the left', () => {
    const { view } = wallOf(factsOf(siteOf([houseTurned(0)], arm)));
    expect([view.ends.left.wind, view.ends.right.wind]).toEqual(['west', 'east']);
    // Facing a north wall, one looks south: east is on the left.
    const north = wallOf(factsOf(siteOf([houseTurned(180)], arm))).view;
    expect([north.ends.left.wind, north.ends.right.wind]).toEqual(['east', 'west']);
  });

  test('is taped alike where the outline was drawn the other way round', () => {
    // The third edge runs from the south-east corner: 3.8 m from the left are 4.2 m from its start.
    const wall = wallOf(
      factsOf(siteOf([houseReversed()], { ...arm, face: 3, corner: 'start', distance: 3.8 })),
    );
    expect(tapedOf(wall.taped)).toEqual(byHand);
  });

  test('is seen from the other side on either side of a free-standing wall', () => {
    const barrier: Barrier = {
      kind: 'barrier',
      sort: 'wall',
      id: 'house',
      name: 'Garden wall',
      hidden: false,
      locked: false,
      line: [
        [0, 0],
        [10, 0],
      ],
      closed: false,
      base: 0,
      height: 2.8,
      thickness: 0.2,
      passage: 'solid',
      openings: [],
      got: { line: 'measured', height: 'measured', thickness: 'measured' },
    };
    // Its left-hand face as drawn eastwards looks north: whoever stands there has east on the left.
    const north = factsOf(siteOf([barrier], { ...arm, face: 0, corner: 'start', distance: 3 }));
    expect(wallOf(north).hole[0]).toBeCloseTo(7, 9);
    expect(wallOf(north).view.ends.left.wind).toBe('east');
    const south = factsOf(siteOf([barrier], { ...arm, face: 1, corner: 'start', distance: 3 }));
    expect(wallOf(south).hole[0]).toBeCloseTo(3, 9);
    expect(wallOf(south).view.ends.left.wind).toBe('west');
    expect(south.inside).toEqual({
      kind: 'through',
      thickness: 0.2,
      rise: expect.closeTo(0.2 * 0.0874887, 6),
    });
  });

  test('goes by the hole and not by the lens', () => {
    const { hole, lens } = factsOf(siteOf([houseTurned(0)], arm));
    expect(hole).toEqual([expect.closeTo(3.8, 9), expect.closeTo(0, 9), expect.closeTo(2.5, 9)]);
    expect(lens).toEqual({
      height: expect.closeTo(2.4, 9),
      out: expect.closeTo(0.2, 9),
      below: expect.closeTo(0.1, 9),
    });
  });

  test('says of a size that nobody taped how it is known', () => {
    const own = houseTurned(0);
    const guessed = { ...own, openings: own.openings.map((one) => ({ ...one, got: 'guessed' as const })) };
    const { taped } = wallOf(factsOf(siteOf([guessed], arm)));
    expect(taped.map(({ got }) => got)).toEqual(['guessed', 'guessed', 'measured', 'measured']);
  });

  test('names other holes on its wall, and none of another wall', () => {
    const plan = siteOf([houseTurned(90)], arm);
    const other = (id: string, face: number, distance: number) => {
      const camera = plan.cameras['C'];
      if (!camera) throw new Error('no camera');
      return { ...camera, id, name: id, mount: { ...arm, face, distance } };
    };
    const full = {
      ...plan,
      cameras: { ...plan.cameras, D: other('D', 0, 7), E: other('E', 1, 2) },
      cameraOrder: ['C', 'D', 'E'],
    };
    expect(wallOf(factsOf(full)).others).toEqual([
      { name: 'D', at: [expect.closeTo(7, 9), expect.closeTo(2.5, 9)] },
    ]);
  });
});

describe('where it comes out', () => {
  test('is told by floor, higher by the fall through the wall, and from the inner corners', () => {
    // Inside one faces south: the east corner is on the left, 4.2 m less the wall's 0.3.
    expect(factsOf(siteOf([houseTurned(0)], arm)).inside).toEqual({
      kind: 'wall',
      thickness: 0.3,
      rise: expect.closeTo(0.026247, 6),
      aboveBase: expect.closeTo(2.526247, 6),
      floor: { name: 'Ground floor', above: expect.closeTo(2.376247, 6), where: 'room', ceiling: 2.4 },
      corners: { left: expect.closeTo(3.9, 9), right: expect.closeTo(3.5, 9) },
    });
  });

  test.each([
    // Ceiling at 2.55, next floor at 2.8: a hole at 2.6 comes out among joists.
    { height: 2.5, floor: 'Ground floor', where: 'void', above: 2.476247 },
    { height: 0, floor: 'Ground floor', where: 'below', above: -0.023753 },
  ])('with the hole at $height m + 0.1: $where', ({ height, floor, where, above }) => {
    const { inside } = factsOf(siteOf([houseTurned(0)], { ...arm, height }));
    expect(inside).toMatchObject({ floor: { name: floor, where, above: expect.closeTo(above, 6) } });
  });

  test('a hole above the upper floor is told from there', () => {
    const tall = houseTurned(0, { height: 5.4 });
    const { inside } = factsOf(siteOf([tall], { ...arm, height: 4 }));
    expect(inside).toMatchObject({
      floor: { name: 'First floor', where: 'room', above: expect.closeTo(1.326247, 6) },
    });
  });

  test('is not known where the plan does not say', () => {
    const bareHouse = houseTurned(0, { wallThickness: null, floors: [] });
    expect(factsOf(siteOf([bareHouse], arm)).inside).toEqual({
      kind: 'wall',
      thickness: null,
      rise: null,
      aboveBase: null,
      floor: null,
      corners: null,
    });
  });
});

describe('the other mounts', () => {
  test('under the eaves: from wall and outer edge, and along the wall', () => {
    const facts = factsOf(
      siteOf([houseTurned(200)], {
        ...bare,
        kind: 'soffit',
        host: 'house',
        face: 0,
        corner: 'end',
        distance: 2,
        inset: 0.25,
        drop: 0.1,
      }),
    );
    expect(facts.spot).toMatchObject({ kind: 'soffit', isCanopy: false });
    if (facts.spot.kind !== 'soffit') throw new Error();
    expect([facts.spot.inset, facts.spot.beyond]).toEqual([expect.closeTo(0.25, 9), expect.closeTo(0.15, 9)]);
    // 2 m from the right end are 6 m from the left: 0.2 m from the window's right jamb.
    expect(tapedOf(facts.spot.wall.taped)).toEqual([
      '200 right right jamb of Window',
      '1000 left left jamb of Window',
      '3000 below ground',
      '900 below head of Window',
    ]);
    expect(facts.lens.height).toBeCloseTo(2.9, 9);
    expect(facts.inside).toEqual({ kind: 'eaves' });
  });

  test('under a canopy: from the edge that one stands before', () => {
    const canopy: Canopy = {
      kind: 'canopy',
      id: 'house',
      name: 'Carport',
      hidden: false,
      locked: false,
      outline: [
        [0, 0],
        [5, 0],
        [5, 3],
        [0, 3],
      ],
      top: 2.6,
      thickness: 0.2,
      posts: 4,
      got: { outline: 'measured', top: 'measured', thickness: 'measured' },
    };
    const mount = {
      ...bare,
      kind: 'soffit',
      host: 'house',
      face: 0,
      corner: 'start',
      distance: 1.5,
      inset: 0.4,
      drop: 0.1,
    } as const;
    const facts = factsOf(siteOf([canopy], mount, { pan: 190 }));
    if (facts.spot.kind !== 'soffit') throw new Error();
    expect([facts.spot.inset, facts.spot.beyond]).toEqual([expect.closeTo(0.4, 9), expect.closeTo(2.6, 9)]);
    expect(facts.spot.wall.hole).toEqual([expect.closeTo(1.5, 9), expect.closeTo(2.4, 9)]);
    // Out over the southern edge is south; 190° is 10° clockwise of it.
    expect(facts.turned).toBeCloseTo(10, 9);
  });

  test('around a corner: both walls, and the turn from each', () => {
    const mount = { ...bare, kind: 'corner', host: 'house', face: 1, height: 2.4, reach: 0.2 } as const;
    // Face 1 looks east; the wall before it south. The corner's middle is south-east, 135°.
    const facts = factsOf(siteOf([houseTurned(0)], mount, { pan: 150 }));
    if (facts.spot.kind !== 'corner') throw new Error();
    expect(facts.spot.walls.map(({ view }) => view.name)).toEqual(['South wall', 'East wall']);
    expect(facts.spot.walls.map(({ hole }) => hole)).toEqual([
      [expect.closeTo(8, 9), expect.closeTo(2.4, 9)],
      [expect.closeTo(0, 9), expect.closeTo(2.4, 9)],
    ]);
    expect(facts.turned).toBeCloseTo(15, 9);
    // From the south wall (180°) it is 30° to the left, from the east wall (90°) 60° to the right.
    expect(facts.spot.turned).toEqual([expect.closeTo(-30, 9), expect.closeTo(60, 9)]);
  });

  test('on a post: two corners of buildings, and the turn from the line to the first', () => {
    const mount = {
      kind: 'pole',
      at: [4, -3],
      height: 3,
      reach: 0.3,
      facing: 180,
      diameter: 0.114,
      limits: NO_LIMITS,
    } as const;
    const facts = factsOf(siteOf([houseTurned(0)], mount, { pan: 200 }));
    if (facts.spot.kind !== 'pole') throw new Error();
    // Corners (0, 0) and (8, 0) are 5 m off each (3-4-5).
    expect(facts.spot.corners.map(({ distance }) => distance)).toEqual([
      expect.closeTo(5, 9),
      expect.closeTo(5, 9),
    ]);
    const [first] = facts.spot.corners;
    // The bearing to (0, 0) is 306.87°, to (8, 0) 53.13°; 200° lies 106.87° left of the first and 146.87° right of the second.
    const byHand = first?.at[0] === 0 ? -106.869898 : 146.869898;
    expect(facts.spot.fromLine).toBeCloseTo(byHand, 5);
    expect(facts.turned).toBeCloseTo(20, 9);
    expect(facts.lens).toEqual({
      height: expect.closeTo(3, 9),
      out: expect.closeTo(0.3, 9),
      below: 0,
    });
  });

  test('on a block, of whose other side nothing is known', () => {
    const block: Block = {
      kind: 'block',
      id: 'house',
      name: 'Plinth',
      hidden: false,
      locked: false,
      outline: houseTurned(0).outline,
      base: 0,
      height: 3,
      passage: 'solid',
      got: { outline: 'measured', base: 'measured', height: 'measured' },
    };
    const facts = factsOf(siteOf([block], arm));
    expect(facts.inside).toEqual({ kind: 'through', thickness: null, rise: null });
    expect(tapedOf(wallOf(facts).taped)).toEqual([
      '3800 left left-hand corner (west)',
      '4200 right right-hand corner (east)',
      '2500 below ground',
      '500 above top',
    ]);
  });
});

describe('there is no card', () => {
  const why = (plan: ReturnType<typeof siteOf>, situation: Parameters<typeof sceneOf>[1] = null) =>
    drillFacts(plan, sceneOf(plan, situation), 'C');

  test('of a camera that is fixed to nothing', () => {
    expect(why(siteOf([houseTurned(0)], { kind: 'loose', eye: [1, -1, 3] }))).toBe('loose');
  });

  test('of one whose wall is gone or has become too short', () => {
    expect(why(siteOf([], arm))).toBe('lost');
    expect(why(siteOf([houseTurned(0)], { ...arm, distance: 9 }))).toBe('lost');
  });

  test('in conditions in which its wall is away', () => {
    const plan = siteOf([houseTurned(0)], arm);
    const situation = { id: 's', name: 'S', night: false, away: ['house'], leaves: {}, treesInLeaf: null };
    expect(why(plan, situation)).toBe('away');
  });
});

describe('the aim', () => {
  test.each([
    { turn: 0, pan: 225, right: 45 },
    { turn: 0, pan: 150, right: -30 },
    { turn: 90, pan: 225, right: -45 },
    { turn: 181, pan: 350, right: -11 },
  ])('with the house turned by $turn° a pan of $pan° is $right° to the right', ({ turn, pan, right }) => {
    // The first wall looks south, turned clockwise with the house; with the back to it clockwise is to the right.
    expect(factsOf(siteOf([houseTurned(turn)], arm, { pan })).turned).toBeCloseTo(right, 9);
  });

  test('two marks on the ground lie where the picture’s edges meet it', () => {
    const facts = factsOf(siteOf([houseTurned(0)], arm, { pan: 180, tilt: 35 }));
    const { focalLength, sensor, eye } = facts.camera;
    expect(facts.marks.map(({ side }) => side)).toEqual(['left', 'right']);
    // A pinhole with the law k of the device: half the angle across at mid-height, in the plane tilted by 35°.
    for (const { side, out, beside, at, down } of facts.marks) {
      expect(down).toBe(0.5);
      expect(at[2]).toBeCloseTo(0, 9);
      // Ahead of the lens along the ground, with the tilted plane's slant taken off: worked with the axis as base.
      const ahead = -at[1] - 0.2;
      const slant = ahead / Math.cos((35 * Math.PI) / 180);
      const [reach] = [Math.hypot(at[0] - eye[0], slant)];
      expect(reach).toBeGreaterThan(0);
      expect(ahead).toBeCloseTo(2.4 / tan(35), 6);
      expect(out).toBeCloseTo(ahead + 0.2, 9);
      // Back to the wall, looking south, right is west.
      expect(Math.sign(beside)).toBe(side === 'right' ? 1 : -1);
      expect(beside).toBeCloseTo(-(at[0] - 3.8), 9);
      const angle = (Math.atan2(Math.abs(beside), 2.4 / Math.sin((35 * Math.PI) / 180)) * 180) / Math.PI;
      const stated = facts.set.device.lens.statedHfov?.atShortest;
      if (stated === undefined)
        expect(Math.tan((angle * Math.PI) / 180)).toBeCloseTo(sensor.width / 2 / focalLength, 9);
      else expect(angle).toBeCloseTo(stated / 2, 6);
    }
  });

  test('marks turn with the house', () => {
    const facts = factsOf(siteOf([houseTurned(123)], arm, { pan: 303, tilt: 35 }));
    const straight = factsOf(siteOf([houseTurned(0)], arm, { pan: 180, tilt: 35 }));
    expect(facts.marks.map(({ out, beside }) => [out, beside])).toEqual(
      straight.marks.map(({ out, beside }) => [expect.closeTo(out, 9), expect.closeTo(beside, 9)]),
    );
    const [mark] = facts.marks;
    const [first] = straight.marks;
    if (!mark || !first) throw new Error('no mark');
    const [x, y] = turned([first.at[0], first.at[1]], 123);
    expect(mark.at).toEqual([expect.closeTo(x, 9), expect.closeTo(y, 9), expect.closeTo(0, 9)]);
  });

  test('a mark that something stands on or before is not given', () => {
    const shed: Block = {
      kind: 'block',
      id: 'shed',
      name: 'Shed',
      hidden: false,
      locked: false,
      // East of the way to the left mark, from the ground up: the whole left edge ends on it.
      outline: [
        [4.6, -8],
        [12, -8],
        [12, -1],
        [4.6, -1],
      ],
      base: 0,
      height: 2,
      passage: 'solid',
      got: { outline: 'measured', base: 'measured', height: 'measured' },
    };
    const facts = factsOf(siteOf([houseTurned(0), shed], arm, { pan: 180, tilt: 35 }));
    expect(facts.marks.map(({ side }) => side)).toEqual(['right']);
  });
});
