import type { Fault } from '../../base/fault.ts';
import type { Vec2 } from '../../base/vector.ts';
import type { Structure } from '../../model/structure.ts';
import type { Mount } from '../../optics/mount.ts';
import { idStem } from '../commands/addStructure.ts';
import { freshId, takenIds } from '../commands/freshId.ts';
import { freshName, takenNames } from '../commands/freshName.ts';
import type { Movable } from '../commands/thing.ts';
import { slideBy } from '../motion/motion.ts';
import { movedThings } from '../motion/movedThings.ts';
import type { Picture, Plan } from '../plan.ts';
import { thingsOf, type Bundle } from './bundle.ts';

/** What came of putting a bundle into a plan. */
export interface PutIn {
  readonly plan: Plan;
  /** The things as they are in the plan now, in the bundle's order. */
  readonly things: readonly Movable[];
  readonly notes: readonly Fault[];
}

interface Owned {
  readonly id: string;
  readonly name: string;
}

/**
 * Puts a bundle into a plan, moved so far, m, last in order. Everything gets a free id and a free name. A camera whose
 * structure does not come along is left loose at its eye; without one it is left out, with a note.
 */
export function putIn(plan: Plan, bundle: Bundle, by: Vec2): PutIn {
  const notes: Fault[] = [];
  const ids = new Map<string, string>();
  const takenNow = takenIds(plan);
  const namesNow = takenNames(plan);
  const claimId = (kind: string, id: string, stem: string, isWhole = false): string => {
    const free = isWhole ? stem : takenNow.has(id) ? freshId(takenNow, stem) : id;
    takenNow.add(free);
    ids.set(`${kind} ${id}`, free);
    return free;
  };
  const owned = <T extends Owned>(kind: string, thing: T): T => {
    const name = freshName(thing.name, namesNow);
    namesNow.add(name);
    // Cameras and lamps go by their names: C3 is "C3".
    const isNamed = thing.id === thing.name && !takenNow.has(name);
    return { ...thing, id: claimId(kind, thing.id, isNamed ? name : idStem(name), isNamed), name };
  };
  // Openings and points keep their names: they are called after their structure.
  const part = <T extends Owned>(thing: T): T => ({
    ...thing,
    id: claimId('part', thing.id, idStem(thing.name)),
  });

  const from = movedThings(bundle.plan, thingsOf(bundle), slideBy(by));
  const structures = listed(from.structures, from.structureOrder).map((structure): Structure => {
    const next = owned<Structure>('structure', structure);
    if (next.kind === 'barrier') return { ...next, openings: next.openings.map(part) };
    if (next.kind !== 'building') return next;
    return { ...next, openings: next.openings.map(part), services: next.services.map(part) };
  });
  const patches = listed(from.patches, from.patchOrder).map((patch) => owned('patch', patch));
  const lamps = listed(from.lamps, from.lampOrder).map((lamp) => owned('lamp', lamp));
  const cameras = listed(from.cameras, from.cameraOrder).flatMap((camera) => {
    const mount = mountIn(camera.mount, ids, bundle.eyes[camera.id], by);
    if (mount) return [owned('camera', { ...camera, mount })];
    notes.push({ code: 'clip.cameraLeft', path: [], subject: camera.name });
    return [];
  });
  const pictures = listed(from.pictures, from.pictureOrder).flatMap((picture): Picture[] => {
    const { use } = picture;
    if (use.kind !== 'wall') return [owned('picture', picture)];
    const structure =
      ids.get(`structure ${use.structure}`) ??
      (Object.hasOwn(plan.structures, use.structure) ? use.structure : null);
    return structure === null ? [] : [owned('picture', { ...picture, use: { ...use, structure } })];
  });
  const groups = listed(from.groups, from.groupOrder).flatMap((group) => {
    const members = group.members.flatMap(
      (id) => ids.get(`structure ${id}`) ?? ids.get(`camera ${id}`) ?? ids.get(`lamp ${id}`) ?? [],
    );
    return members.length === 0 ? [] : [{ ...owned('group', group), members }];
  });
  const credits = from.credits.filter((credit) => !plan.credits.includes(credit));
  const next: Plan = {
    ...plan,
    ...withAll(plan.structures, plan.structureOrder, structures, 'structures', 'structureOrder'),
    ...withAll(plan.patches, plan.patchOrder, patches, 'patches', 'patchOrder'),
    ...withAll(plan.lamps, plan.lampOrder, lamps, 'lamps', 'lampOrder'),
    ...withAll(plan.cameras, plan.cameraOrder, cameras, 'cameras', 'cameraOrder'),
    ...withAll(plan.pictures, plan.pictureOrder, pictures, 'pictures', 'pictureOrder'),
    ...withAll(plan.groups, plan.groupOrder, groups, 'groups', 'groupOrder'),
    credits: credits.length > 0 && structures.length > 0 ? [...plan.credits, ...credits] : plan.credits,
  };
  const things = thingsOf(bundle).flatMap((thing): Movable[] => {
    const id = thing.kind === 'boundary' ? undefined : ids.get(`${thing.kind} ${thing.id}`);
    return id === undefined || thing.kind === 'boundary' ? [] : [{ kind: thing.kind, id }];
  });
  return { plan: next, things, notes };
}

/** A camera's mount in another plan; null where nothing there holds it and it is not known where it was. */
function mountIn(
  mount: Mount,
  ids: ReadonlyMap<string, string>,
  eye: readonly [number, number, number] | undefined,
  by: Vec2,
): Mount | null {
  if (!('host' in mount)) return mount;
  const host = ids.get(`structure ${mount.host}`);
  if (host !== undefined) return { ...mount, host };
  return eye ? { kind: 'loose', eye: [eye[0] + by[0], eye[1] + by[1], eye[2]] } : null;
}

const listed = <T>(records: Readonly<Record<string, T>>, order: readonly string[]): readonly T[] =>
  order.flatMap((id) => (Object.hasOwn(records, id) ? (records[id] ?? []) : []));

/** Records and their order with some more; nothing where there are none more. */
const withAll = <T extends Owned, R extends string, O extends string>(
  records: Readonly<Record<string, T>>,
  order: readonly string[],
  more: readonly T[],
  field: R,
  list: O,
): object =>
  more.length === 0
    ? {}
    : {
        [field]: { ...records, ...Object.fromEntries(more.map((thing) => [thing.id, thing])) },
        [list]: [...order, ...more.map(({ id }) => id)],
      };
