import type { HostFace } from '../../../model/face.ts';
import type { Structure } from '../../../model/structure.ts';
import { windOf } from '../../../model/wind.ts';

/** What the two ends of a face are called: "west" and "east" on a south wall. */
export function cornerNames({ along: [x, y] }: Pick<HostFace, 'along'>): {
  readonly start: string;
  readonly end: string;
} {
  return { start: windOf([-x, -y]), end: windOf([x, y]) };
}

/** A wall of a house ends in corners; a fence, which may stand alone, has ends. */
export const endWord = ({ kind }: Pick<Structure, 'kind'>): string => (kind === 'barrier' ? 'end' : 'corner');
