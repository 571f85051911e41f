import { accept, refuse, type Fault, type Outcome } from '../../base/fault.ts';
import type { Found } from '../../plan/commands/addStructures.ts';
import type { Geographic } from '../../plan/plan.ts';
import { Tally, type ImportReport } from '../report.ts';
import type { Step } from '../../assess/step.ts';
import { collectionOf } from './collection.ts';
import { creditsOf } from './credits.ts';
import { readFeature, type Feature } from './feature.ts';
import { Maker } from './maker.ts';
import { PlaceBox } from './place.ts';
import { isFromMap, isTagged, positionsOf, roleOf, type Item } from './sorting.ts';

/** Features between two looks at whether the job was called off. */
const STRIDE = 200;

/** The most features that are refused by name; the report counts them all. */
const NOTES = 50;

/** What an import found, and what became of the rest. */
export interface Imported extends Found {
  readonly report: ImportReport;
}

/**
 * Structures from parsed GeoJSON of building footprints, in steps between which the job can be called off.
 * @param origin where the site frame lies: null takes the centre of the buildings' box
 * @returns structures in the site frame and the report; notes name each feature that was refused
 */
export function* importGeojson(
  document: unknown,
  origin: Geographic | null = null,
): Generator<Step, Outcome<Imported>, void> {
  const collection = collectionOf(document);
  if (!collection.ok) return collection;
  const { features: raw, head } = collection.value;
  const left = new Tally();

  const features: Feature[] = [];
  for (const [index, value] of raw.entries()) {
    const feature = readFeature(value);
    if (feature) features.push(feature);
    else left.add('left.unreadable', `feature ${index + 1}`);
    if (index % STRIDE === STRIDE - 1) yield { share: (0.3 * index) / raw.length, doing: 'Reading features' };
  }

  const fromMap = features.some(isFromMap);
  const plain = !fromMap && !features.some(isTagged);
  const items = itemsOf(features, plain, left);
  const footprints = items.filter(({ role }) => role === 'building' || role === 'part');
  const solid = items.filter(({ role }) => role !== 'tree');
  if (solid.length === 0) return refuse(nothingFault(features, raw.length));
  yield { share: 0.3, doing: 'Finding the site' };
  const placed = placedItems(items, footprints.length > 0 ? footprints : solid, origin);
  if (!placed.ok) return placed;
  for (const { feature } of placed.value.astray) left.add('left.notOnEarth', feature.id ?? undefined);

  const maker = new Maker(placed.value.origin, left);
  const steps = maker.make(placed.value.items, plain);
  for (let at = 0; ; at += 1) {
    const { done, value } = steps.next();
    if (done) break;
    if (at % STRIDE === STRIDE - 1) yield { share: 0.35 + 0.65 * value, doing: 'Building structures' };
  }
  const { structures, faults, taken, assumed } = maker;
  if (structures.length === 0) return refuse(...faults.slice(0, NOTES));
  const report = { taken: taken.report(), left: left.report(), assumed: assumed.report() };
  return accept(
    { structures, origin: placed.value.origin, credits: creditsOf(head, fromMap), report },
    faults.slice(0, NOTES),
  );
}

/** Every drawn piece that becomes something; what does not is counted. */
function itemsOf(features: readonly Feature[], plain: boolean, left: Tally): readonly Item[] {
  return features.flatMap((feature) => {
    if (feature.drawn.length === 0) left.add('left.noGeometry', feature.id ?? undefined);
    return feature.drawn.flatMap((drawn) => {
      const role = roleOf(feature, drawn, plain);
      if (typeof role === 'string') return [{ feature, drawn, role }];
      left.add(role.left);
      return [];
    });
  });
}

function nothingFault(features: readonly Feature[], count: number): Fault {
  const drawn = features.flatMap((feature) => feature.drawn);
  if (drawn.length === 0) return { code: 'geojson.unreadable', path: ['features'], given: count };
  if (drawn.every(({ kind }) => kind === 'point'))
    return { code: 'geojson.pointsOnly', path: ['features'], given: drawn.length };
  return { code: 'geojson.noBuildings', path: ['features'], given: drawn.length };
}

interface Placed {
  readonly origin: Geographic;
  readonly items: readonly Item[];
  readonly astray: readonly Item[];
}

/** The origin, and the items that lie on Earth. */
function placedItems(
  items: readonly Item[],
  about: readonly Item[],
  given: Geographic | null,
): Outcome<Placed> {
  const box = new PlaceBox();
  const onEarth = new Set(about.filter(({ drawn }) => box.add(positionsOf(drawn))));
  if (onEarth.size === 0) {
    const sample = about.flatMap(({ drawn }) => positionsOf(drawn))[0];
    return refuse({ code: 'geojson.projected', path: ['features'], given: sample?.slice(0, 2).join(', ') });
  }
  const centre = box.centre();
  if (!centre.ok) return centre;
  const among = new Set(about);
  const lies = (item: Item): boolean =>
    among.has(item) ? onEarth.has(item) : new PlaceBox().add(positionsOf(item.drawn));
  const origin = given ?? centre.value;
  return accept({ origin, items: items.filter(lies), astray: items.filter((item) => !lies(item)) });
}
