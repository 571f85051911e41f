/*
 * Source: viewsheds on two real elevation grids (Landlab, MIT) by two general tools, GDAL 3.6.2 `gdal_viewshed -cc 0` and GRASS
 * 8.2.1 `r.viewshed -b`, run outside this project; files and licence in tests/inputs/terrain. The tools judge the centres of cells
 * by heights at sampled points of the way; ours by triangles between the centres. So all three differ where a way grazes the
 * ground, and ours must come as near to each tool as the tools come to one another.
 */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { Scratch } from '../../../src/coverage/cells.ts';
import { unevenBlocked } from '../../../src/coverage/unevenCells.ts';
import { unevenGround } from '../../../src/coverage/unevenGround.ts';
import { gridFromText, type HeightGrid } from '../../../src/exchange/elevation/gridText.ts';
import { terrainOfGrid } from '../../../src/model/terrainGrid.ts';
import { facetsOf } from '../../../src/sight/facets.ts';
import { horizontalPlane } from '../../../src/base/plane.ts';
import { Segments } from '../../../src/sight/segment.ts';
import { treeOf } from '../../../src/sight/tree.ts';

function grid(file: string): HeightGrid {
  const read = gridFromText(readFileSync(`tests/inputs/terrain/${file}.asc`, 'utf8'));
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value;
}

const KOOTENAI = {
  file: 'kootenai-1m',
  viewshed: 'kootenai-viewshed-a',
  observer: [556452.5, 5394950.5],
  up: 3,
  target: 0,
  seen: [1546, 1541],
  agree: 1827,
} as const;

const WEST_BIJOU = {
  file: 'west-bijou-gully-3m',
  viewshed: 'west-bijou-viewshed',
  observer: [559766.5, 4380351.5],
  up: 4,
  target: 1.6,
  seen: [905, 908],
  agree: 3822,
} as const;

test.each([KOOTENAI, WEST_BIJOU])(
  'on $file ours comes as near to either tool as they come to one another',
  ({ file, viewshed, observer, up, target, seen, agree }) => {
    const { columns, rows, cell, left, bottom, heights } = grid(file);
    const board = { left: 0, bottom: 0, right: columns * cell, top: rows * cell };
    const cells = { left: 0, bottom: 0, cell, columns, rows };
    const { terrain } = terrainOfGrid({ ...cells, heights }, board);
    const ground = unevenGround(terrain, target, { ...cells, plane: horizontalPlane(0) });
    const [x, y] = [observer[0] - left, observer[1] - bottom];
    const eye = [x, y, terrain.heightAt(x, y) + up] as const;
    const facets = facetsOf([terrain.solid]);
    const blocked = unevenBlocked(eye, ground, facets, new Scratch());
    // Cells without a height are seen by neither tool, and not asked of us.
    const ours = heights.map((height, at) => height !== null && blocked[at] === 0);
    const tools = ['gdal', 'grass'].map((tool) =>
      grid(`${viewshed}-${tool}`).heights.map((one) => one === 1),
    );
    const same = (one: readonly boolean[], two: readonly boolean[]) =>
      one.filter((is, at) => is === two[at]).length;
    const [gdal = [], grass = []] = tools;
    expect(tools.map((tool) => tool.filter(Boolean).length)).toEqual(seen);
    expect(same(gdal, grass)).toBe(agree);
    expect(same(ours, gdal)).toBeGreaterThanOrEqual(agree);
    expect(same(ours, grass)).toBeGreaterThanOrEqual(agree);

    const segments = new Segments(facets, treeOf(facets));
    const byRays = heights.map((height, at) => {
      const centre = [((at % columns) + 0.5) * cell, (Math.floor(at / columns) + 0.5) * cell] as const;
      return (
        height !== null && segments.firstHit(eye, [...centre, ground.targets[at] ?? 0], 'solid') === null
      );
    });
    expect(byRays).toEqual(ours);
  },
);
