import { horizontalPlane } from '../../../base/plane.ts';
import type { Vec3 } from '../../../base/vector.ts';
import { conditionSets } from '../../../coverage/conditions.ts';
import { BandRule } from '../../../coverage/rule.ts';
import { pieceAreas, seenPieces } from '../../../coverage/seenPieces.ts';
import type { Within } from '../../../coverage/within.ts';
import { NO_AREA } from '../../../coverage/area.ts';
import { inRing } from '../../../model/ring.ts';
import { GROUND } from '../../../model/terrainSolid.ts';
import { densityAt } from '../../../optics/density.ts';
import { inFrame } from '../../../optics/projection.ts';
import { convexParts } from '../../../sight/convexParts.ts';
import { seenWithin, sightOf, type FoundSight } from '../../../sight/sightOf.ts';
import type { Window } from '../../../sight/sight.ts';
import { cautionId, type About } from '../about.ts';
import type { Found, Place } from '../caution.ts';
import { openingCorners } from './backlight.ts';

/** The band from which people are known: recognise of one edition, the same density of another, px/m. */
const KNOWN = 125;
/** A window's middle is asked so far before its wall, m. */
const BEFORE = 0.05;
/** However long the lens, no farther than this, m. */
const MOST = 500;

/** How far away ground can be and still be recognised: the lens's greatest stretch at the corners of its frame is allowed for. */
const reachOf = ({ camera }: About): number =>
  Math.min(MOST, (3 * camera.focalLength * camera.frame.width) / camera.sensor.width / KNOWN);

/** Areas of ground at recognise or better in some convex parts, m²: exact, by outline and curve. */
function recognised(about: About, found: FoundSight, parts: readonly Window[]) {
  const rule = new BandRule([{ key: 'known', name: '', density: KNOWN }], [], MOST);
  const within: Within = {
    mask: new Uint8Array(0),
    total: NO_AREA,
    inside: NO_AREA,
    cut: null,
    glazed: new Float64Array(0),
    parts,
    whole: false,
  };
  const pieces = seenPieces(found, within, conditionSets(about.camera, found.footing, rule));
  return pieceAreas(pieces, found, ({ atLeast }) => atLeast)[0] ?? { value: 0, bound: 0 };
}

/**
 * Row 40: ground, windows and doors beyond the boundary seen at recognise or better, whatever the camera's range is set to.
 * Over uneven ground only windows and doors are told. Nothing without a boundary.
 */
export function* beyond(about: About): Generator<void, readonly Found[], void> {
  const { scene, plan, edition } = about;
  const { boundary } = plan;
  if (boundary === null) return [];
  const openings = openingsBeyond(about, boundary);
  const even = scene.solids.at(-1)?.id !== GROUND;
  const area = even ? yield* groundBeyond(about, boundary) : NOTHING;
  const least = about.limit('beyond.area');
  if (openings.length === 0 && area.value <= least) return [];
  const band = edition.bands.find(({ density }) => density >= KNOWN)?.name ?? '';
  const ground: Place[] = area.at === null ? [] : [{ at: area.at, thing: { kind: 'boundary' } }];
  return [
    {
      id: cautionId(40),
      severity: 'tight',
      weight: 1 + openings.length + area.value / 10,
      figures: {
        row: 40,
        band,
        area: area.value,
        bound: area.bound,
        openings: openings.map(({ name }) => name),
      },
      places: [...openings.map(({ place }) => place), ...ground],
      thresholds: ['beyond.area'],
    },
  ];
}

interface Ground {
  readonly value: number;
  readonly bound: number;
  /** A place of it. */
  readonly at: Vec3 | null;
}

const NOTHING: Ground = { value: 0, bound: 0, at: null };

function* groundBeyond(
  about: About,
  boundary: readonly (readonly [number, number])[],
): Generator<void, Ground, void> {
  const { camera, scene, obstacles } = about;
  const reach = reachOf(about);
  const [x, y] = camera.eye;
  const window: Window = [
    [x - reach, y - reach],
    [x + reach, y - reach],
    [x + reach, y + reach],
    [x - reach, y + reach],
  ];
  const found = sightOf(camera, horizontalPlane(scene.ground), window, obstacles.facets);
  if (found.sight.lensInside !== null || seenWithin(found, window).area === 0) return NOTHING;
  yield;
  const all = recognised(about, found, [window]);
  yield;
  const own = recognised(about, found, convexParts(boundary));
  const at = found.sight.seen.pieces
    .map(({ from }): Vec3 => [from[0], from[1], scene.ground])
    .find(
      (place) =>
        !inRing([place[0], place[1]], boundary) && (densityAt(camera, place)?.horizontal ?? 0) >= KNOWN,
    );
  return { value: Math.max(0, all.value - own.value), bound: all.bound + own.bound, at: at ?? null };
}

/** Windows and doors of buildings beyond the boundary whose middle is seen well enough. */
function openingsBeyond(
  { plan, camera, obstacles }: About,
  boundary: readonly (readonly [number, number])[],
): readonly { readonly name: string; readonly place: Place }[] {
  return Object.values(plan.structures).flatMap((building) => {
    if (building.kind !== 'building') return [];
    return building.openings.flatMap((opening) => {
      const corners = openingCorners(building, opening);
      const [a, b, c] = corners;
      if (a === undefined || b === undefined || c === undefined) return [];
      const width = Math.hypot(b[0] - a[0], b[1] - a[1]);
      const out = [(b[1] - a[1]) / width, -(b[0] - a[0]) / width] as const;
      const at: Vec3 = [
        (a[0] + c[0]) / 2 + out[0] * BEFORE,
        (a[1] + c[1]) / 2 + out[1] * BEFORE,
        (a[2] + c[2]) / 2,
      ];
      const isSeen =
        !inRing([at[0], at[1]], boundary) &&
        inFrame(camera, at) &&
        (densityAt(camera, at)?.horizontal ?? 0) >= KNOWN &&
        obstacles.segments.firstHit(camera.eye, at, 'solid') === null &&
        obstacles.segments.closedHit(camera.eye, at) === null;
      const thing = { kind: 'opening', id: opening.id, on: building.id } as const;
      return isSeen ? [{ name: `${opening.name} of ${building.name}`, place: { at, thing } }] : [];
    });
  });
}
