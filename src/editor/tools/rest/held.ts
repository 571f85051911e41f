import type { Vec3 } from '../../../base/vector.ts';
import type { PlanCamera } from '../../../plan/plan.ts';
import type { Editor } from '../../editor.ts';
import type { ToolState } from '../chart.ts';
import type { Pointed } from '../pointed.ts';

/** A camera as it was at the press. */
export interface Held {
  readonly editor: Editor;
  readonly camera: PlanCamera;
  readonly eye: Vec3;
  readonly outward: Vec3 | null;
  readonly from: Pointed;
  /** What follows once it is let go. */
  readonly rest: () => ToolState;
}
