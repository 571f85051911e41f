import type { AskedFigures } from '../../assess/cautions/askedFigures.ts';
import type { Say } from './say.ts';

/** What a caution says, and what to do. */
export interface Words {
  readonly said: string;
  readonly advice: string;
}

/** A sentence a row, by the figures of that row. */
export type WordsBy<F extends { readonly row: PropertyKey }> = {
  readonly [R in F['row']]: (figures: Extract<F, { readonly row: R }>, say: Say) => Words;
};

const LOST: Readonly<Record<Extract<AskedFigures, { row: 9 }>['why'], string>> = {
  shape: 'has another shape than the part of the sensor that its angle is stated for',
  crop: 'may use only part of the sensor',
  rotated: 'is turned on its side, for which its angle is not stated',
  stabilised: 'is steadied, which leaves the edges of the sensor out',
  other: 'is not the one that its angle is stated for',
};

/** Rows 1 to 11: what must be seen, and the lens and pictures that see it. */
export const askedWords: WordsBy<AskedFigures> = {
  1: ({ requirement, angle, limit }, say) => ({
    said: `At ${requirement} the camera stands ${say.angle(angle)} round from where the face looks, past ${say.angle(limit)}, and sees its side.`,
    advice: 'Move the camera nearer to straight in front of the face.',
  }),
  2: ({ requirement, angle, limit, mostHeight }, say) => ({
    said: `The face at ${requirement} is seen from ${say.angle(angle)} above, past ${say.angle(limit)}: a cap or hood hides the eyes.`,
    advice: `At this distance mount the lens no higher than ${say.length(mostHeight)} above the ground there.`,
  }),
  3: ({ requirement, pixels, leastPixels, angle, mostAngle }, say) => ({
    said:
      `A character of the plate at ${requirement} is ${pixels.toFixed(1)} px high` +
      (angle === null ? '.' : `, seen ${say.angle(angle)} off.`),
    advice: `To be read it needs ${leastPixels.toFixed(0)} px or more, and ${say.angle(mostAngle)} or less off the plate.`,
  }),
  4: ({ requirement, other }) => ({
    said: `At night this camera is asked for the plate at ${requirement} and for ${other}. The short exposure that freezes a plate leaves everything else dark.`,
    advice: 'Give the plate a camera of its own.',
  }),
  5: ({ requirement, when, of, millimetres, exposure, taken, speed }, say) => ({
    said:
      `By ${when}, at ${speed.toFixed(1)} m/s and ${say.exposure(exposure)}${taken ? ' (not stated, so taken to be that)' : ''}, ` +
      `the ${of} at ${requirement} smears over ${millimetres.toFixed(0)} mm` +
      (of === 'face' ? '; a face is 160 mm wide.' : '; a stroke of a character is 14 mm wide.'),
    advice: when === 'night' ? 'Expose for less time, and bring light.' : 'Expose for less time.',
  }),
  6: ({ requirement, pictures, speed, seconds }) => ({
    said: `Whoever passes ${requirement} at ${speed.toFixed(1)} m/s leaves ${count(pictures, 'usable picture')} in ${seconds.toFixed(1)} s.`,
    advice: 'Record more pictures a second, or see more of the way at close range.',
  }),
  7: ({ requirement, focus, distance, near, far }, say) => ({
    said: `Focused at ${say.length(focus)} the lens is sharp from ${say.length(near)} ${far === null ? 'on' : `to ${say.length(far)}`}; ${requirement} lies ${say.length(distance)} away and is soft.`,
    advice: `Focus at ${say.length(distance)}, and again after dark under infrared.`,
  }),
  8: ({ end, focalLength, limit }, say) => ({
    said: `The lens is set to ${focalLength.toFixed(1)} mm, within ${say.share(limit)} of the ${end} end of its range.`,
    advice: 'It has nothing left that way: a small error cannot be put right on site.',
  }),
  9: ({ mode, why, lost }, say) => ({
    said: `The picture “${mode}” ${LOST[why]}. Up to ${say.share(lost)} of its width may be missing.`,
    advice: 'Try one camera in this setting before anyone drills.',
  }),
  10: ({ requirement, mode, density, band, wanted, recorded }) => ({
    said: recorded
      ? `The picture “${mode}”, which is recorded, has ${density.toFixed(0)} px/m at ${requirement}: ${band ?? 'below every band'}, where ${wanted} is asked for and the camera could give it.`
      : `Watched live in “${mode}”, ${requirement} has ${density.toFixed(0)} px/m: ${band ?? 'below every band'}.`,
    advice: recorded
      ? 'Record the largest picture.'
      : `Only the recorded picture has enough pixels for ${wanted}.`,
  }),
  11: ({ requirement, ratio, more }, say) => ({
    said: `${requirement} is ${ratio.toFixed(1)} times as tall as wide in the picture.`,
    advice: `Turned on its side, ${say.share(more)} more of the picture would lie on it. Make sure that the camera can turn its picture too.`,
  }),
};

/** "1 picture", "3 pictures". */
const count = (many: number, of: string): string =>
  `${many === 0 ? 'no' : many} ${of}${many === 1 ? '' : 's'}`;
