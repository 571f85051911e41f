import { useEffect, useMemo, useState } from 'react';
import type { Assessment } from '../../assess/assessment.ts';
import { createCardMaker, type Card, type CardAsked } from '../../draw/card/cardOf.ts';
import type { Plan } from '../../plan/plan.ts';

/** So long a slice of work may hold the window up, ms. */
const SLICE = 8;

/**
 * The cards of all cameras, by id, the one looked at first; worked out between frames. Those of before stay until they are
 * made anew.
 */
export function useCards(
  plan: Plan,
  assessment: Assessment | null,
  first: string | null,
  { paper, courses, date }: CardAsked,
): { readonly cards: ReadonlyMap<string, Card>; readonly working: boolean } {
  const [maker] = useState(createCardMaker);
  const [cards, setCards] = useState<ReadonlyMap<string, Card>>(new Map());
  // What the cards were last made of; another object means that they are behind.
  const job = useMemo(
    () => ({ plan, assessment, first, paper, courses, date }),
    [plan, assessment, first, paper, courses, date],
  );
  const [done, setDone] = useState<object | null>(null);
  useEffect(() => {
    const { assessment: answer, first: soonest, ...asked } = job;
    if (answer === null) return undefined;
    const ids = [...job.plan.cameraOrder].sort((a, b) => Number(b === soonest) - Number(a === soonest));
    function* all(shown: Assessment): Generator<unknown, void, void> {
      for (const id of ids) {
        const card = yield* maker.steps(job.plan, shown, id, asked);
        setCards((before) => new Map([...before].filter(([one]) => ids.includes(one))).set(id, card));
        yield null;
      }
    }
    const work = all(answer);
    let timer = 0;
    const slice = () => {
      const end = performance.now() + SLICE;
      while (performance.now() < end) {
        if (work.next().done !== true) continue;
        setDone(job);
        return;
      }
      timer = window.setTimeout(slice);
    };
    timer = window.setTimeout(slice);
    return () => window.clearTimeout(timer);
  }, [maker, job]);
  return { cards, working: done !== job };
}
