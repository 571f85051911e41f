import type { ViewFigures } from '../../assess/cautions/viewFigures.ts';
import type { WordsBy } from './askedWords.ts';
import { monthsText } from './say.ts';

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** Rows 12 to 28: light, what stands in the picture, and what may change. */
export const viewWords: WordsBy<ViewFigures> = {
  12: ({ thing, near, far, times, share }, say) => ({
    said:
      `${thing} is ${say.length(near)} from the lens and throws back ${times < 1000 ? times.toFixed(0) : 'over 1000'} times the infrared of what you want ${say.length(far)} away` +
      (share >= 0.01 ? `; it fills ${say.share(share)} of the picture.` : '.'),
    advice: 'Move or turn the camera so that nothing near is in its picture or beam.',
  }),
  13: ({ what, surface, angle }, say) => ({
    said:
      what === 'soffit'
        ? `The underside of the eaves of ${surface} is in the picture.`
        : `The edge of the ${what} ${angle < 0 ? `goes ${say.angle(-angle)} past` : `runs ${say.angle(angle)} off`} the ${lower(surface)} that carries the camera.`,
    advice: 'After dark that surface glares. Turn away from it, or bring the lens out on an arm.',
  }),
  14: ({ open, infrared }) => ({
    said: [
      ...(open
        ? ['Nothing above this dome keeps the rain off it: drops and scratches spoil the picture.']
        : []),
      ...(infrared ? ['Its infrared shines into its own bubble and fogs the picture.'] : []),
    ].join(' '),
    advice: 'Take a camera with a flat window, or put it under cover.',
  }),
  15: ({ what, thing, distance }, say) => ({
    said:
      what === 'cover'
        ? `${thing} covers the lens ${say.length(distance)} above it: spiders come to the warm infrared there.`
        : `${thing} is ${say.length(distance)} away: spiders come from the leaves to the warm infrared.`,
    advice: 'Allow for brushing. A lamp set apart draws them off.',
  }),
  16: ({ from, to, months, minutes, inFrame }, say) => ({
    said: `The sun stands ${inFrame ? 'in this picture' : 'just beside this picture'} between ${say.hour(from)} and ${say.hour(to)} (winter time by longitude), ${monthsText(months)}, for up to ${minutes} minutes a day.`,
    advice: 'Turn or lower the camera, or give it a hood.',
  }),
  17: ({ share }, say) => ({
    said: `Sky fills ${say.share(share)} of the picture: by day it darkens faces.`,
    advice: 'Tilt down until the farthest place that matters is just in.',
  }),
  18: ({ requirement, opening, share }, say) => ({
    said: `At ${requirement} the ${lower(opening)} is behind the face and fills ${say.share(share)} of the picture: bright behind, dark in front.`,
    advice: 'Take a camera with a wide dynamic range and try it at noon, or look from the other side.',
  }),
  19: ({ what, thing, distance }, say) => ({
    said:
      what === 'lamp'
        ? `${thing} shines into the lens from ${say.length(distance)}: what stands beside it goes black.`
        : `Whoever drives as ${thing} stands shines headlamps into the lens, from ${say.length(distance)}.`,
    advice: 'Turn the camera aside, or screen the lamp towards it.',
  }),
  20: ({ requirement, distance, range, sure, beside }, say) => ({
    said: beside
      ? `${requirement} lies beside the infrared beam, ${say.length(distance)} away.`
      : `${requirement} is ${say.length(distance)} away. Of a stated infrared range of ${say.length(range)}, ${say.length(sure)} are sure for this task: such a range says only that something can be seen to move.`,
    advice: 'Bring light, or a stronger lamp, or come nearer.',
  }),
  '20.beam': ({ beam, share }, say) => ({
    said: `The infrared beam is ${say.angle(beam)} wide, and ${say.share(share)} of the picture lies beside it: its sides are dark at night.`,
    advice: 'Light the sides by a lamp of their own.',
  }),
  21: ({ requirement }) => ({
    said: `Only a camera that turns serves ${requirement}. It looks one way at a time, and the rest is unseen meanwhile.`,
    advice: 'Give this place a fixed camera.',
  }),
  22: ({ thing, share, near }, say) => ({
    said: `${thing}, ${say.length(near)} away, is glass: it throws the infrared back over ${say.share(share)} of the picture.`,
    advice: 'Switch the infrared off and light the far side, or mount beyond the glass.',
  }),
  23: ({ requirement, thing, clear }, say) => ({
    said: `The line of sight to ${requirement} passes ${thing} with only ${say.length(clear)} to spare.`,
    advice: 'Move the camera so that there is more room for a small error.',
  }),
  24: ({ thing, years, area }, say) => ({
    said: `In ${years.toFixed(0)} years of growth ${thing} hides another ${say.area(area)} of the ground.`,
    advice: 'Put trimming into the handover.',
  }),
  25: ({ thing, share, near }, say) => ({
    said: `Leaves fill ${say.share(share)} of the picture, ${thing} first, from ${say.length(near)} on: in wind they set off recording and swell the files.`,
    advice: 'Leave them out of what sets recording off.',
  }),
  26: ({ what, thing }) => ({
    said:
      what === 'parking'
        ? `Nothing has been parked at ${thing} yet.`
        : `${thing} was tried in one position only.`,
    advice:
      what === 'parking'
        ? 'Put the largest vehicle there, in conditions of its own.'
        : 'Try it open and closed, in conditions of their own.',
  }),
  27: ({ thing, share, angle }, say) => ({
    said: `${thing} is seen at less than ${say.angle(angle)} to its face over ${say.share(share)} of the picture: the gaps close up, and it counts as solid.`,
    advice: 'Look at it more squarely, or over it.',
  }),
  28: ({ requirement, thing, size, got, tolerance }, say) => ({
    said: `Whether ${requirement} is seen turns on the ${size} of ${thing}, which was ${got} and may be off by ${say.length(tolerance)}.`,
    advice: 'Measure it before anyone drills.',
  }),
};
