import type { Vec2 } from '../../base/vector.ts';
import type { Structure } from '../../model/structure.ts';
import type { Chain } from './reshaped.ts';

/** The outline or line of a structure; null for what has none. */
export function chainOf(structure: Structure): Chain | null {
  if ('outline' in structure) return { corners: structure.outline, closed: true };
  return structure.kind === 'barrier' ? { corners: structure.line, closed: structure.closed } : null;
}

/** A structure with other corners, and nothing else changed. */
export function withCorners(structure: Structure, corners: readonly Vec2[]): Structure {
  if ('outline' in structure) return { ...structure, outline: corners };
  return structure.kind === 'barrier' ? { ...structure, line: corners } : structure;
}
