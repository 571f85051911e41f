import type { Passage } from '../../model/passage.ts';
import type { Got, RoofKind, Tree } from '../../model/structure.ts';
import { setStructure } from '../../plan/commands/setStructure.ts';
import { setStructureSize } from '../../plan/commands/setStructureSize.ts';
import { withStructure } from '../../plan/commands/withStructure.ts';
import type { Editor } from '../editor.ts';
import { tryStep } from './changeSetting.ts';
import type { Plan } from '../../plan/plan.ts';

/** What a roof gets that had no pitch or upstand of its own yet; common practice, no source. */
const FIRST_PITCH = 35;
const FIRST_PARAPET = 0.3;

/** Gives a building another kind of roof, with a pitch or a parapet where it had none; `how` the roof is known by then. */
export function setRoofKind(plan: Plan, id: string, kind: RoofKind, how: Got = 'measured'): Plan {
  const structure = plan.structures[id];
  if (structure?.kind !== 'building') return plan;
  const { pitch, parapet } = structure.roof;
  const pitched = kind === 'gable' || kind === 'hip' || kind === 'monopitch';
  const roof = {
    kind,
    ...(pitched && pitch === 0 ? { pitch: FIRST_PITCH } : {}),
    ...(kind === 'parapet' && parapet === 0 ? { parapet: FIRST_PARAPET } : {}),
  };
  return setStructureSize(plan, id, { roof }, how);
}

/** What a barrier or a block lets through. */
export const setPassage = (plan: Plan, id: string, passage: Passage): Plan =>
  withStructure(plan, id, (structure) => {
    if (structure.kind !== 'barrier' && structure.kind !== 'block') return structure;
    return structure.passage === passage ? structure : { ...structure, passage };
  });

/** Whether a tree is drawn in leaf. */
export const setInLeaf = (editor: Editor, { id, name }: Tree, inLeaf: boolean): void =>
  tryStep(editor, `Leaves of ${name}`, (plan) => setStructure(plan, id, { inLeaf }));
