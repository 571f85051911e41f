import { subtract, unit, type Vec3 } from '../../base/vector.ts';
import type { Camera } from '../../optics/camera.ts';
import { siteRayFromImage } from '../../optics/projection.ts';
import type { Facets } from '../../sight/facets.ts';
import type { Segments } from '../../sight/segment.ts';
import type { Obstacles } from '../ground.ts';
import { alongRay } from './about.ts';

/** Rays across the picture; as many down as its shape asks for. */
const COLUMNS = 64;
/** How far a ray goes, m: beyond any site. */
const FAR = 20_000;

/** What one ray of the picture meets. Distances m. */
export interface PictureRay {
  /** Unit, site frame. */
  readonly way: Vec3;
  readonly u: number;
  readonly v: number;
  /** The first solid, or mesh and leaves; −1 none. */
  readonly thing: number;
  /** The face of it that is met; −1 none. */
  readonly facet: number;
  /** Distance of that, or of flat ground; Infinity into the sky. */
  readonly far: number;
  readonly meets: 'sky' | 'ground' | 'thing';
  /** The first glass before it; −1 none. */
  readonly glass: number;
  readonly glassAt: number;
  /** Mesh that has closed up and counts as solid; −1 none. */
  readonly closed: number;
}

/** The picture in rays of equal area, row by row from the top; those beyond the end of the lens law are left out. */
export interface PictureRays {
  readonly rays: readonly PictureRay[];
  readonly columns: number;
  readonly rows: number;
}

/**
 * Asks a picture ray by ray.
 * @param ground height of flat ground below which rays end, m; null where the ground is a solid
 * @returns      yields after each row
 */
export function* pictureRays(
  camera: Camera,
  { segments, facets }: Obstacles,
  ground: number | null,
): Generator<void, PictureRays, void> {
  const casts = castsOf(facets);
  const { width, height } = camera.frame;
  const rows = Math.max(1, Math.round((COLUMNS * height) / width));
  const rays: PictureRay[] = [];
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < COLUMNS; column += 1) {
      // Each ray at another place of its part of the picture, so that a level horizon cuts no whole row.
      const u = ((column + scattered(row)) * width) / COLUMNS;
      const v = ((row + scattered(column)) * height) / rows;
      const way = siteRayFromImage(camera, { u, v });
      if (way !== null) rays.push({ ...meets(camera.eye, way, segments, ground, casts), way, u, v });
    }
    yield;
  }
  return { rays, columns: COLUMNS, rows };
}

/** A sequence that fills (0, 1) evenly: steps of the golden section. */
const scattered = (at: number): number => ((at + 0.5) * 0.6180339887498949) % 1;

type Met = Omit<PictureRay, 'way' | 'u' | 'v'>;

/** What there is at all, so that nothing else is asked for. */
interface Casts {
  readonly screen: boolean;
  readonly clear: boolean;
}

const castsOf = ({ solids }: Facets): Casts => ({
  screen: solids.some(({ passage }) => passage === 'screen'),
  clear: solids.some(({ passage }) => passage === 'clear'),
});

/** What a ray from a lens meets first. @param ground as of `pictureRays` */
export const rayMeets = (eye: Vec3, way: Vec3, { segments, facets }: Obstacles, ground: number | null): Met =>
  meets(eye, way, segments, ground, castsOf(facets));

function meets(eye: Vec3, way: Vec3, segments: Segments, ground: number | null, casts: Casts): Met {
  const floor = ground !== null && way[2] < 0 ? (ground - eye[2]) / way[2] : Infinity;
  const reach = Math.min(FAR, floor > 0 ? floor : FAR);
  const end = alongRay(eye, way, reach);
  const solid = segments.firstHit(eye, end, 'solid');
  const screen = casts.screen ? segments.firstHit(eye, end, 'screen') : null;
  const first = screen !== null && (solid === null || screen.share < solid.share) ? screen : solid;
  const closed = screen === null ? null : segments.closedHit(eye, end);
  const glass = casts.clear ? segments.firstHit(eye, end, 'clear') : null;
  const far = first === null ? (reach < FAR ? reach : Infinity) : first.share * reach;
  const before = solid === null ? 1 : solid.share;
  return {
    thing: first?.solid ?? -1,
    facet: first?.facet ?? -1,
    far,
    // Where ground is a solid it may end before the ray does: below the horizon there is ground all the same.
    meets: first !== null ? 'thing' : far < Infinity || way[2] <= 0 ? 'ground' : 'sky',
    glass: glass !== null && glass.share < before ? glass.solid : -1,
    glassAt: glass === null ? Infinity : glass.share * reach,
    closed: closed !== null && closed.share < before ? closed.solid : -1,
  };
}

/** The share of a picture whose rays answer yes. */
export const shareOf = ({ rays }: PictureRays, is: (ray: PictureRay) => boolean): number =>
  rays.length === 0 ? 0 : rays.filter(is).length / rays.length;

/** Rays grouped by what they are about: share of the picture, the nearest of them. */
export interface Patch {
  readonly key: number;
  readonly share: number;
  readonly near: number;
  readonly at: Vec3;
}

/** What of the picture lies on each thing, by the number that `keyOf` gives, −1 none; largest first. */
export function patches(
  eye: Vec3,
  { rays }: PictureRays,
  keyOf: (ray: PictureRay) => number,
  farOf: (ray: PictureRay) => number = (ray) => ray.far,
): readonly Patch[] {
  const found = new Map<number, { many: number; near: number; at: Vec3 }>();
  for (const ray of rays) {
    const key = keyOf(ray);
    if (key < 0) continue;
    const far = farOf(ray);
    const known = found.get(key);
    if (known === undefined) found.set(key, { many: 1, near: far, at: alongRay(eye, ray.way, far) });
    else {
      known.many += 1;
      if (far < known.near) [known.near, known.at] = [far, alongRay(eye, ray.way, far)];
    }
  }
  return [...found]
    .map(([key, { many, near, at }]) => ({ key, share: many / rays.length, near, at }))
    .sort((one, two) => two.share - one.share);
}

/** Unit direction from one point to another. */
export const wayTo = (from: Vec3, to: Vec3): Vec3 => unit(subtract(to, from));
