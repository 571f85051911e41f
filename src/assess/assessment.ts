import type { Edition } from '../coverage/band.ts';
import type { CameraCoverage, SiteCoverage } from '../coverage/coverage.ts';
import type { FaceCap, Target } from '../coverage/target.ts';
import type { FlatSurface } from '../model/surface.ts';
import type { State } from '../coverage/state.ts';
import type { Scene } from './scene.ts';

/** What is asked of the engine besides the plan. */
export interface Question {
  readonly target: Target;
  /** Id of the one camera to count; null counts all that are not hidden. */
  readonly alone: string | null;
  /** Id of the situation of the plan; null: the plan as drawn. */
  readonly situation: string | null;
  /** What hides how much: from cells with a bound, as a drag has time for, or exactly. */
  readonly causes: 'quick' | 'exact';
}

/** The one result behind picture and numbers. */
export interface Assessment {
  readonly revision: number;
  readonly question: Question;
  readonly edition: Edition;
  /** For a face target; empty else. */
  readonly faceCaps: readonly FaceCap[];
  readonly scene: Scene;
  /** The wall, roof face or patch that is covered; null where it is the ground or a height above it. */
  readonly surface: FlatSurface | null;
  /** One a camera of the scene, in its order. */
  readonly cameras: readonly CameraCoverage[];
  readonly site: SiteCoverage;
  /** What areas are counted within. */
  readonly within: 'boundary' | 'board';
}

/** What one camera makes of one point; answered by a ray, the judge of the cells. */
export interface PointAnswer {
  readonly camera: string;
  readonly state: State;
  /** Index + 1; 0 none. */
  readonly band: number;
  readonly density: number | null;
  /** °, at the target, from its horizon up to the lens. */
  readonly depression: number;
  /** Index of the solid in the scene. */
  readonly hider: number | null;
  /** How far before the point the hider is met, m. */
  readonly before: number | null;
  /** Of a covered face: why it is below the band of its density (KEPT, TOO_STEEP, FROM_THE_SIDE of coverage/rule.ts). */
  readonly lost: number;
}
