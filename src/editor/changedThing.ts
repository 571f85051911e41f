import type { Structure } from '../model/structure.ts';
import type { Plan } from '../plan/plan.ts';
import type { Selected } from './editor.ts';

/**
 * The things that a step changed, for the selection; only those that it brought back where there are such, since what
 * was deleted takes others with it. Empty where it changed none, or took them away.
 */
export function whatChanged(before: Plan, after: Plan): readonly Selected[] {
  const changed = [
    ...changedKeys(before.structures, after.structures).map(({ key: id, isNew }) => ({
      isNew,
      thing:
        withinStructure(before.structures[id], after.structures[id]) ?? ({ kind: 'structure', id } as const),
    })),
    ...ofKind('camera', before.cameras, after.cameras),
    ...ofKind('lamp', before.lamps, after.lamps),
    ...ofKind('patch', before.patches, after.patches),
    ...ofKind('situation', before.situations, after.situations),
  ];
  const back = changed.filter(({ isNew }) => isNew);
  const things = (back.length > 0 ? back : changed).map(({ thing }) => thing);
  if (things.length > 0) return things;
  if (before.boundary !== after.boundary && after.boundary) return [{ kind: 'boundary' }];
  return before.ground !== after.ground ? [{ kind: 'ground' }] : [];
}

type Records = Readonly<Record<string, unknown>>;

const ofKind = <K extends 'camera' | 'lamp' | 'patch' | 'situation'>(
  kind: K,
  before: Records,
  after: Records,
): { isNew: boolean; thing: { kind: K; id: string } }[] =>
  changedKeys(before, after).map(({ key: id, isNew }) => ({ isNew, thing: { kind, id } }));

function changedKeys(before: Records, after: Records): { readonly key: string; readonly isNew: boolean }[] {
  if (before === after) return [];
  return Object.keys(after).flatMap((key) =>
    Object.hasOwn(before, key) && before[key] === after[key]
      ? []
      : [{ key, isNew: !Object.hasOwn(before, key) }],
  );
}

/** The one opening in which two states of a structure differ; null where more differs. */
function withinStructure(before: Structure | undefined, after: Structure | undefined): Selected | null {
  if (!before || !after || !('openings' in before) || !('openings' in after)) return null;
  const isSameElse = Object.entries(after).every(
    ([key, value]: [string, unknown]) => key === 'openings' || Reflect.get(before, key) === value,
  );
  const changed = after.openings.filter((opening) => !before.openings.includes(opening));
  const [only] = changed;
  return isSameElse && only && changed.length === 1 ? { kind: 'opening', id: only.id, on: after.id } : null;
}
