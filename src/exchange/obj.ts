import type { Solid } from '../model/solid.ts';

/** Lines that are joined before they are handed on. */
const CHUNK = 4096;

/**
 * Ids for the groups of an OBJ file, one a solid, in their order: without blanks or other marks, each once. `hidden_by`
 * of the cells names the same.
 */
export function objIds(solids: readonly Pick<Solid, 'id'>[]): readonly string[] {
  const taken = new Set<string>();
  return solids.map(({ id }) => {
    const plain = id.replace(/[^\p{L}\p{N}._-]/gu, '_') || '_';
    let free = plain;
    for (let number = 2; taken.has(free); number += 1) free = `${plain}_${number}`;
    taken.add(free);
    return free;
  });
}

/**
 * Solids as Wavefront OBJ, in pieces of text: a line `g ID PASSAGE` a solid, its corners (m, site frame: x east,
 * y north, z up) at full precision, its triangles counter-clockwise seen from outside.
 */
export function* objText(solids: readonly Solid[]): Generator<string, void> {
  yield '# Soffit: site frame, x east, y north, z up, metres. g ID PASSAGE (solid, screen or clear)\n';
  const ids = objIds(solids);
  let first = 1;
  for (const [index, { passage, positions, triangles }] of solids.entries()) {
    const lines = [`g ${ids[index] ?? ''} ${passage}`];
    for (let at = 0; at < positions.length; at += 3)
      lines.push(`v ${positions[at] ?? 0} ${positions[at + 1] ?? 0} ${positions[at + 2] ?? 0}`);
    for (let at = 0; at < triangles.length; at += 3)
      lines.push(
        `f ${first + (triangles[at] ?? 0)} ${first + (triangles[at + 1] ?? 0)} ${first + (triangles[at + 2] ?? 0)}`,
      );
    first += positions.length / 3;
    for (let at = 0; at < lines.length; at += CHUNK) yield `${lines.slice(at, at + CHUNK).join('\n')}\n`;
  }
}
