import { subtract, type Vec3 } from '../base/vector.ts';
import type { Camera } from '../optics/camera.ts';
import type { Facets } from '../sight/facets.ts';
import type { Grid } from '../sight/grid.ts';
import { regionParts } from '../sight/regionParts.ts';
import type { Plane } from '../base/plane.ts';
import { fillNearest } from '../sight/raster.ts';
import { rowSpansOf } from '../sight/rowSpans.ts';
import type { Region, Window } from '../sight/sight.ts';
import { joined, lampOver, leftWithin, type FoundLamp, type FoundSight } from '../sight/sightOf.ts';
import { trianglesArea } from '../sight/triangulate.ts';
import type { Scratch } from './cells.ts';
import type { NightHere } from './night.ts';
import type { Lights } from './conditions.ts';
import { infraredLit, infraredParts, lampParts, luxOn, type Lamp, type Night } from './light.ts';
import type { LensOver } from './nearestLens.ts';

/** Above so many lamps, what they light is counted from cells: the parts of an overlay may double with each. */
const MOST_LAMPS = 8;

/** A target surface at night, for all cameras. */
export interface LitGround {
  readonly night: Night;
  readonly plane: Plane;
  readonly lamps: readonly { readonly lamp: Lamp; readonly found: FoundLamp }[];
  /** One a cell: 1 where lamps light it enough; null where there are no lamps. */
  readonly cells: Uint8Array | null;
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
  const none = new Uint8Array(total).fill(1);
  const blocked = ({ footing: { foot }, shadows }: FoundLamp): Uint8Array => {
    if (shadows === null) return none;
    const nearest = scratch.cleared('solids', total);
    fillNearest(shadows, grid, foot, rowSpansOf(grid, foot, []), nearest);
    return Uint8Array.from(nearest.solid, (solid) => (solid >= 0 ? 1 : 0));
  };
  const { origin, u, v } = plane;
  const place = (cell: number): Vec3 => {
    const a = grid.left + ((cell % grid.columns) + 0.5) * grid.cell;
    const b = grid.bottom + (Math.floor(cell / grid.columns) + 0.5) * grid.cell;
    return [
      origin[0] + a * u[0] + b * v[0],
      origin[1] + a * u[1] + b * v[1],
      origin[2] + a * u[2] + b * v[2],
    ];
  };
  const found = new Map(lamps.map((one) => [one.lamp, one.found]));
  const blockedFrom = (lamp: Lamp) => {
    const over = found.get(lamp);
    return over === undefined ? none : blocked(over);
  };
  return { night, plane, lamps, cells: litCells(night, total, place, plane.normal, blockedFrom) };
}

/**
 * Which cells lamps light enough together, one at a time or by the sum of those that are measured.
 * @param blocked 1 a cell that a lamp has no free way to
 * @returns       null where there are no lamps
 */
export function litCells(
  { lamps, leastLux }: Night,
  total: number,
  place: (cell: number) => Vec3,
  normal: Vec3,
  blocked: (lamp: Lamp) => Uint8Array,
): Uint8Array | null {
  if (lamps.length === 0) return null;
  const cells = new Uint8Array(total);
  const lux = new Float32Array(total);
  for (const lamp of lamps) {
    const dark = blocked(lamp);
    for (let cell = 0; cell < total; cell += 1) {
      if (dark[cell] === 1) continue;
      const [x, y, z] = subtract(place(cell), lamp.eye);
      if (lamp.light.kind === 'range') {
        if (x * x + y * y + z * z <= lamp.light.range * lamp.light.range) cells[cell] = 1;
      } else lux[cell] = (lux[cell] ?? 0) + luxOn(lamp.light, normal, x, y, z);
    }
  }
  for (let cell = 0; cell < total; cell += 1) if ((lux[cell] ?? 0) >= leastLux) cells[cell] = 1;
  return cells;
}

/** The same for one camera, with its own infrared. */
export function nightFor(camera: Camera, { night, cells }: LitGround): NightHere {
  const own = night.infrared.get(camera.id);
  return { lamps: cells, infrared: own ? infraredLit(camera, own) : null };
}

/** A part of what is seen that the same lights can reach. */
export interface LitPart {
  readonly region: Pick<Region, 'area' | 'triangles'>;
  readonly lights: Lights;
  /** The lamps that reach it, by their feet: where curves bend. Plane coordinates. */
  readonly feet: readonly LensOver[];
}

/**
 * What a camera sees of a part of the plane, by which lights can reach it; ground that none can reach is left out.
 * @param seen rings of what it sees of the part
 * @returns null where there are too many lamps, or their light cannot be laid over what is seen
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
  const infrared = own ? infraredParts(camera, own) : null;
  const blind = found.sight.lensInside !== null;
  const unglazed =
    infrared === null || blind
      ? null
      : leftWithin(found.footing, found.frame, joined(found.all, found.glass), part);
  if (lamps.length === 0)
    return unglazed === null ? [] : [{ region: unglazed, lights: { lamps: [], own: infrared }, feet: [] }];
  const reached = lamps.map(({ found: { footing, shadows } }) =>
    shadows === null ? [] : leftWithin(footing, [], shadows, part).rings,
  );
  const laid = regionParts(part, [seen, unglazed?.rings ?? [], ...reached]);
  if (laid === null) return null;
  return laid.flatMap(({ members, triangles }) => {
    if (!members.includes(0)) return [];
    const here = lamps.filter((_, at) => members.includes(at + 2));
    const lit = lampParts(
      here.map(({ lamp }) => lamp),
      night.leastLux,
      plane.normal,
      camera.eye,
    );
    const reaching = members.includes(1) ? infrared : null;
    if (lit.length === 0 && reaching === null) return [];
    const feet = here.map(({ found: { footing } }) => ({
      p: footing.foot[0],
      q: footing.foot[1],
      delta: footing.delta,
    }));
    const region = { area: trianglesArea(triangles), triangles };
    return [{ region, lights: { lamps: lit, own: reaching }, feet }];
  });
}
