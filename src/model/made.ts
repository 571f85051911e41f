import type { Fault } from '../base/fault.ts';
import { modelFault } from './modelFault.ts';
import type { Passage } from './passage.ts';
import type { Mesh } from './shell.ts';
import type { Solid } from './solid.ts';
import type { Structure } from './structure.ts';

/** What a structure became: its solids, and what could not be made as drawn. */
export interface Made {
  readonly solids: readonly Solid[];
  readonly faults: readonly Fault[];
}

/** The solid of a structure, or of a part of it (`id.part`, "Name, part"). */
function solidFrom(
  structure: Structure,
  mesh: Mesh,
  passage: Passage,
  part: { readonly id: string; readonly name: string } | null = null,
): Solid {
  return {
    id: part ? `${structure.id}.${part.id}` : structure.id,
    structure: structure.id,
    name: part ? `${structure.name}, ${part.name}` : structure.name,
    passage,
    ...mesh,
  };
}

/** One solid from a mesh; a fault and nothing in its place when the mesh did not close. */
export function madeOf(
  structure: Structure,
  mesh: Mesh | null,
  passage: Passage,
  faults: readonly Fault[] = [],
  part: { readonly id: string; readonly name: string } | null = null,
): Made {
  if (!mesh) return { solids: [], faults: [...faults, modelFault('solid.open', structure.name, [])] };
  return { solids: [solidFrom(structure, mesh, passage, part)], faults };
}

export const unmade = (faults: readonly Fault[]): Made => ({ solids: [], faults });

export const joinMade = (parts: readonly Made[]): Made => ({
  solids: parts.flatMap(({ solids }) => solids),
  faults: parts.flatMap(({ faults }) => faults),
});
