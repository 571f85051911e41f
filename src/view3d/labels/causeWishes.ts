import { DARKNESS, hiddenRegions } from '../../draw/hiddenRegions.ts';
import type { Wish } from '../../draw/labelPlaces.ts';
import { groundOf, lifted } from '../ground/terrainFaces.ts';
import { pointOn } from '../planeFrame.ts';
import { inSight } from './inSight.ts';
import type { Label, Plates } from './PlateLayer.ts';

/** A hidden region gets a name from this size up, m². */
const LEAST_AREA = 1.5;
const MOST_PLATES = 6;
const EDGE = 4;
const ASIDE: readonly (readonly [x: number, y: number])[] = [
  [0, 0],
  [0, 14],
  [0, -14],
];

/** "Hidden by the van", where each thing hides most; the largest first. */
export function causeWishes(
  { assessment, sheet, solids, counted, names }: Plates,
  size: (text: string, look: Label['look']) => { readonly width: number; readonly height: number },
): Wish<Label>[] {
  const { scene, site } = assessment;
  const uneven = assessment.surface === null ? groundOf(scene) : null;
  const cameras = assessment.cameras.filter(({ camera }) => counted(camera.id));
  const first = new Map<string, number>();
  scene.solids.forEach(({ structure }, i) => first.set(structure, first.get(structure) ?? i));
  const group = (solid: number): number => first.get(scene.solids[solid]?.structure ?? '') ?? solid;
  const textOf = (solid: number): string | null => {
    if (solid === DARKNESS) return 'Too dark';
    const thing = scene.solids[solid];
    return thing ? `Hidden by ${names(thing)}` : null;
  };
  return hiddenRegions(site, cameras, group)
    .filter(({ area }) => area >= LEAST_AREA)
    .slice(0, MOST_PLATES)
    .flatMap(({ solid, area, spots }) => {
      const text = textOf(solid);
      if (text === null) return [];
      const { width, height } = size(text, 'cause');
      const seen = spots.flatMap((spot) => {
        const at = lifted(uneven, scene.ground, pointOn(site.grid.plane, ...spot));
        const place = sheet.spotFromSite(at);
        return place && inSight(sheet, solids, at) ? [{ at, place }] : [];
      });
      const first = seen[0];
      if (!first || area / sheet.metresPerPixel(first.at) ** 2 < width * height) return [];
      const places = seen.flatMap(({ place }) =>
        ASIDE.map(([x, y]) => ({ x: place.x + x, y: place.y + y, width, height, angle: 0 })).filter(
          (plate) =>
            plate.x - width / 2 > EDGE &&
            plate.x + width / 2 < sheet.width - EDGE &&
            plate.y - height / 2 > EDGE &&
            plate.y + height / 2 < sheet.height - EDGE,
        ),
      );
      return [{ label: { text, look: 'cause', at: first.at, fill: null, ink: null }, places }];
    });
}
