import type { Ground } from '../assess/ground.ts';
import type { Found } from '../assess/shares.ts';
import type { SentCells } from '../coverage/judgedCells.ts';

/** An answer with the buffers that go over to whoever asked. */
export interface Sendable {
  readonly answer: unknown;
  readonly transfer: readonly Transferable[];
}

/** An answer that is copied as it is sent. */
export const copied = (answer: unknown): Sendable => ({ answer, transfer: [] });

/**
 * What a session found, with copies of its large arrays that go over without being copied again in the window. The session
 * keeps its own: it carries them on.
 */
export function sendableFound(found: Found): Sendable {
  const transfer: Transferable[] = [];
  const own = <T extends Uint8Array | Int32Array | Float32Array>(array: T): T => {
    const copy = structuredClone(array);
    transfer.push(copy.buffer);
    return copy;
  };
  const cells = ({ rows, runs, faces }: SentCells): SentCells => ({
    rows: own(rows),
    runs: { starts: own(runs.starts), list: own(runs.list) },
    faces,
  });
  const ground = (one: Ground): Ground => ({
    ...one,
    bare: own(one.bare),
    counted: own(one.counted),
    within: { ...one.within, mask: own(one.within.mask) },
  });
  const answer: Found = {
    laid: found.laid && { scene: found.laid.scene, ground: found.laid.ground && ground(found.laid.ground) },
    whole: found.whole.map((one) => ({ ...one, cells: cells(one.cells) })),
    causes: found.causes,
  };
  return { answer, transfer };
}
