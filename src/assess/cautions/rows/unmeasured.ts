import type { Vec2, Vec3 } from '../../../base/vector.ts';
import { solidsOf } from '../../../model/solids.ts';
import type { Got, Structure } from '../../../model/structure.ts';
import { facetsOf, type Facets } from '../../../sight/facets.ts';
import { Segments } from '../../../sight/segment.ts';
import { treeOf } from '../../../sight/tree.ts';
import { cautionId, placeOn, type About } from '../about.ts';
import type { Asked, Spot } from '../asked.ts';
import type { Found } from '../caution.ts';
import { gap } from '../closest.ts';

/** What a size may be off, m: in plan and in height; of a guess the share of it. Common practice, no source. */
const MAPPED = { place: 0.5, height: 1 };
const GUESSED = 0.2;

interface Variant {
  readonly size: 'height' | 'place';
  readonly got: Exclude<Got, 'measured'>;
  readonly tolerance: number;
  readonly structures: readonly Structure[];
}

const heightGot = (one: Structure): Got =>
  one.kind === 'canopy' ? one.got.top : one.kind === 'vehicle' ? one.got.size : one.got.height;

const placeGot = (one: Structure): Got =>
  one.kind === 'barrier'
    ? one.got.line
    : one.kind === 'tree' || one.kind === 'vehicle'
      ? one.got.at
      : one.got.outline;

const withHeight = (one: Structure, by: number): Structure =>
  one.kind === 'canopy' ? { ...one, top: one.top + by } : { ...one, height: Math.max(0.05, one.height + by) };

function movedBy(one: Structure, [x, y]: Vec2): Structure {
  const move = (p: Vec2): Vec2 => [p[0] + x, p[1] + y];
  if (one.kind === 'barrier') return { ...one, line: one.line.map(move) };
  if (one.kind === 'tree' || one.kind === 'vehicle') return { ...one, at: move(one.at) };
  if (one.kind === 'building')
    return { ...one, outline: one.outline.map(move), holes: one.holes.map((hole) => hole.map(move)) };
  return { ...one, outline: one.outline.map(move) };
}

/** How a structure may stand whose sizes were not measured: taller, lower, moved each way. */
function variantsOf(one: Structure): readonly Variant[] {
  const variants: Variant[] = [];
  const high = heightGot(one);
  if (high !== 'measured') {
    const tolerance =
      high === 'mapped' ? MAPPED.height : GUESSED * (one.kind === 'canopy' ? one.top : one.height);
    variants.push({
      size: 'height',
      got: high,
      tolerance,
      structures: [withHeight(one, tolerance), withHeight(one, -tolerance)],
    });
  }
  const place = placeGot(one);
  if (place === 'mapped') {
    const d = MAPPED.place;
    const ways: readonly Vec2[] = [
      [d, 0],
      [-d, 0],
      [0, d],
      [0, -d],
    ];
    variants.push({
      size: 'place',
      got: place,
      tolerance: d,
      structures: ways.map((way) => movedBy(one, way)),
    });
  }
  return variants;
}

/** The spot in the middle of what is asked, and the two at its ends. */
const probes = ({ spots }: Asked): readonly Spot[] =>
  [...new Set([spots[spots.length >> 1], spots[0], spots.at(-1)])].flatMap((spot) => spot ?? []);

/**
 * Row 28: whether something is seen turns on a size that was mapped or guessed: with that size at either end of its tolerance a
 * sight line that is free is blocked, or one that is blocked is free. The structure that carries the camera is left out.
 */
export function* unmeasured(about: About): Generator<void, readonly Found[], void> {
  const { plan, camera, scene, set, asked } = about;
  const standing = new Set(scene.solids.map(({ structure }) => structure));
  const host = 'host' in set.mount ? set.mount.host : null;
  const found: Found[] = [];
  if (asked.length === 0) return found;
  for (const structure of Object.values(plan.structures)) {
    if (!standing.has(structure.id) || structure.id === host) continue;
    for (const { size, got, tolerance, structures } of variantsOf(structure)) {
      for (const one of asked) {
        const turns = probes(one).find((spot) => turnsOn(about, one, spot, structure, structures));
        if (turns === undefined || found.some(({ id }) => id === cautionId(28, structure.id, size))) continue;
        const solid = scene.solids.find((part) => part.structure === structure.id);
        found.push({
          id: cautionId(28, structure.id, size),
          severity: 'tight',
          weight: tolerance * (1 + 1 / gap(camera.eye, turns.at)),
          figures: {
            row: 28,
            requirement: one.requirement.name,
            thing: structure.name,
            size,
            got,
            tolerance,
          },
          places: solid === undefined ? [] : [placeOn(about, solid, turns.at)],
          thresholds: [],
        });
      }
      yield;
    }
  }
  return found;
}

/** Whether a sight line within the frame is free or not as a structure stands in one way or in another. */
function turnsOn(
  about: About,
  { seen }: Asked,
  spot: Spot,
  structure: Structure,
  ways: readonly Structure[],
): boolean {
  const { camera, scene } = about;
  const isSeen = seen.includes(spot);
  // A line that something else blocks stays blocked.
  if (
    !isSeen &&
    (spot.state.state !== 'hidden' || scene.solids[spot.state.hider ?? -1]?.structure !== structure.id)
  )
    return false;
  const others = () =>
    facetsOf(
      scene.solids.filter((one) => one.structure !== structure.id && one.passage === 'solid'),
      scene.closing,
    );
  return ways.some((way) => {
    const { solids } = solidsOf(way, scene.ground);
    const facets = facetsOf(
      solids.filter(({ passage }) => passage === 'solid'),
      scene.closing,
    );
    return (
      isFreeOf(facets, camera.eye, spot.at) !== isSeen && (isSeen || isFreeOf(others(), camera.eye, spot.at))
    );
  });
}

const isFreeOf = (facets: Facets, from: Vec3, to: Vec3): boolean =>
  new Segments(facets, treeOf(facets)).firstHit(from, to, 'solid') === null;
