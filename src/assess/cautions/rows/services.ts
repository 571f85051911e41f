import { tan } from '../../../base/angle.ts';
import type { Vec3 } from '../../../base/vector.ts';
import { cautionId, stopId, type About } from '../about.ts';
import type { CautionThing, Found } from '../caution.ts';
import type { FiguresOf } from '../figures.ts';
import type { WallSpot } from '../wallSpot.ts';
import { gap } from '../closest.ts';

/** Where the hole is on either side of its wall, above the base: it rises inwards. */
function heightsOf(about: About, wall: WallSpot): { readonly outside: number; readonly inside: number } {
  const rise = (wall.thickness ?? 0) * tan(about.limit('cable.fall'));
  return { outside: wall.height, inside: wall.height + rise };
}

/**
 * Row 32: the hole lies where cables and pipes often run: straight up, down or across from a point on the wall, near the top
 * of the wall inside or a corner of two walls, or close to a meter. The nearest of each kind is told.
 */
export function services(about: About): readonly Found[] {
  const { wall } = about;
  if (wall === null) return [];
  const [band, meter] = [about.limit('services.band'), about.limit('services.meter')];
  const { outside, inside } = heightsOf(about, wall);
  const found: Found[] = [];
  const say = (
    what: FiguresOf<32>['what'],
    thing: string,
    distance: number,
    at: Vec3,
    concerned: CautionThing | null,
  ) => {
    const limit = what === 'meter' ? 'services.meter' : 'services.band';
    found.push({
      id: stopId(32, `${what}-${thing}`, wall.hole),
      severity: 'stop',
      weight: about.limit(limit) / Math.max(0.01, distance),
      figures: { row: 32, what, thing, distance },
      places: [{ at, thing: concerned }],
      thresholds: [limit],
    });
  };
  for (const service of wall.services) {
    const height = service.inside ? inside : outside;
    const [across, up] = [Math.abs(service.along - wall.along), Math.abs(service.height - height)];
    const concerned: CautionThing = { kind: 'service', id: service.id, on: wall.structure.id };
    const at = wall.at(service.along, service.height);
    if (service.kind === 'meter' && Math.hypot(across, up) < meter)
      say('meter', service.name, Math.hypot(across, up), at, concerned);
    else if (Math.min(across, up) < band) say('line', service.name, Math.min(across, up), at, concerned);
  }
  const nothing: CautionThing = { kind: 'structure', id: wall.structure.id };
  if (wall.structure.kind !== 'building') return found;
  for (const top of topsOf(wall)) {
    const off = Math.abs(top.height - inside);
    if (off < band) say('top', top.name, off, wall.at(wall.along, top.height), nothing);
  }
  // The corner of two walls lies inside, a wall's thickness from the outer one.
  const inset = wall.thickness ?? 0;
  const [left, right] = [wall.along - inset, wall.length - inset - wall.along];
  if (Math.min(left, right) < band)
    say(
      'corner',
      'corner',
      Math.max(0, Math.min(left, right)),
      wall.at(left < right ? 0 : wall.length, wall.height),
      nothing,
    );
  return found;
}

/** The tops of a wall inside: the ceilings of its floors; without floors the top that is built. */
function topsOf({ structure, top }: WallSpot): readonly { readonly name: string; readonly height: number }[] {
  const floors = structure.kind === 'building' ? structure.floors : [];
  if (floors.length === 0) return [{ name: 'top of the wall', height: top }];
  return floors.map(({ name, level, ceiling }) => ({ name: `ceiling of ${name}`, height: level + ceiling }));
}

/** Row 36: a flue near the lens, below or beside it. */
export function flue(about: About): readonly Found[] {
  const { plan, camera } = about;
  const near = about.limit('flue.near');
  return Object.values(plan.structures).flatMap((structure) => {
    if (structure.kind !== 'building') return [];
    return structure.services.flatMap((service): Found[] => {
      if (service.kind !== 'flue' || service.inside) return [];
      const { outline, base } = structure;
      const [a, b] = [outline[service.face], outline[(service.face + 1) % outline.length]];
      if (a === undefined || b === undefined) return [];
      const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
      const share = size === 0 ? 0 : service.along / size;
      const at: Vec3 = [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share, base + service.height];
      const distance = gap(camera.eye, at);
      // Steam rises: a flue well above the lens does no harm.
      if (distance >= near || at[2] > camera.eye[2] + BESIDE) return [];
      return [
        {
          id: cautionId(36, service.id),
          severity: 'tell',
          weight: near / Math.max(0.05, distance),
          figures: { row: 36, thing: service.name, distance },
          places: [{ at, thing: { kind: 'service', id: service.id, on: structure.id } }],
          thresholds: ['flue.near'],
        },
      ];
    });
  });
}

/** A flue no higher than this above the lens is beside it, m. Common practice, no source. */
const BESIDE = 0.2;
