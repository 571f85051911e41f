import type { AnswersStore } from '../answers/store.ts';

/** However busy the window is, this long after the first coverage, ms. */
const AT_LATEST = 1000;

/** Does something once the first coverage is on screen and the window has nothing better to do. Returns how to call it off. */
export function afterFirst(answers: AnswersStore, act: () => void): () => void {
  let isOff = false;
  const go = () => {
    if (!isOff) act();
  };
  const idle = () => {
    if ('requestIdleCallback' in window) window.requestIdleCallback(go, { timeout: AT_LATEST });
    else setTimeout(go, AT_LATEST / 2);
  };
  // The frame that takes it up, and the next: then it is there to be seen.
  const begin = () => requestAnimationFrame(() => requestAnimationFrame(idle));
  if (answers.getState().assessment !== null) begin();
  const stop = answers.subscribe(({ assessment }, before) => {
    if (assessment !== null && before.assessment === null) begin();
    if (assessment !== null) stop();
  });
  return () => {
    isOff = true;
    stop();
  };
}
