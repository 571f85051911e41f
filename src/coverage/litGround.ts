import type { Camera } from '../optics/camera.ts';
import type { Facets } from '../sight/facets.ts';
import type { Grid } from '../sight/grid.ts';
import { overlay } from '../sight/overlay.ts';
import type { TargetPlane } from '../sight/plane.ts';
import { fillNearest } from '../sight/raster.ts';
import { rowSpansOf } from '../sight/rowSpans.ts';
import type { Region, Window } from '../sight/sight.ts';
import { joined, lampOver, leftWithin, type FoundLamp, type FoundSight } from '../sight/sightOf.ts';
import type { LensOver } from './areaWhere.ts';
import type { NightHere, Scratch } from './cells.ts';
import type { Lit } from './conditions.ts';
import { eitherLit, infraredLit, lampsLit, luxOn, type Lamp, type Night } from './light.ts';

/** Above so many lamps, what they light is counted from cells: the parts of an overlay may double with each. */
const MOST_LAMPS = 8;

/** A target surface at night, for all cameras. */
export interface LitGround {
  readonly night: Night;
  readonly plane: TargetPlane;
  readonly lamps: readonly { readonly lamp: Lamp; readonly found: FoundLamp }[];
  /** One a cell: 1 where lamps light it enough. */
  readonly cells: Uint8Array;
}

/** What the lamps of a night light of a surface; what stands in their light throws its shadow. */
export function litGround(
  night: Night,
  grid: Grid,
  window: Window,
  facets: Facets,
  scratch: Scratch,
): LitGround {
  const { plane } = grid;
  const lamps = night.lamps.map((lamp) => ({ lamp, found: lampOver(lamp.eye, plane, window, facets) }));
  const total = grid.columns * grid.rows;
  const cells = new Uint8Array(total);
  const lux = new Float32Array(total);
  for (const { lamp, found } of lamps) {
    if (found.shadows === null) continue;
    const nearest = scratch.cleared('solids', total);
    const { foot } = found.footing;
    fillNearest(found.shadows, grid, foot, rowSpansOf(grid, foot, []), nearest);
    for (let cell = 0; cell < total; cell += 1) {
      if ((nearest.solid[cell] ?? -1) >= 0) continue;
      const a = grid.left + ((cell % grid.columns) + 0.5) * grid.cell;
      const b = grid.bottom + (Math.floor(cell / grid.columns) + 0.5) * grid.cell;
      const x = plane.origin[0] + a * plane.u[0] + b * plane.v[0] - lamp.eye[0];
      const y = plane.origin[1] + a * plane.u[1] + b * plane.v[1] - lamp.eye[1];
      const z = plane.origin[2] + a * plane.u[2] + b * plane.v[2] - lamp.eye[2];
      if (lamp.light.kind === 'range') {
        if (x * x + y * y + z * z <= lamp.light.range * lamp.light.range) cells[cell] = 1;
      } else lux[cell] = (lux[cell] ?? 0) + luxOn(lamp.light, plane.normal, x, y, z);
    }
  }
  for (let cell = 0; cell < total; cell += 1) if ((lux[cell] ?? 0) >= night.leastLux) cells[cell] = 1;
  return { night, plane, lamps, cells };
}

/** The same for one camera, with its own infrared. */
export function nightFor(camera: Camera, { night, lamps, cells }: LitGround): NightHere {
  const own = night.infrared.get(camera.id);
  return { lamps: lamps.length > 0 ? cells : null, infrared: own ? infraredLit(camera, own) : null };
}

/** A part of what is seen that the same lights can reach, and where they are enough there; `lit` null by day. */
export interface LitPart {
  readonly region: Pick<Region, 'area' | 'triangles'>;
  readonly lit: Lit | null;
  /** The lamps that reach it, by their feet: where curves bend. Plane coordinates. */
  readonly lights: readonly LensOver[];
}

/**
 * What a camera sees of a part of the plane, by which lights can reach it; ground that none can reach is left out.
 * @param seen rings of what it sees of the part
 * @returns null where there are too many lamps
 */
export function litParts(
  camera: Camera,
  found: FoundSight,
  part: Window,
  seen: readonly Float64Array[],
  { night, plane, lamps }: LitGround,
): readonly LitPart[] | null {
  if (lamps.length > MOST_LAMPS) return null;
  const own = night.infrared.get(camera.id);
  const infrared = own ? infraredLit(camera, own) : null;
  const blind = found.sight.lensInside !== null;
  const unglazed =
    infrared === null || blind
      ? null
      : leftWithin(found.footing, found.frame, joined(found.all, found.glass), part);
  if (lamps.length === 0) return unglazed === null ? [] : [{ region: unglazed, lit: infrared, lights: [] }];
  const reached = lamps.map(({ found: { footing, shadows } }) =>
    shadows === null ? [] : leftWithin(footing, [], shadows, part).rings,
  );
  return overlay(part, [seen, unglazed?.rings ?? [], ...reached]).flatMap(({ members, triangles }) => {
    if (!members.includes(0)) return [];
    const here = lamps.filter((_, at) => members.includes(at + 2));
    const lit = eitherLit(
      members.includes(1) ? infrared : null,
      lampsLit(
        here.map(({ lamp }) => lamp),
        night.leastLux,
        plane.normal,
        camera.eye,
      ),
    );
    const lights = here.map(({ found: { footing } }) => ({
      p: footing.foot[0],
      q: footing.foot[1],
      delta: footing.delta,
    }));
    return lit === null ? [] : [{ region: { area: 0, triangles }, lit, lights }];
  });
}
