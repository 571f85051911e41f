import { describe, expect, test } from 'vitest';
import type { CameraCoverage, SiteCoverage } from '../../src/coverage/coverage.ts';
import { STATES } from '../../src/coverage/state.ts';
import { DARKNESS, hiddenRegions } from '../../src/draw/hiddenRegions.ts';
import { horizontalPlane } from '../../src/base/plane.ts';

/** Rows of signs from north to south: `.` out of frame, `d` too dark, a digit hidden by that solid, `o` covered, `i` inside. */
function pictured(...pictures: readonly (readonly string[])[]) {
  const rows = pictures[0] ?? [];
  const grid = {
    plane: horizontalPlane(0),
    left: 10,
    bottom: 20,
    cell: 1,
    columns: rows[0]?.length ?? 0,
    rows: rows.length,
  };
  const signs: Readonly<Record<string, (typeof STATES)[number]>> = {
    '.': 'out of frame',
    o: 'covered',
    i: 'inside',
    d: 'too dark',
  };
  const cameras = pictures.map((picture) => {
    const cells = [...picture].toReversed().join('');
    return {
      cells: {
        grid,
        state: Uint8Array.from(cells, (sign) => STATES.indexOf(signs[sign] ?? 'hidden')),
        hider: Int32Array.from(cells, (sign) => (/\d/.test(sign) ? Number(sign) : -1)),
      },
    };
  });
  const site: Pick<SiteCoverage, 'grid'> = { grid };
  return {
    site,
    cameras: cameras satisfies { cells: Pick<CameraCoverage['cells'], 'grid' | 'state' | 'hider'> }[],
  };
}

const regions = (...pictures: readonly (readonly string[])[]) => {
  const { site, cameras } = pictured(...pictures);
  return hiddenRegions(site, cameras, (solid) => solid);
};

describe('what hides most, and where to say so', () => {
  test('of two regions of one thing the larger counts, and the label sits in its middle', () => {
    const [only] = regions(['1....', '..111', '..111', '..111']);
    expect(only?.solid).toBe(1);
    expect(only?.area).toBe(9);
    expect(only?.spots[0]).toEqual([13.5, 21.5]);
  });

  test('things are ordered by how much they hide', () => {
    expect(regions(['122', '122']).map(({ solid, area }) => [solid, area])).toEqual([
      [2, 4],
      [1, 2],
    ]);
  });

  test('ground that another camera sees is not hidden, in whichever order they come', () => {
    const [one, two] = [
      ['11', '11'],
      ['.o', '..'],
    ] as const;
    expect(regions(one, two)[0]?.area).toBe(3);
    expect(regions(two, one)[0]?.area).toBe(3);
  });

  test('what lies inside a solid has no label', () => {
    expect(regions(['i.', '..'])).toEqual([]);
  });

  test('ground that one camera would see in the light is dark, whatever hides it from another', () => {
    const [one, two] = [
      ['11.', 'o..'],
      ['ddd', 'ddd'],
    ] as const;
    for (const found of [regions(one, two), regions(two, one)])
      expect(found.map(({ solid, area }) => [solid, area])).toEqual([[DARKNESS, 5]]);
  });

  test('the parts of one structure hide together', () => {
    const { site, cameras } = pictured(['12', '12']);
    expect(hiddenRegions(site, cameras, () => 1).map(({ area }) => area)).toEqual([4]);
  });
});
