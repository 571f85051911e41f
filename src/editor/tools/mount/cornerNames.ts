import type { HostFace } from '../../../model/face.ts';
import { windOf } from '../../../model/wind.ts';

/** What the two ends of a face are called: "west" and "east" on a south wall. */
export function cornerNames({ along: [x, y] }: Pick<HostFace, 'along'>): {
  readonly start: string;
  readonly end: string;
} {
  return { start: windOf([-x, -y]), end: windOf([x, y]) };
}
