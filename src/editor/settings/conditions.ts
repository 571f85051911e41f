import { addSituation, newSituation } from '../../plan/commands/addSituation.ts';
import { setSituation, type SituationChange } from '../../plan/commands/setSituation.ts';
import type { Leaf, Structure } from '../../model/structure.ts';
import type { Plan, Situation } from '../../plan/plan.ts';
import { asDrawn } from '../../plan/situations.ts';
import type { Editor } from '../editor.ts';

/** Puts conditions of a name into the plan, by night or else as drawn; their id. */
export function addConditions(editor: Editor, name: string, night: boolean): string {
  const { plan } = editor.store.getState();
  const taken = new Set(Object.values(plan.situations).map((one) => one.name));
  let free = name;
  for (let next = 2; taken.has(free); next += 1) free = `${name} ${next}`;
  const added = { ...newSituation(plan, free), night };
  editor.run(`Add ${free}`, (now) => addSituation(now, added));
  return added.id;
}

/** The conditions that a plan has besides the drawing itself, in its order. */
export const conditionsOf = ({ situations, situationOrder }: Plan): readonly Situation[] =>
  situationOrder.flatMap((id) => (id === asDrawn.id ? [] : (situations[id] ?? [])));

/** One step of history that changes conditions. */
export const changeConditions = (editor: Editor, { id, name }: Situation, what: SituationChange): void =>
  editor.run(`Change ${name}`, (plan) => setSituation(plan, id, what));

/** An opening whose leaf may stand in another way than it is drawn. */
export interface LeafChoice {
  readonly opening: string;
  /** "House: back door" */
  readonly label: string;
  readonly drawn: Leaf;
}

/** The openings that have leaves: gates, and those in buildings with walls of a thickness. A block has only recesses. */
export const leavesOf = ({ structures, structureOrder }: Plan): readonly LeafChoice[] =>
  structureOrder
    .flatMap((id) => structures[id] ?? [])
    .filter(hasLeaves)
    .flatMap(({ name, openings }) =>
      openings
        .filter(({ kind }) => kind !== 'archway')
        .map(({ id, name: own, leaf }) => ({ opening: id, label: `${name}: ${own}`, drawn: leaf })),
    );

const hasLeaves = (structure: Structure): structure is Extract<Structure, { kind: 'building' | 'barrier' }> =>
  structure.kind === 'barrier' || (structure.kind === 'building' && structure.wallThickness !== null);

/** What differs from the drawing, in a few words: "night, 2 away". */
export function conditionsText({ night, away, leaves, treesInLeaf }: Situation): string {
  const stands = Object.keys(leaves).length;
  const parts = [
    ...(night ? ['night'] : []),
    ...(treesInLeaf === null ? [] : [treesInLeaf ? 'in leaf' : 'bare']),
    ...(away.length > 0 ? [`${away.length} away`] : []),
    ...(stands > 0 ? [`${stands} ${stands === 1 ? 'leaf' : 'leaves'} moved`] : []),
  ];
  return parts.length === 0 ? 'as drawn' : parts.join(', ');
}
