import type { Vec2, Vec3 } from '../../../base/vector.ts';
import { dragged } from '../../grips/dragged.ts';
import { farthest, type Reached } from '../../grips/farthest.ts';
import { pullFields, valueOf, type Pull } from '../../grips/pull.ts';
import type { Editor } from '../../editor.ts';
import type { Plan } from '../../../plan/plan.ts';
import { cornerAtFault } from '../../shaping/attempt.ts';
import type { Sketch, SketchMark, Strip, ToolState } from '../chart.ts';
import { EDGE_ON } from '../snapping/workingPoint.ts';
import { valueWords } from './valueWords.ts';

/** A handle is dragged: what it changes follows the pointer as far as it fits. All of it is one step. */
export function pulling(editor: Editor, pull: Pull, rest: () => ToolState): ToolState {
  const gesture = editor.begin(pull.name);
  const { plan: atPress, snapping } = editor.store.getState();
  const others = withoutHeld(atPress, pull);
  const { units } = atPress.settings;

  const state = (value: Vec2, strip: Strip, ghost: Sketch | null): ToolState => ({
    name: 'rest pulling',
    strip,
    ghost,
    cursor: 'grabbing',
    drag: (from, to) => {
      const asked = dragged(pull, others, from, to, snapping);
      if (!asked) return state(value, { text: EDGE_ON, fields: [], trouble: true }, ghost);
      const reached = farthest(atPress, pull, asked.value, value);
      gesture.change(() => reached.plan);
      const words = [valueWords(pull, reached.value, units), asked.name].filter(Boolean).join(' · ');
      return state(
        reached.value,
        {
          text: reached.stopped?.words ?? words,
          fields: pullFields(pull, reached.value),
          trouble: reached.stopped !== null,
        },
        sketchOf(pull, asked.value, reached, asked.marks),
      );
    },
    release: () => {
      gesture.commit();
      return rest();
    },
    escape: () => {
      gesture.cancel();
      return rest();
    },
  });
  const value = valueOf(pull);
  const strip = { text: valueWords(pull, value, units), fields: pullFields(pull, value), trouble: false };
  return state(value, strip, null);
}

/** The shape as it was, and crossed out as asked where it cannot be. */
function sketchOf(
  pull: Pull,
  asked: Vec2,
  { stopped }: Reached,
  marks: readonly SketchMark[],
): Sketch | null {
  if (pull.kind !== 'plane') return null;
  const was = pull.ghost(pull.value);
  const wrong = stopped ? pull.ghost(asked) : null;
  const corner = stopped?.fault ? cornerAtFault(stopped.fault) : null;
  const faulty: Vec3 | undefined = corner === null ? undefined : wrong?.points[corner];
  return {
    kind: 'sketch',
    lines: [
      ...(was ? [{ ...was, style: 'was' as const }] : []),
      ...(wrong ? [{ ...wrong, style: 'wrong' as const, hatched: wrong.closed }] : []),
    ],
    marks: [...(stopped ? [] : marks), ...(faulty ? [{ at: faulty, sign: 'wrong' as const }] : [])],
    plates: faulty && corner !== null ? [{ at: faulty, text: `${corner + 1}`, tone: 'wrong' }] : [],
  };
}

/** The plan without what is held, which does not attract itself. */
function withoutHeld(plan: Plan, pull: Pull): Plan {
  if (pull.kind !== 'plane' || !pull.ground) return plan;
  const { held } = pull.ground;
  const structures = Object.fromEntries(Object.entries(plan.structures).filter(([id]) => !held.includes(id)));
  return { ...plan, structures, boundary: held.includes('boundary') ? null : plan.boundary };
}
