import { describe, expect, test } from 'vitest';
import type { Block, Canopy } from '../../../src/model/structure.ts';
import { NO_LIMITS } from '../../../src/optics/mount.ts';
import { bare, factsOf, houseTurned, siteOf } from '../../draw/card/cardSites.ts';
import { closeTo } from '../../draw/card/near.ts';
import { arm, tapedOf, wallOf } from './taping.ts';

/* Numbers of these tests are worked by hand from the house that `houseTurned` describes. */

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
    expect(facts.spot).toMatchObject({ kind: 'soffit', under: 'eaves' });
    if (facts.spot.kind !== 'soffit') throw new Error();
    expect([facts.spot.inset, facts.spot.beyond]).toEqual([closeTo(0.25, 9), closeTo(0.15, 9)]);
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

  test('under a ceiling: from the corners of the room as one stands in it before the wall', () => {
    const house = { ...houseTurned(180), wallThickness: 0.3 };
    const facts = factsOf(
      siteOf([house], {
        ...bare,
        kind: 'soffit',
        host: 'house',
        face: house.outline.length,
        corner: 'start',
        distance: 2,
        inset: 0.5,
        drop: 0.1,
      }),
    );
    if (facts.spot.kind !== 'soffit') throw new Error();
    expect(facts.spot.under).toBe('ceiling');
    expect(facts.inside).toEqual({ kind: 'ceiling' });
    expect(facts.spot.inset).toBeCloseTo(0.5, 9);
    const { view, hole } = facts.spot.wall;
    expect(view.roof).toEqual([]);
    // Which end is on the left is told by a walk: whoever looks at the wall from within has its outside on the far side.
    const outside = factsOf(
      siteOf([house], {
        ...bare,
        kind: 'flush',
        host: 'house',
        face: 0,
        corner: 'start',
        distance: 2.3,
        height: 2,
        standOff: 0.1,
      }),
    );
    if (outside.spot.kind !== 'wall') throw new Error();
    expect(view.right[0]).toBeCloseTo(-outside.spot.wall.view.right[0], 9);
    expect(view.right[1]).toBeCloseTo(-outside.spot.wall.view.right[1], 9);
    expect(Math.min(hole[0], view.width - hole[0])).toBeCloseTo(2, 9);
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
    expect([facts.spot.inset, facts.spot.beyond]).toEqual([closeTo(0.4, 9), closeTo(2.6, 9)]);
    expect(facts.spot.wall.hole).toEqual([closeTo(1.5, 9), closeTo(2.4, 9)]);
    expect(tapedOf(facts.spot.wall.taped)).toEqual([
      '1500 left left-hand corner (west)',
      '3500 right right-hand corner (east)',
      '2400 below ground',
      '200 above top of the board',
    ]);
    // Of its four posts two stand along this edge, at its ends.
    expect(facts.spot.wall.view.posts).toEqual([0, 5]);
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
      [closeTo(8, 9), closeTo(2.4, 9)],
      [closeTo(0, 9), closeTo(2.4, 9)],
    ]);
    expect(facts.turned).toBeCloseTo(15, 9);
    // From the south wall (180°) it is 30° to the left, from the east wall (90°) 60° to the right.
    expect(facts.spot.turned).toEqual([closeTo(-30, 9), closeTo(60, 9)]);
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
    expect(facts.spot.corners.map(({ distance }) => distance)).toEqual([closeTo(5, 9), closeTo(5, 9)]);
    const [first] = facts.spot.corners;
    // The bearing to (0, 0) is 306.87°, to (8, 0) 53.13°; 200° lies 106.87° left of the first and 146.87° right of the second.
    const byHand = first?.at[0] === 0 ? -106.869898 : 146.869898;
    expect(facts.spot.fromLine).toBeCloseTo(byHand, 5);
    expect(facts.turned).toBeCloseTo(20, 9);
    expect(facts.lens).toEqual({
      height: closeTo(3, 9),
      out: closeTo(0.3, 9),
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
