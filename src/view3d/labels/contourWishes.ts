import type { SiteCoverage } from '../../coverage/coverage.ts';
import { bandColours, inkOnBand } from '../../draw/bandInk.ts';
import { contourAnchors, type SheetPoint } from '../../draw/contourLabels.ts';
import type { Wish } from '../../draw/labelPlaces.ts';
import { meetPlane, pointOn } from '../planeFrame.ts';
import { contoursOf } from '../wash/coverageContours.ts';
import { inSight } from './inSight.ts';
import type { Label, Plates } from './PlateLayer.ts';

const NAMED_BEND = 13;
const BARE_BEND = 8;
const MOST_PLACES = 12;
/** Of the window, within which a label's middle lies. */
const INNER = 0.9;
const FROM_EDGE = 1.5;

/** The value of each band line on its straightest visible stretch, with the band's name for the selected camera. */
export function contourWishes(
  { assessment, sheet, solids, theme, selected, counted }: Plates,
  size: (text: string, look: Label['look']) => { readonly width: number; readonly height: number },
): Wish<Label>[] {
  const { edition, site, scene, surface } = assessment;
  const colours = bandColours(edition.bands.length, theme);
  const chosen = assessment.cameras.filter(({ camera }) => counted(camera.id));
  const ordered = [...chosen].sort(
    (a, b) => Number(b.camera.id === selected) - Number(a.camera.id === selected),
  );
  return ordered.flatMap((coverage) =>
    contoursOf(coverage, edition).flatMap(({ band, points }): Wish<Label>[] => {
      const level = edition.bands[band];
      const fill = colours[band];
      if (!level || fill === undefined) return [];
      const { plane } = coverage.sight;
      const line: SheetPoint[] = [];
      let last = { x: -1e9, y: 0 };
      for (let i = 0; i + 1 < points.length; i += 2) {
        const at = pointOn(plane, points[i] ?? 0, points[i + 1] ?? 0);
        const spot = sheet.spotFromSite(at);
        if (!spot || Math.hypot(spot.x - last.x, spot.y - last.y) < 4) continue;
        last = spot;
        const inner =
          Math.abs(spot.x - sheet.width / 2) < (INNER / 2) * sheet.width &&
          Math.abs(spot.y - sheet.height / 2) < (INNER / 2) * sheet.height;
        const { board } = scene;
        const onBoard =
          surface !== null ||
          (at[0] > board.left + FROM_EDGE &&
            at[0] < board.right - FROM_EDGE &&
            at[1] > board.bottom + FROM_EDGE &&
            at[1] < board.top - FROM_EDGE);
        const open =
          inner &&
          onBoard &&
          parts(site, points[i] ?? 0, points[i + 1] ?? 0, band) &&
          inSight(sheet, solids, at);
        line.push({ x: spot.x, y: spot.y, open });
      }
      const named = coverage.camera.id === selected || ordered.length === 1;
      const value = String(level.density);
      const tries = named
        ? ([
            [`${level.name} ${value}`, NAMED_BEND],
            [value, BARE_BEND],
          ] as const)
        : ([[value, BARE_BEND]] as const);
      for (const [text, bend] of tries) {
        const { width, height } = size(text, 'contour');
        const anchors = contourAnchors(line, width, bend).slice(0, MOST_PLACES);
        const best = anchors[0];
        const at = best && meetPlane(sheet.rayFromSpot(best), plane);
        if (!best || !at) continue;
        const places = anchors.map(({ x, y, angle }) => ({ x, y, width, height, angle }));
        return [{ label: { text, look: 'contour', at, fill, ink: inkOnBand(fill, theme) }, places }];
      }
      return [];
    }),
  );
}

/** Whether the picture as a whole changes to this band near a point: other cameras may see it better. */
function parts({ grid, band }: SiteCoverage, a: number, b: number, wanted: number): boolean {
  const column = Math.floor((a - grid.left) / grid.cell);
  const row = Math.floor((b - grid.bottom) / grid.cell);
  let [least, most] = [255, 0];
  for (const [i, j] of [
    [-2, -2],
    [2, -2],
    [-2, 2],
    [2, 2],
  ] as const) {
    const [c, r] = [column + i, row + j];
    if (c < 0 || r < 0 || c >= grid.columns || r >= grid.rows) return false;
    const reached = band[r * grid.columns + c] ?? 0;
    [least, most] = [Math.min(least, reached), Math.max(most, reached)];
  }
  return least <= wanted && most > wanted;
}
