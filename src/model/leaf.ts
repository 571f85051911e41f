import type { Vec2 } from '../base/vector.ts';
import { madeOf, type Made } from './made.ts';
import type { Passage } from './passage.ts';
import { prism } from './prism.ts';
import { leftOf, moved } from './segment.ts';
import type { Mesh } from './shell.ts';
import type { Opening, Structure } from './structure.ts';

/** Thickness of a leaf, m. */
export const LEAF = 0.05;

/** Where a leaf hangs: foot of its first jamb, direction to the other jamb, its width and heights above z = 0. */
export interface LeafPlace {
  readonly hinge: Vec2;
  readonly along: Vec2;
  readonly width: number;
  readonly foot: number;
  readonly head: number;
  /** Thickness, centred on the line from the hinge. */
  readonly thickness: number;
}

/** What a leaf lets through: glass by its name, else what the opening says. */
const leafPassage = (opening: Opening): Passage => (opening.leaf === 'glazed' ? 'clear' : opening.passage);

/** The solid of a leaf across its opening. */
export function shutLeaf(structure: Structure, opening: Opening, place: LeafPlace): Made {
  const end = moved(place.hinge, place.along, place.width);
  const out = leftOf(place.along);
  const half = place.thickness / 2;
  const ring = [
    moved(place.hinge, out, -half),
    moved(end, out, -half),
    moved(end, out, half),
    moved(place.hinge, out, half),
  ];
  return leafOf(structure, opening, ring, place, out);
}

/** The solid of a leaf swung a quarter turn to the left about its first jamb. */
export function openLeaf(structure: Structure, opening: Opening, place: LeafPlace): Made {
  const tip = moved(place.hinge, leftOf(place.along), place.width);
  const ring = [
    place.hinge,
    moved(place.hinge, place.along, place.thickness),
    moved(tip, place.along, place.thickness),
    tip,
  ];
  return leafOf(structure, opening, ring, place, place.along);
}

function leafOf(
  structure: Structure,
  opening: Opening,
  ring: readonly Vec2[],
  place: LeafPlace,
  normal: Vec2,
): Made {
  const mesh = prism([ring], place.foot, place.head);
  const passage = leafPassage(opening);
  const made = mesh && passage === 'screen' ? { ...mesh, sheets: oneSheet(mesh, normal) } : mesh;
  return madeOf(structure, made, passage, [], { id: opening.id, name: opening.name });
}

function oneSheet({ triangles }: Mesh, normal: Vec2): Float64Array {
  const sheets = new Float64Array(triangles.length);
  for (let at = 0; at < sheets.length; at += 3) sheets.set(normal, at);
  return sheets;
}
