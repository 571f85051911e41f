import type { AnswersStore } from '../answers/store.ts';
import { Obstacles } from '../assess/ground.ts';
import type { Scene } from '../assess/scene.ts';
import { add, distance, scale, subtract } from '../base/vector.ts';
import type { SightPort } from '../editor/sightPort.ts';

/** Whether one point is seen from another in the scene that is shown, by the rays that judge single points. */
export function lentSight(answers: AnswersStore): SightPort {
  let laid: { readonly solids: Scene['solids']; readonly obstacles: Obstacles } | null = null;
  return (from, to) => {
    const { assessment } = answers.getState();
    if (!assessment) return null;
    const { solids, closing } = assessment.scene;
    if (laid?.solids !== solids) laid = { solids, obstacles: new Obstacles(solids, closing) };
    const { segments } = laid.obstacles;
    const hit =
      segments.firstHit(from, to, 'solid') ??
      segments.closedHit(from, to) ??
      segments.firstHit(from, to, 'screen');
    const solid = hit && solids[hit.solid];
    if (!solid) return { blocked: null };
    const way = subtract(to, from);
    return {
      blocked: {
        by: solid.name,
        after: distance(from, to) * hit.share,
        at: add(from, scale(way, hit.share)),
      },
    };
  };
}
