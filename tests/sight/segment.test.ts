import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../src/base/vector.ts';
import type { Solid } from '../../src/model/solid.ts';
import { facetsOf } from '../../src/sight/facets.ts';
import { Segments } from '../../src/sight/segment.ts';
import { treeOf } from '../../src/sight/tree.ts';
import { boxSolid } from './boxSolid.ts';

const raysOver = (solids: readonly Solid[]): Segments => {
  const facets = facetsOf(solids);
  return new Segments(facets, treeOf(facets));
};

describe('rays', () => {
  const house = boxSolid('house', [0, 0, 0], [10, 8, 5]);

  test('from a lens that touches a wall say nothing about rays from the next lens', () => {
    // Half a millimetre off the south, the west and the upper face, each asked after a lens that touches none and shares
    // two coordinates with it, or one twice.
    const cases: [Vec3, Vec3][] = [
      [
        [0, -9, 2],
        [0, -4.0005, 2],
      ],
      [
        [-9, 0, 2],
        [-5.0005, 0, 2],
      ],
      [
        [1, 2, 9],
        [1, 2, 5.0005],
      ],
      [
        [3, 3, 2],
        [-5.0005, 3, 2],
      ],
      [
        [1, 2, 2],
        [1, -4.0005, 2],
      ],
      [
        [7, 1, 5.0005],
        [1, 1, 5.0005],
      ],
    ];
    // Through the building: the far face is met from within by a lens that touches it.
    const through = (from: Vec3): Vec3 => [-1.5 * from[0], -1.5 * from[1], 6.25 - 1.5 * from[2]];
    for (const [off, touching] of cases) {
      const rays = raysOver([house]);
      rays.firstHit(off, through(off), 'solid');
      for (const eye of [touching, off]) {
        const found = rays.firstHit(eye, through(eye), 'solid');
        expect(found, `${eye.join(', ')}`).toEqual(raysOver([house]).firstHit(eye, through(eye), 'solid'));
      }
      expect(rays.firstHit(touching, through(touching), 'solid'), `${touching.join(', ')}`).not.toBe(null);
    }
  });

  test('meet what is in front first, at its share of the way, and nothing past their ends', () => {
    const rays = raysOver([boxSolid('far', [0, 8, 0], [2, 2, 5]), boxSolid('near', [0, 4, 0], [2, 2, 5])]);
    expect(rays.firstHit([0, 0, 1], [0, 10, 1], 'solid')).toMatchObject({
      solid: 1,
      share: expect.closeTo(0.3, 12) as unknown,
    });
    expect(rays.firstHit([0, 6, 1], [0, 10, 1], 'solid')).toMatchObject({
      solid: 0,
      share: expect.closeTo(0.25, 12) as unknown,
    });
    expect(rays.firstHit([0, 0, 1], [0, 2.9, 1], 'solid')).toBe(null);
    expect(rays.firstHit([0, 10, 1], [0, 12, 1], 'solid')).toBe(null);
    expect(rays.firstHit([0, 0, 1], [0, 10, 1], 'screen')).toBe(null);
  });

  test('of faces equally far name the lower index, whichever the tree asks first', () => {
    const wall = (id: string) => boxSolid(id, [0, 4, 0], [2, 2, 5]);
    const crowd = Array.from({ length: 9 }, (_, at) => boxSolid(`${at}`, [at * 3 - 12, 20, 0], [1, 1, 1]));
    for (const solids of [
      [wall('a'), wall('b'), ...crowd],
      [...crowd, wall('a'), wall('b')],
      [wall('a'), ...crowd, wall('b')],
    ]) {
      const first = solids.findIndex(({ id }) => id === 'a');
      expect(raysOver(solids).firstHit([0.3, 0, 1], [0.3, 10, 2], 'solid')?.solid).toBe(first);
    }
  });

  test('no longer than twice the tolerance meet nothing, and of nothing there is nothing to meet', () => {
    expect(raysOver([house]).firstHit([0, -4.0008, 2], [0, -3.999, 2], 'solid')).toBe(null);
    expect(raysOver([house]).firstHit([0, -4.5, 2], [0, -3.5, 2], 'solid')).not.toBe(null);
    expect(raysOver([]).firstHit([0, 0, 0], [1, 1, 1], 'solid')).toBe(null);
  });
});

describe('mesh', () => {
  /** A panel 4 m wide at y = 5 whose sheet faces north and south. */
  const panel = boxSolid('mesh', [0, 5, 0], [4, 0.02, 3], 0, 'screen');
  const sheets = Float64Array.from({ length: panel.triangles.length }, (_, at) => (at % 3 === 1 ? 1 : 0));
  const rays = raysOver([boxSolid('wall', [0, 9, 0], [20, 0.2, 3]), { ...panel, sheets }]);
  /** To a place of the panel, seen at an angle to it. */
  const at = (angle: number): Vec3 => {
    const away = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)] as const;
    return [-3 * away[0], 4.99 - 3 * away[1], 1.5];
  };

  test('closes up below 30° to its sheet', () => {
    for (const angle of [10, 29.9, 30.1, 60, 90]) {
      const eye = at(angle);
      const beyond: Vec3 = [-eye[0] * 0.5, 4.99 + (4.99 - eye[1]) * 0.5, 1.5];
      expect(rays.closedHit(eye, beyond)?.solid, `${angle}`).toBe(angle < 30 ? 1 : undefined);
      expect(rays.firstHit(eye, beyond, 'screen')?.solid, `${angle}`).toBe(1);
    }
  });

  test('without sheets never does', () => {
    expect(raysOver([panel]).closedHit(at(5), [0.2, 5.2, 1.5])).toBe(null);
    const bare = new Float64Array(panel.triangles.length);
    expect(raysOver([{ ...panel, sheets: bare }]).closedHit(at(5), [0.2, 5.2, 1.5])).toBe(null);
  });
});
