import { describe, expect, test } from 'vitest';
import { drillFacts } from '../../../src/assess/card/drillFacts.ts';
import { sceneOf } from '../../../src/assess/sceneOf.ts';
import type { Barrier } from '../../../src/model/structure.ts';
import { factsOf, houseReversed, houseTurned, siteOf } from '../../draw/card/cardSites.ts';
import { closeTo } from '../../draw/card/near.ts';
import { arm, tapedOf, wallOf } from './taping.ts';

/* Numbers of these tests are worked by hand from the house that `houseTurned` describes. */

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
        ['Door', closeTo(2, 9), closeTo(2.9, 9)],
        ['Window', closeTo(5, 9), closeTo(6.2, 9)],
      ]);
      expect(wall.view.services.map(({ name, at: [x, y], inside }) => [name, x, y, inside])).toEqual([
        ['Garden tap', closeTo(6, 9), closeTo(0.5, 9), false],
        ['Hall socket', closeTo(3.5, 9), closeTo(0.4, 9), true],
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
      rise: closeTo(0.2 * 0.0874887, 6),
    });
  });

  test('goes by the hole and not by the lens', () => {
    const { hole, lens } = factsOf(siteOf([houseTurned(0)], arm));
    expect(hole).toEqual([closeTo(3.8, 9), closeTo(0, 9), closeTo(2.5, 9)]);
    expect(lens).toEqual({
      height: closeTo(2.4, 9),
      out: closeTo(0.2, 9),
      below: closeTo(0.1, 9),
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
    expect(wallOf(factsOf(full)).others).toEqual([{ name: 'D', at: [closeTo(7, 9), closeTo(2.5, 9)] }]);
  });
});

test('on a slope heights are told above the ground straight below the hole', () => {
  // Ground that rises eastwards by 5 cm a metre from 0 at x = −20: 1.19 m at x = 3.8. Heights of lenses count from its lowest.
  const spots = [-20, 20].flatMap((x) =>
    [-20, 20].map((y) => ({ at: [x, y] as const, height: 0.05 * (x + 20), got: 'measured' as const })),
  );
  const plan = { ...siteOf([houseTurned(0)], arm), ground: { kind: 'spots', spots } as const };
  const { taped, groundAtHole, ground } = wallOf(factsOf(plan));
  expect(groundAtHole).toBeCloseTo(1.19, 9);
  expect(tapedOf(taped)).toContain('1310 below ground');
  expect([ground[0]?.[1], ground.at(-1)?.[1]]).toEqual([closeTo(1, 9), closeTo(1.4, 9)]);
});

describe('where it comes out', () => {
  test('is told by floor, higher by the fall through the wall, and from the inner corners', () => {
    // Inside one faces south: the east corner is on the left, 4.2 m less the wall's 0.3.
    expect(factsOf(siteOf([houseTurned(0)], arm)).inside).toEqual({
      kind: 'wall',
      thickness: 0.3,
      rise: closeTo(0.026247, 6),
      aboveBase: closeTo(2.526247, 6),
      floor: { name: 'Ground floor', above: closeTo(2.376247, 6), where: 'room', ceiling: 2.4 },
      corners: { left: closeTo(3.9, 9), right: closeTo(3.5, 9) },
    });
  });

  test.each([
    // Ceiling at 2.55, next floor at 2.8: a hole at 2.6 comes out among joists.
    { height: 2.5, floor: 'Ground floor', where: 'void', above: 2.476247 },
    { height: 0, floor: 'Ground floor', where: 'below', above: -0.023753 },
  ])('with the hole at $height m + 0.1: $where', ({ height, floor, where, above }) => {
    const { inside } = factsOf(siteOf([houseTurned(0)], { ...arm, height }));
    expect(inside).toMatchObject({ floor: { name: floor, where, above: closeTo(above, 6) } });
  });

  test('a hole above the upper floor is told from there', () => {
    const tall = houseTurned(0, { height: 5.4 });
    const { inside } = factsOf(siteOf([tall], { ...arm, height: 4 }));
    expect(inside).toMatchObject({
      floor: { name: 'First floor', where: 'room', above: closeTo(1.326247, 6) },
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
