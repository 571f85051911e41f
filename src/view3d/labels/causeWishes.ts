import { hiddenRegions } from '../../draw/hiddenRegions.ts';
import type { Wish } from '../../draw/labelPlaces.ts';
import { pointOn } from '../planeFrame.ts';
import type { Label, Plates } from './PlateLayer.ts';

/** A hidden region gets a name from this size up, m². */
const LEAST_AREA = 1.5;
const MOST_PLATES = 6;
const TRIES: readonly (readonly [x: number, y: number])[] = [
  [0, 0],
  [0, 18],
  [0, -18],
  [30, 0],
  [-30, 0],
];

/** "Hidden by the van", where each thing hides most; the largest first. */
export function causeWishes(
  { assessment, sheet, counted }: Plates,
  size: (text: string, look: Label['look']) => { readonly width: number; readonly height: number },
): Wish<Label>[] {
  const { scene, site } = assessment;
  const cameras = assessment.cameras.filter(({ camera }) => counted(camera.id));
  const first = new Map<string, number>();
  scene.solids.forEach(({ structure }, i) => first.set(structure, first.get(structure) ?? i));
  const group = (solid: number): number => first.get(scene.solids[solid]?.structure ?? '') ?? solid;
  return hiddenRegions(site, cameras, group)
    .filter(({ area }) => area >= LEAST_AREA)
    .slice(0, MOST_PLATES)
    .flatMap(({ solid, a, b }) => {
      const at = pointOn(site.grid.plane, a, b);
      const spot = sheet.spotFromSite(at);
      const name = scene.solids[solid]?.name;
      if (!spot || name === undefined) return [];
      const text = `Hidden by ${name}`;
      const { width, height } = size(text, 'cause');
      const places = TRIES.map(([x, y]) => ({ x: spot.x + x, y: spot.y + y, width, height, angle: 0 })).filter(
        (place) =>
          place.x - width / 2 > 4 &&
          place.x + width / 2 < sheet.width - 4 &&
          place.y - height / 2 > 4 &&
          place.y + height / 2 < sheet.height - 4,
      );
      return [{ label: { text, look: 'cause', at, fill: null, ink: null }, places }];
    });
}
