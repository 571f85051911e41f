import { wallSurfaces } from '../../model/surface.ts';
import type { Structure } from '../../model/structure.ts';
import type { EditorState } from '../editor.ts';

/**
 * The wall that is meant: the one whose coverage is asked for, else the first of the selected structure; null where there
 * is none.
 */
export function wallAsked({ plan, selected, target }: Pick<EditorState, 'plan' | 'selected' | 'target'>): {
  readonly structure: string;
  readonly face: number;
} | null {
  const chosen = selected?.kind === 'structure' ? selected.id : null;
  if (target.kind === 'surface' && target.surface.of === 'wall') {
    const { structure, face } = target.surface;
    if (chosen === null || chosen === structure) return { structure, face };
  }
  const structure = chosen === null ? undefined : plan.structures[chosen];
  const [first] = structure ? wallSurfaces(structure) : [];
  return first ? { structure: first.owner, face: first.face } : null;
}

/** The walls of a structure that a photo can be put onto. */
export const wallsOf = (structure: Structure): readonly { readonly name: string; readonly face: number }[] =>
  wallSurfaces(structure).map(({ name, face }) => ({ name, face }));
