import { figureText } from '../../draw/figureText.ts';
import { LOWERED } from '../../draw/loweredText.ts';
import type { FigureAnswer } from '../../assess/figureAt.ts';
import type { Assessment, PointAnswer } from '../../assess/assessment.ts';

/**
 * What is at a spot, in one sentence for the ear: who covers it and how finely, then what keeps the others from it.
 * @param names what a person calls the thing that a solid is a part of
 */
export function hereWords(
  assessment: Assessment,
  answers: readonly PointAnswer[],
  names: (structure: string) => string | undefined,
  figure: FigureAnswer | null = null,
): string {
  const { edition, scene } = assessment;
  const cameraName = (id: string): string => scene.cameras.find((one) => one.id === id)?.name ?? id;
  const words = ({ state, band, density, hider, before, lost }: PointAnswer): string => {
    const solid = hider === null ? undefined : scene.solids[hider];
    const by = (solid && names(solid.structure)) ?? solid?.name ?? 'something';
    const gap = before === null ? '' : `, ${before.toFixed(1)} metres before it`;
    const pixels = density === null ? '' : `, ${density.toFixed(0)} pixels per metre`;
    switch (state) {
      case 'covered':
        return `${(edition.bands[band - 1]?.name ?? 'covered').toLowerCase()}${pixels}${LOWERED[lost] ?? ''}`;
      case 'too coarse':
        return `too few pixels${pixels}`;
      case 'hidden':
        return `hidden by ${by}${gap}`;
      case 'screened':
        return `through leaves or mesh of ${by}${gap}`;
      case 'inside':
        return `inside ${solid ? by : 'a structure'}`;
      case 'out of frame':
      case 'too dark':
        return state;
    }
  };
  const best = answers[0];
  if (!best) return 'No camera is counted here.';
  if (answers.every(({ state }) => state === 'out of frame')) return 'Out of every camera’s frame.';
  const inside = answers.every(({ state }) => state === 'inside');
  if (inside) return `This spot is ${words(best)}.`;
  const head = best.band > 0 ? '' : 'No camera covers this spot; ';
  const person = figure && figureText(figure, (part) => words({ ...part, before: null, density: null }));
  const body = answers.map((one) => `${cameraName(one.camera)}: ${words(one)}`).join('; ');
  return `${head}${body}.${person === null ? '' : ` ${person}.`}`;
}
