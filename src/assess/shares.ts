import type { CameraAreas, CameraCoverage } from '../coverage/coverage.ts';
import type { SentCells } from '../coverage/judgedCells.ts';
import type { Ground } from './ground.ts';
import type { Scene } from './scene.ts';

/** Cameras of a question that are to be worked out, by id. */
export interface Wanted {
  readonly whole: readonly string[];
  /** Those of which all but exact causes is known. */
  readonly causes: readonly string[];
}

/** What cameras of a question share, for a session that would take long to lay it out itself. */
interface Laid {
  readonly scene: Scene;
  /** Null over uneven ground, which cannot be sent: whoever takes the scene over lays its own. */
  readonly ground: Ground | null;
}

/** A camera with its cells as they can be sent: runs, from which whoever takes them over makes the rest. */
export interface FoundCamera {
  readonly coverage: Omit<CameraCoverage, 'cells'>;
  readonly cells: SentCells;
  readonly shadows: number;
}

/** Cameras of a question worked out by another session. */
export interface Found {
  readonly laid: Laid | null;
  readonly whole: readonly FoundCamera[];
  readonly causes: readonly { readonly camera: string; readonly areas: CameraAreas }[];
}
