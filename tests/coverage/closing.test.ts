import { expect, test } from 'vitest';
import { surfaceGround } from '../../src/assess/ground.ts';
import { areasOf } from '../../src/coverage/areas.ts';
import { cellsOf, Scratch } from '../../src/coverage/cells.ts';
import { BandRule } from '../../src/coverage/rule.ts';
import { HIDDEN, SCREENED } from '../../src/coverage/state.ts';
import { patchSurface } from '../../src/model/surface.ts';
import { facetsOf } from '../../src/sight/facets.ts';
import { sightOf } from '../../src/sight/sightOf.ts';
import { cameraWith } from '../optics/sampleCamera.ts';
import { boxSolid } from '../sight/boxSolid.ts';

/*
 * In closed form: a mesh fence along x, a lens H above the ground and D before it. A place x, y of the ground is seen at less
 * than 30° to the mesh where (y + D)² < ¼ (x² + (y + D)² + H²), that is x² > 3 (y + D)² − H².
 */
const [D, H] = [2, 3];
/** Half a metre thick, so that what stands in the mesh itself counts: it is inside, not hidden. */
const THICK = 0.5;
const fence = {
  ...boxSolid('fence', [0, THICK / 2, 0], [400, THICK, 2.9], 0, 'screen'),
  sheets: Float64Array.from({ length: 36 }, (_, n) => (n % 3 === 1 ? 1 : 0)),
};
const [WIDE, FAR] = [12, 4];
const board = patchSurface({
  id: 'p',
  name: 'P',
  outline: [
    [-WIDE, 0],
    [WIDE, 0],
    [WIDE, FAR],
    [-WIDE, FAR],
  ],
  base: 0,
  pitch: 0,
  rises: 0,
});

/** ∫ 2 (WIDE − √(3 (y + D)² − H²)) dy over the ground behind the fence, by Simpson's rule. */
function closedArea(): number {
  const steps = 2000;
  const height = (y: number) => 2 * Math.max(0, WIDE - Math.sqrt(Math.max(0, 3 * (y + D) ** 2 - H ** 2)));
  const h = (FAR - THICK) / steps;
  let sum = 0;
  for (let i = 0; i <= steps; i += 1) {
    const weight = i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2;
    sum += weight * height(THICK + i * h);
  }
  return (sum * h) / 3;
}

test.each([1, 0.5])('mesh closes along its conic, in area and cell by cell (law %d)', (k) => {
  const solids = [fence];
  const ground = surfaceGround({ solids, ground: 0 }, board, 0.05);
  const camera = cameraWith({
    eye: [0, -D, H],
    pan: 0,
    tilt: 40,
    k,
    focalLength: k === 1 ? 0.4 : 1.2,
    range: 100,
  });
  const facets = facetsOf(solids);
  const found = sightOf(camera, ground.plane, ground.window, facets);
  const rule = new BandRule([{ key: 'any', name: 'any', density: 1e-9 }], [], 100);
  const cells = cellsOf(camera, found, ground.grid, ground.bare, rule, new Scratch());
  const { byState, byHider } = areasOf(camera, cells, found, ground.within, rule, solids, 'exact');
  expect(byState.hidden.value).toBeCloseTo(closedArea(), 3);
  expect(byHider.map(({ solid }) => solid)).toEqual([0]);
  expect(byState.screened.value).toBeCloseTo(2 * WIDE * (FAR - THICK) - closedArea(), 3);
  const { grid } = ground;
  let [closed, open] = [0, 0];
  cells.state.forEach((state, cell) => {
    const x = grid.plane.origin[0] + grid.left + ((cell % grid.columns) + 0.5) * grid.cell;
    const y = grid.bottom + (Math.floor(cell / grid.columns) + 0.5) * grid.cell;
    if (y < THICK) return;
    const closes = x * x > 3 * (y + D) ** 2 - H * H;
    if (state !== (closes ? HIDDEN : SCREENED)) throw new Error(`${x} ${y}: state ${state}`);
    if (closes) closed += 1;
    else open += 1;
  });
  expect(Math.min(closed, open)).toBeGreaterThan(1000);
});
