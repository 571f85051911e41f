import type { Picture, PicturePerson } from '../../assess/picture/picture.ts';
import { fixed } from '../../base/length.ts';
import type { Named } from '../section/sectionWords.ts';

/** "2688 × 1520 pixels". */
export const sizeWords = ({ width, height }: Pick<Picture, 'width' | 'height'>): string =>
  `${width} × ${height} pixels`;

/** How a picture that is rolled by a quarter has to be set up; null where it stands upright by itself. */
export const turnWords = ({ turn }: Pick<Picture, 'turn'>): string | null =>
  turn === 0 ? null : `The picture is turned ${turn}° clockwise in the camera’s settings.`;

/** The whole picture in words, for those who do not see it. */
export function pictureSentence(picture: Picture, named: Named): string {
  const { camera, lensInside, visible, hiding, horizon } = picture;
  const name = (solid: number) => named.solids[solid]?.name ?? 'something';
  const down = `${fixed(Math.abs(camera.tilt), 1)}° ${camera.tilt < 0 ? 'up' : 'down'}`;
  const head = `Picture of ${camera.name}, ${sizeWords(picture)}, aimed along ${fixed(camera.pan, 1)}°, ${down}.`;
  if (lensInside !== null)
    return `${head} The lens stands inside ${name(lensInside)}, so that nothing of the site is seen.`;
  const seen = [...new Set(visible.map(({ solid }) => name(solid)))];
  const hiders = [...new Set(hiding.map(({ solid }) => name(solid)))];
  const turned = turnWords(picture);
  return [
    head,
    seen.length === 0 ? 'Nothing but open ground is in it.' : `In it: ${seen.join(', ')}.`,
    ...(hiders.length === 0 ? [] : [`Hidden behind them: what is asked for past ${hiders.join(', ')}.`]),
    horizon.length === 0 ? 'The horizon is not in the picture.' : 'The horizon is in the picture.',
    ...(turned === null ? [] : [turned]),
  ].join(' ');
}

/** "Standing here: face 152 px/m; feet hidden by Van". */
export function standingWords({ parts, density }: PicturePerson, named: Named): string {
  const name = (solid: number | null) =>
    solid === null ? 'something' : (named.solids[solid]?.name ?? 'something');
  const told = parts.toReversed().map(({ part, state, hider }) => {
    if (state === 'covered' || state === 'too coarse')
      return part === 'face' ? `face at ${(density ?? 0).toFixed(0)} px/m` : `${part} seen`;
    if (state === 'hidden') return `${part} hidden by ${name(hider)}`;
    if (state === 'screened') return `${part} through leaves or mesh of ${name(hider)}`;
    return `${part} ${state === 'inside' ? 'inside something' : state}`;
  });
  return `Standing here: ${told.join(', ')}`;
}
