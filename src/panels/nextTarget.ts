import type { Target } from '../coverage/target.ts';

/** The target that the key for the next height asks for: ground, plate, face, and round again. */
export function nextTarget(
  { kind }: Target,
  { plateHeight, faceHeight }: { readonly plateHeight: number; readonly faceHeight: number },
): Target {
  if (kind === 'ground') return { kind: 'plate', height: plateHeight };
  return kind === 'plate' ? { kind: 'face', height: faceHeight } : { kind: 'ground', height: 0 };
}
