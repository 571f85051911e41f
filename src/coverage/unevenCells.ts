import { HIT_TOLERANCE } from '../base/tolerance.ts';
import type { Vec3 } from '../base/vector.ts';
import { GROUND } from '../model/terrainSolid.ts';
import type { Camera } from '../optics/camera.ts';
import { PixelField } from '../optics/pixelField.ts';
import type { FacetGroup, Facets } from '../sight/facets.ts';
import { lensInside, touchedSolids } from '../sight/lensInside.ts';
import type { Nearest } from '../sight/raster.ts';
import type { Scratch } from './cells.ts';
import { codeOf } from './cellCode.ts';
import type { Cells } from './coverage.ts';
import { JudgedCells } from './judgedCells.ts';
import { isLit, type NightHere } from './night.ts';
import { KEPT, type BandRule } from './rule.ts';
import { COVERED, HIDDEN, INSIDE, SCREENED, TOO_COARSE, TOO_DARK } from './state.ts';
import type { UnevenGround } from './unevenGround.ts';
import { UnevenShadows } from './unevenShadows.ts';

/**
 * State, band, density and hider of every cell over uneven ground for one camera, judged at cell centres as `cellsOf` judges
 * those of a plane. The ground itself hides too.
 * @param facets of all solids, the terrain's among them; else RangeError
 * @param bare   the state of each cell before any camera looks: `unevenInside`
 * @param night  null by day
 */
export function unevenCells(
  camera: Camera,
  ground: UnevenGround,
  facets: Facets,
  bare: Uint8Array,
  rule: BandRule,
  scratch: Scratch,
  night: NightHere | null = null,
): Cells {
  const { density, rows: spans } = unevenFrame(camera, ground);
  const wanted = new Uint8Array(density.length);
  for (let at = 0; at < density.length; at += 1)
    if ((density[at] ?? 0) > 0 && bare[at] !== INSIDE) wanted[at] = 1;
  const inside = unevenLensInside(camera.eye, ground, facets);
  const found =
    inside === null ? hidersOver(camera.eye, ground, facets, wanted, scratch, night !== null) : null;
  const { left, bottom, cell, columns, rows } = ground.grid;
  const [ex, ey, ez] = camera.eye;
  const { writer } = scratch;
  writer.begin(rows);
  for (let row = 0; row < rows; row += 1) {
    const dy = bottom + (row + 0.5) * cell - ey;
    const base = row * columns;
    for (let column = spans[row * 2] ?? 0; column <= (spans[row * 2 + 1] ?? -1); column += 1) {
      const at = base + column;
      if (!((density[at] ?? 0) > 0)) continue;
      const put = (state: number, lost: number, value: number): void =>
        writer.put(column, column, codeOf(state, lost, value));
      if (wanted[at] !== 1) {
        put(INSIDE, KEPT, 0);
        continue;
      }
      const behind = inside ?? found?.solids[at] ?? -1;
      const through = found?.screens?.[at] ?? -1;
      if (behind >= 0 || through >= 0) {
        put(behind >= 0 ? HIDDEN : SCREENED, KEPT, behind >= 0 ? behind : through);
        continue;
      }
      const dx = left + (column + 0.5) * cell - ex;
      const dz = (ground.targets[at] ?? 0) - ez;
      if (night !== null && !isLit(night, found?.glass ?? null, at, dx, dy, dz)) {
        put(TOO_DARK, KEPT, 0);
        continue;
      }
      const band = rule.band(density[at] ?? 0, dx, dy, -dz);
      put(band > 0 ? COVERED : TOO_COARSE, rule.lost, band);
    }
    writer.endRow();
  }
  const sent = { rows: spans, runs: writer.done(), faces: rule.slopes.length > 0 };
  return new JudgedCells(ground.grid, sent, bare, { density, across: null });
}

/** The solid that holds a lens, the ground among them; null where none does. */
export function unevenLensInside(eye: Vec3, { terrain }: UnevenGround, facets: Facets): number | null {
  const own = groundIndex(facets);
  if (terrain.heightAt(eye[0], eye[1]) - eye[2] > HIT_TOLERANCE) return own;
  return lensInside(eye, { ...facets, groups: facets.groups.filter(({ solid }) => solid !== own) });
}

/** 1 a cell to which ground, a solid or a screen blocks the way of light from a lamp; all of them where it is inside a solid. */
export function unevenBlocked(eye: Vec3, ground: UnevenGround, facets: Facets, scratch: Scratch): Uint8Array {
  const total = ground.targets.length;
  if (unevenLensInside(eye, ground, facets) !== null) return new Uint8Array(total).fill(1);
  const { solids, screens } = hidersOver(eye, ground, facets, new Uint8Array(total).fill(1), scratch, false);
  return Uint8Array.from(solids, (solid, at) => (solid >= 0 || (screens?.[at] ?? -1) >= 0 ? 1 : 0));
}

