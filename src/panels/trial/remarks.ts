import type { Assessment } from '../../assess/assessment.ts';
import type { TrialSetting } from '../../draw/trial/shownTrial.ts';
import type { Camera } from '../../optics/camera.ts';

/** What keeps a comparison from telling anything, in sentences: a lens inside something, a setting that is still the same. */
export function remarks(settings: readonly TrialSetting[], { scene }: Assessment): readonly string[] {
  const [standing] = settings;
  return settings.flatMap(({ letter, coverage: { camera, sight } }): readonly string[] => {
    if (sight.lensInside !== null)
      return [
        `${letter} sees nothing: its lens is inside ${scene.solids[sight.lensInside]?.name ?? 'something'}.`,
      ];
    if (standing === undefined || letter === standing.letter || !isSame(camera, standing.coverage.camera))
      return [];
    return [`${letter} sees just as A does so far. Change it under “Set ${letter}”, or in the picture.`];
  });
}

/** Whether two cameras see the same. */
function isSame(one: Camera, two: Camera): boolean {
  const { id: _, name: __, ...rest } = one;
  const { id: ___, name: ____, ...other } = two;
  return JSON.stringify(rest) === JSON.stringify(other);
}
