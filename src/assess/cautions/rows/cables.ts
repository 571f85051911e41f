import type { Vec2 } from '../../../base/vector.ts';
import { cornerAt, inRing, signedArea } from '../../../model/ring.ts';
import { distanceToSegment } from '../../../model/segment.ts';
import type { Building } from '../../../model/structure.ts';
import { cautionId, placeOfCamera, type About } from '../about.ts';
import type { Found } from '../caution.ts';
import type { FiguresOf } from '../figures.ts';

/** Footprints nearer to one another than this are one building, m. */
const ADJOINS = 0.3;

const distanceToRing = (point: Vec2, ring: readonly Vec2[]): number =>
  inRing(point, ring)
    ? 0
    : Math.min(...ring.map((corner, k) => distanceToSegment(point, corner, cornerAt(ring, k + 1))));

const adjoin = (one: readonly Vec2[], two: readonly Vec2[]): boolean =>
  one.some((corner) => distanceToRing(corner, two) < ADJOINS) ||
  two.some((corner) => distanceToRing(corner, one) < ADJOINS);

interface Lot {
  readonly building: Building;
  /** Least and greatest x and y of its outline. */
  readonly box: readonly [number, number, number, number];
}

const lotOf = (building: Building): Lot => {
  const [xs, ys] = [building.outline.map(([x]) => x), building.outline.map(([, y]) => y)];
  return { building, box: [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)] };
};

/** Most buildings of a town are told apart by their boxes. */
const boxesNear = ({ box: a }: Lot, { box: b }: Lot): boolean =>
  a[0] < b[2] + ADJOINS && b[0] < a[2] + ADJOINS && a[1] < b[3] + ADJOINS && b[1] < a[3] + ADJOINS;

/** The building that is taken to hold the recorder, the largest, with all that adjoin it. */
function mainBuilding({ plan }: Pick<About, 'plan'>): readonly Building[] {
  const buildings = plan.structureOrder.flatMap((id): Building[] => {
    const one = plan.structures[id];
    return one?.kind === 'building' ? [one] : [];
  });
  const size = ({ outline }: Building) => Math.abs(signedArea(outline));
  const [first] = buildings.toSorted((one, two) => size(two) - size(one));
  if (first === undefined) return [];
  let apart = buildings.filter((one) => one !== first).map(lotOf);
  const joined = [lotOf(first)];
  for (let at = 0; at < joined.length; at += 1) {
    const here = joined[at];
    if (here === undefined) break;
    const near = apart.filter(
      (one) => boxesNear(one, here) && adjoin(one.building.outline, here.building.outline),
    );
    apart = apart.filter((one) => !near.includes(one));
    joined.push(...near);
  }
  return joined.map(({ building }) => building);
}

/**
 * Row 38: a copper data cable to another building, a post, or a wall or fence that stands apart. Where the recorder is the plan
 * does not say: it is taken to be in the largest building.
 */
export function otherEarth(about: About): readonly Found[] {
  const { plan, set, fixing, camera } = about;
  const main = mainBuilding(about);
  const [largest] = main;
  const { mount } = set;
  if (largest === undefined || mount.kind === 'loose') return [];
  const at = fixing.hole ?? camera.eye;
  const distance = Math.min(...main.map(({ outline }) => distanceToRing([at[0], at[1]], outline)));
  const host = 'host' in mount ? plan.structures[mount.host] : undefined;
  const why: FiguresOf<38>['why'] | null =
    mount.kind === 'pole'
      ? 'pole'
      : host?.kind === 'barrier'
        ? 'gate'
        : host !== undefined && !main.some(({ id }) => id === host.id) && distance >= ADJOINS
          ? 'building'
          : null;
  if (why === null) return [];
  return [
    {
      id: cautionId(38),
      severity: 'tight',
      weight: 1 + distance / 30,
      figures: { row: 38, why, thing: host?.name ?? set.name, distance },
      places: [
        host === undefined ? placeOfCamera(about, at) : { at, thing: { kind: 'structure', id: host.id } },
      ],
      thresholds: [],
    },
  ];
}

/**
 * Power that a supply reserves for each class of device, W. Source: facts W1 (IEEE 802.3af, at, bt, from a reference table in
 * a network-equipment manual).
 */
const RESERVED = [15.4, 4, 7, 15.4, 30, 45, 60, 75, 90] as const;

/** Row 39: the power that all cameras reserve leaves too little of the budget. Nothing without a budget. */
export function power(about: About): readonly Found[] {
  const { plan, set, camera } = about;
  const budget = about.limit('power.budget');
  if (!(budget > 0) || set.sheet.powerClass === null) return [];
  const reserved = Object.values(plan.cameras).reduce(
    (sum, { sheet }) => sum + (sheet.powerClass === null ? 0 : (RESERVED[sheet.powerClass] ?? 0)),
    0,
  );
  const spare = budget - reserved;
  const least = about.limit('power.spare');
  if (spare >= least * budget) return [];
  return [
    {
      id: cautionId(39),
      severity: 'tight',
      weight: 1 + (least * budget - spare) / budget,
      figures: { row: 39, reserved, budget, spare },
      places: [placeOfCamera(about, camera.eye)],
      thresholds: ['power.budget', 'power.spare'],
    },
  ];
}