/** By its id: a solid that came from a worker is another object. */
function groundIndex({ solids }: Facets): number {
  const own = solids.findIndex(({ id }) => id === GROUND);
  if (own < 0) throw new RangeError('the terrain is not among the solids');
  return own;
}

/** Densities of what lies in the frame, 0 elsewhere, and its first and last column in each row. */
export function unevenFrame(
  camera: Camera,
  { grid, targets }: UnevenGround,
): { readonly density: Float32Array; readonly rows: Int32Array } {
  const field = new PixelField(camera);
  const density = new Float32Array(targets.length);
  const rows = new Int32Array(grid.rows * 2);
  const [ex, ey, ez] = camera.eye;
  for (let row = 0, at = 0; row < grid.rows; row += 1) {
    const dy = grid.bottom + (row + 0.5) * grid.cell - ey;
    let [first, last] = [0, -1];
    for (let column = 0; column < grid.columns; column += 1, at += 1) {
      const dx = grid.left + (column + 0.5) * grid.cell - ex;
      if (!field.at(dx, dy, (targets[at] ?? 0) - ez)) continue;
      density[at] = field.density;
      if (last < 0) first = column;
      last = column;
    }
    rows[row * 2] = first;
    rows[row * 2 + 1] = last;
  }
  return { density, rows };
}

interface Hiders {
  /** Index of the nearest solid or closed screen before each cell, −1 where there is none. */
  readonly solids: Int32Array;
  /** The same of screens and of glass; null where the scene has none, or glass was not asked for. */
  readonly screens: Int32Array | null;
  readonly glass: Int32Array | null;
}

function hidersOver(
  eye: Vec3,
  ground: UnevenGround,
  facets: Facets,
  wanted: Uint8Array,
  scratch: Scratch,
  withGlass: boolean,
): Hiders {
  const own = groundIndex(facets);
  const total = wanted.length;
  const shadows = new UnevenShadows(ground, eye, wanted);
  const others = facets.groups.filter(({ solid }) => solid !== own);
  const touched = touchedSolids(eye, facets);
  const over = (
    use: 'solids' | 'screens' | 'closed' | 'glass',
    passage: FacetGroup['passage'],
  ): Nearest | null => {
    const groups = others.filter((group) => group.passage === passage);
    if (groups.length === 0) return null;
    const into = scratch.cleared(use, total);
    for (const group of groups) {
      shadows.nearest(facets, group, into, false, use === 'closed');
      if (touched?.[group.solid] === 1) shadows.nearest(facets, group, into, true, use === 'closed');
    }
    return into;
  };
  const solids = over('solids', 'solid') ?? scratch.cleared('solids', total);
  const screens = over('screens', 'screen');
  const closed = facets.sheets === null ? null : over('closed', 'screen');
  const glass = withGlass ? over('glass', 'clear') : null;
  hideByGround(eye, ground, facets, wanted, solids, scratch.cleared('sheet', total));
  if (closed !== null)
    for (let at = 0; at < total; at += 1)
      if ((solids.solid[at] ?? -1) < 0) solids.solid[at] = closed.solid[at] ?? -1;
  return { solids: solids.solid, screens: screens?.solid ?? null, glass: glass?.solid ?? null };
}

/** Puts the ground in where it is nearer the lens than any other solid. */
function hideByGround(
  eye: Vec3,
  ground: UnevenGround,
  facets: Facets,
  wanted: Uint8Array,
  solids: Nearest,
  left: Nearest,
): void {
  const own = groundIndex(facets);
  const group = facets.groups[own];
  if (group === undefined) return;
  const open = wanted.slice();
  new UnevenShadows(ground, eye, open).hide(facets, group);
  const both = new Uint8Array(open.length);
  for (let at = 0; at < open.length; at += 1) {
    if (wanted[at] !== 1 || open[at] === 1) continue;
    if ((solids.solid[at] ?? -1) < 0) solids.solid[at] = own;
    else both[at] = 1;
  }
  new UnevenShadows(ground, eye, both).nearest(facets, group, left, true);
  const { grid, targets, terrain } = ground;
  for (let at = 0; at < both.length; at += 1) {
    if (both[at] !== 1) continue;
    // Where the way meets the other solid: it has been in the ground before if it is in it there, or has left it.
    const share = 1 / (solids.depth[at] ?? 1);
    const x = grid.left + ((at % grid.columns) + 0.5) * grid.cell;
    const y = grid.bottom + (Math.floor(at / grid.columns) + 0.5) * grid.cell;
    const z = eye[2] + share * ((targets[at] ?? 0) - eye[2]);
    const within = () => terrain.heightAt(eye[0] + share * (x - eye[0]), eye[1] + share * (y - eye[1])) > z;
    if ((left.depth[at] ?? 0) > (solids.depth[at] ?? 0) || within()) solids.solid[at] = own;
  }
}
