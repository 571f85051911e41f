import { areasOf } from '../../src/coverage/areas.ts';
import type { CameraAreas, Cells } from '../../src/coverage/coverage.ts';
import { cellsOf, Scratch } from '../../src/coverage/cells.ts';
import { cutArea, cutTriangles } from '../../src/coverage/cut.ts';
import type { Hidden } from '../../src/coverage/hiddenAreas.ts';
import { hiddenBrackets } from '../../src/coverage/hiddenBrackets.ts';
import { insideMask } from '../../src/coverage/mask.ts';
import { BandRule } from '../../src/coverage/rule.ts';
import { INSIDE, OUT_OF_FRAME } from '../../src/coverage/state.ts';
import type { Solid } from '../../src/model/solid.ts';
import type { Camera } from '../../src/optics/camera.ts';
import { facetsOf } from '../../src/sight/facets.ts';
import { horizontalPlane } from '../../src/base/plane.ts';
import { sightOf, type FoundSight } from '../../src/sight/sightOf.ts';
import type { RowWindow } from '../oracle/rowScene.ts';

/** The engine as these properties ask it: one place to mend where its functions change. */
interface Asked {
  readonly solids: readonly Solid[];
  readonly camera: Camera;
  readonly z: number;
  readonly window: RowWindow;
}

interface Answer {
  readonly found: FoundSight;
  readonly areas: CameraAreas;
  readonly cells: Cells;
}

export const DENSITIES = [25, 62.5, 125, 250];
export const CAPS = [
  { above: 20, side: 90, band: 3 },
  { above: 30, side: 90, band: 2 },
];

const cornersOf = ({ left, bottom, right, top }: RowWindow) =>
  [
    [left, bottom],
    [right, bottom],
    [right, top],
    [left, top],
  ] as const;

const scratch = new Scratch();

/** The sight alone. */
const sightFor = ({ solids, camera, z, window }: Asked): FoundSight =>
  sightOf(camera, horizontalPlane(z), cornersOf(window), facetsOf(solids));

/** What is hidden, screened and inside, between bounds, from so many boxes at most. */
export function hiddenBetween(asked: Asked, most: number): Hidden {
  const parts = [cornersOf(asked.window)];
  return hiddenBrackets(sightFor(asked), { parts, whole: true }, asked.solids, most);
}

/** Areas, and cells of the given size, of one camera. */
export function answerOf(asked: Asked, causes: 'quick' | 'exact', cell = 3, caps = CAPS): Answer {
  const { solids, camera, z, window } = asked;
  const found = sightFor(asked);
  const plane = horizontalPlane(z);
  const rule = new BandRule(
    DENSITIES.map((density) => ({ key: `${density}`, name: `${density}`, density })),
    caps,
    camera.range,
  );
  const grid = {
    plane,
    left: window.left,
    bottom: window.bottom,
    cell,
    columns: Math.round((window.right - window.left) / cell),
    rows: Math.round((window.top - window.bottom) / cell),
  };
  const bare = insideMask(solids, grid, 0).map((within) => (within === 1 ? INSIDE : OUT_OF_FRAME));
  const cells = cellsOf(camera, found, grid, bare, rule, scratch);
  const cut = cutTriangles(solids, plane, 0, 4000);
  if (cut === null) throw new Error('the cuts of these solids close');
  const parts = [cornersOf(window)];
  const within = {
    mask: new Uint8Array(bare.length).fill(1),
    total: { value: (window.right - window.left) * (window.top - window.bottom), bound: 0, how: 'exact' },
    inside: cutArea(cut, parts),
    cut,
    glazed:
      cutTriangles(
        solids.filter(({ passage }) => passage === 'clear'),
        plane,
        0,
        4000,
      ) ?? cut,
    parts,
    whole: true,
  } as const;
  return { found, cells, areas: areasOf(camera, cells, found, within, rule, solids, causes) };
}
