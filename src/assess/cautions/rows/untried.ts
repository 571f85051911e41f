import type { Vec2, Vec3 } from '../../../base/vector.ts';
import { cornerAt, inRing } from '../../../model/ring.ts';
import { heading, rightOf, span } from '../../../model/segment.ts';
import type { Opening, Structure } from '../../../model/structure.ts';
import { inFrame } from '../../../optics/projection.ts';
import { cautionId, type About } from '../about.ts';
import type { CautionThing, Found } from '../caution.ts';

interface Drive {
  readonly name: string;
  readonly thing: CautionThing;
  /** Where a vehicle would stand, over ground. */
  readonly ring: readonly Vec2[];
}

const ringOf = (structure: Structure): readonly Vec2[] =>
  structure.kind === 'barrier' ? structure.line : 'outline' in structure ? structure.outline : [];

/** The ground before an opening, as wide as it and as long as a van. */
function before(structure: Structure, { face, along, width }: Opening, length: number): readonly Vec2[] {
  const corners = ringOf(structure);
  const [a, b] = [cornerAt(corners, face), cornerAt(corners, face + 1)];
  if (span(a, b) === 0) return [];
  const way = heading(a, b);
  const out = rightOf(way);
  const at = (s: number, o: number): Vec2 => [a[0] + way[0] * s + out[0] * o, a[1] + way[1] * s + out[1] * o];
  return [at(along, 0), at(along + width, 0), at(along + width, length), at(along, length)];
}

const openingsOf = (structure: Structure): readonly Opening[] =>
  'openings' in structure ? structure.openings : [];

/** Where vehicles stand: before doors and gates as wide as one, and on the sloped patches of the plan, which are drives. */
function drivesOf(about: About): readonly Drive[] {
  const { plan } = about;
  const [wide, length] = [about.limit('parking.door'), about.limit('parking.length')];
  const patches = plan.patchOrder.flatMap((id): Drive[] => {
    const patch = plan.patches[id];
    return patch === undefined
      ? []
      : [{ name: patch.name, thing: { kind: 'patch', id }, ring: patch.outline }];
  });
  const doors = Object.values(plan.structures).flatMap((one) =>
    openingsOf(one)
      .filter(({ kind, width, sill }) => kind !== 'window' && width >= wide && sill < 0.2)
      .map((opening): Drive => ({
        name: opening.name,
        thing: { kind: 'opening', id: opening.id, on: one.id },
        ring: before(one, opening, length),
      })),
  );
  return [...patches, ...doors];
}

const middleOf = (ring: readonly Vec2[]): Vec2 => [
  ring.reduce((sum, [x]) => sum + x, 0) / ring.length,
  ring.reduce((sum, [, y]) => sum + y, 0) / ring.length,
];

/** Row 26: nothing was parked where vehicles stand, or a door or gate in the picture was tried in one position only. */
export function untried(about: About): readonly Found[] {
  const { plan, camera, obstacles, groundAt, picture, scene } = about;
  const vehicles = Object.values(plan.structures).flatMap((one) => (one.kind === 'vehicle' ? [one.at] : []));
  const isSeen = (at: Vec3): boolean =>
    inFrame(camera, at) && obstacles.segments.firstHit(camera.eye, at, 'solid') === null;
  const parked = drivesOf(about).flatMap(({ name, thing, ring }): Found[] => {
    if (ring.length < 3 || vehicles.some((at) => inRing(at, ring))) return [];
    const middle = middleOf(ring);
    const at = [middle, ...ring]
      .map((place): Vec3 => [place[0], place[1], groundAt(place) + 0.02])
      .find(isSeen);
    if (at === undefined) return [];
    const id = 'id' in thing ? thing.id : 'site';
    return [
      {
        id: cautionId(26, 'parking', id),
        severity: 'tight',
        weight: 1,
        figures: { row: 26, what: 'parking', thing: name },
        places: [{ at, thing }],
        thresholds: ['parking.door', 'parking.length'],
      },
    ];
  });
  // A leaf is a solid of its own; a wall without thickness has none.
  const leaves = scene.solids.flatMap((solid, index): Found[] => {
    const structure = plan.structures[solid.structure];
    const opening = structure && openingsOf(structure).find(({ id }) => solid.id === `${structure.id}.${id}`);
    if (structure === undefined || opening === undefined || opening.kind === 'window') return [];
    const tried = new Set([
      opening.leaf,
      ...Object.values(plan.situations).map(({ leaves: set }) => set[opening.id] ?? opening.leaf),
    ]);
    const ray = picture.rays.find(({ thing, glass }) => thing === index || glass === index);
    if (tried.size > 1 || ray === undefined) return [];
    const at: Vec3 = [
      camera.eye[0] + ray.way[0] * Math.min(ray.far, ray.glassAt),
      camera.eye[1] + ray.way[1] * Math.min(ray.far, ray.glassAt),
      camera.eye[2] + ray.way[2] * Math.min(ray.far, ray.glassAt),
    ];
    return [
      {
        id: cautionId(26, 'leaf', opening.id),
        severity: 'tight',
        weight: 0.9,
        figures: { row: 26, what: 'leaf', thing: opening.name },
        places: [{ at, thing: { kind: 'opening', id: opening.id, on: structure.id } }],
        thresholds: [],
      },
    ];
  });
  return [...parked, ...leaves];
}
