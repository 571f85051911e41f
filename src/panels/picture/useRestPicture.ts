import { useEffect, useState } from 'react';
import type { Assessment } from '../../assess/assessment.ts';
import type { Picture } from '../../assess/picture/picture.ts';
import type { Picturer } from '../../draw/picture/shownPicture.ts';
import type { Plan } from '../../plan/plan.ts';

/** The whole picture is begun once nothing has changed for so long, and takes no more than so much of a frame, ms. */
const [REST, SLICE] = [120, 5];

/** A whole picture, with what it was made of. */
interface Rested {
  readonly assessment: Assessment;
  readonly camera: string;
  readonly picture: Picture | null;
}

/** The whole picture of a camera once nothing moves; null while it does, and until it is made, slice by slice. */
export function useRestPicture(
  picturer: Picturer,
  assessment: Assessment,
  plan: Plan,
  camera: string,
  moving: boolean,
): Picture | null {
  const [rested, setRested] = useState<Rested | null>(null);
  useEffect(() => {
    if (moving) return undefined;
    const job = picturer.steps(assessment, plan, camera);
    let timer = window.setTimeout(slice, REST);
    function slice(): void {
      const until = performance.now() + SLICE;
      while (performance.now() < until) {
        const { done, value } = job.next();
        if (!done) continue;
        setRested({ assessment, camera, picture: value });
        return;
      }
      timer = window.setTimeout(slice, 0);
    }
    return () => window.clearTimeout(timer);
  }, [picturer, assessment, plan, camera, moving]);
  const isNow = !moving && rested?.assessment === assessment && rested.camera === camera;
  return isNow ? rested.picture : null;
}
