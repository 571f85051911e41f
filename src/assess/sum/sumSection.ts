import type { Edition } from '../../coverage/band.ts';
import { faceCapsOf } from '../../coverage/rule.ts';
import type { Target } from '../../coverage/target.ts';
import type { Sum } from '../../optics/quickSum.ts';
import type { PlanSettings } from '../../plan/plan.ts';
import type { Section } from '../section/section.ts';
import { createSectioner } from '../section/sectioner.ts';

/** What a sum is judged by. */
export type SumSettings = Pick<PlanSettings, 'stature' | 'faceHeight' | 'faceLimits' | 'screenClosing'>;

/**
 * The section of a sum: the cut along the axis with no house in it, by the judges of every other section.
 * @param to how far it is told, m
 */
export function sumSection(
  { camera, asked }: Sum,
  edition: Edition,
  settings: SumSettings,
  to: number,
): Section {
  const target = targetOf(asked.targetHeight, settings);
  // Nothing is asked past the end of what is told, so that the range bounds nothing there.
  const range = Math.hypot(to, camera.eye[2] - asked.targetHeight) + 1;
  const section = createSectioner()(
    {
      edition,
      faceCaps: faceCapsOf(target, edition.bands, settings.faceLimits),
      question: { target },
      scene: {
        cameras: [{ ...camera, range }],
        solids: [],
        ground: 0,
        board: { left: -1, right: 1, bottom: -1, top: to },
        night: null,
        closing: settings.screenClosing,
      },
    },
    { camera: camera.id, host: null, person: asked.distance, settings },
  );
  if (section === null) throw new Error('a section has its camera');
  return section;
}

/** A target at the height of faces is a face, with its limits from above. */
const targetOf = (height: number, { faceHeight }: SumSettings): Target =>
  height === faceHeight ? { kind: 'face', height } : { kind: height === 0 ? 'ground' : 'height', height };
