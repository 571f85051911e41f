import { useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import type { CautionReport } from '../../assess/cautions/caution.ts';
import { createSeekCautions, stillHolds } from '../../draw/cautions/shownCautions.ts';
import type { Editor } from '../../editor/editor.ts';
import type { Plan, PlanCamera } from '../../plan/plan.ts';

/** How long nothing must have changed before cautions are looked for, ms. */
const REST = 400;
/** How long the work may hold the window up at a time, ms. */
const SLICE = 4;

/** One for the window: it remembers what stands. */
const seek = createSeekCautions();

interface Cautions {
  /** The last that were found, be it for the plan before the last change. */
  readonly report: CautionReport | null;
  /** Those are not of the plan as it is now. */
  readonly stale: boolean;
  readonly looked: boolean;
}

/** The cautions about a camera, looked for while the window is at rest, and never while something is dragged. */
export function useCautions(editor: Editor, camera: PlanCamera): Cautions {
  const plan = useStore(editor.store, (state) => state.plan);
  const gesturing = useStore(editor.store, (state) => state.gesturing);
  const [found, setFound] = useState<{ report: CautionReport | null; plan: Plan } | null>(null);
  const { id } = camera;
  const holding = useMemo(
    () => (found?.report ? stillHolds(found.report, found.plan, plan, camera) : null),
    [found, plan, camera],
  );
  const stale = found?.plan !== plan && holding === null;
  useEffect(() => {
    if (gesturing || !stale) return;
    let timer = 0;
    const begin = () => {
      const steps = seek(plan, id);
      const work = () => {
        const until = performance.now() + SLICE;
        for (;;) {
          const { done, value } = steps.next();
          if (done) return setFound({ report: value, plan });
          if (performance.now() < until) continue;
          timer = window.setTimeout(work);
          return;
        }
      };
      work();
    };
    timer = window.setTimeout(begin, REST);
    return () => window.clearTimeout(timer);
  }, [plan, gesturing, id, stale]);
  return { report: holding ?? found?.report ?? null, stale, looked: found !== null };
}
