import type { FixingFigures } from '../../assess/cautions/fixingFigures.ts';
import type { WordsBy } from './askedWords.ts';
import { listed } from './say.ts';

const PLACE: Readonly<Record<Extract<FixingFigures, { row: 32 }>['what'], string>> = {
  line: 'in line with',
  top: 'from the',
  corner: 'from the',
  meter: 'from',
};

const FOOT: Readonly<Record<NonNullable<Extract<FixingFigures, { row: 34 }>['why']>, string>> = {
  thing: 'which may not carry it.',
  slope: 'which slopes.',
  neighbour: 'beyond the boundary.',
  high: 'and the fixing is high for a ladder.',
};

const EARTH: Readonly<Record<Extract<FixingFigures, { row: 38 }>['why'], (thing: string) => string>> = {
  building: (thing) => `${thing} is another building`,
  pole: (thing) => `${thing} stands on a post`,
  gate: (thing) => `${thing} stands apart from the building`,
};

/** Rows 29 to 40: holes, fixings, cables and neighbours. */
export const fixingWords: WordsBy<FixingFigures> = {
  29: ({ thing, height }, say) => ({
    said: `The lens is ${say.length(height)} above ${thing === 'ground' ? 'the ground' : thing}: within reach.`,
    advice: 'Go higher, or take a strong housing (IK10) and lead the cable out of its back.',
  }),
  30: ({ what, thing, distance }, say) => ({
    said:
      what === 'lintel'
        ? `The fixing is ${say.length(distance)} above ${thing}: probably on its lintel.`
        : what === 'jamb'
          ? `The fixing is ${say.length(distance)} beside ${thing}: too near the edge, the brick may burst.`
          : `The fixing is ${say.length(distance)} from the ${thing} of the wall: too near the edge, the brick may burst.`,
    advice: 'Move it, or find out what is behind before anyone drills.',
  }),
  31: ({ height, floor, joists, inJoists }, say) => ({
    said:
      height === null || floor === null
        ? 'Where the hole comes out inside is not known: the levels of floors and ceilings are not given.'
        : inJoists
          ? `Inside, the hole comes out between the ceiling of ${floor} and the next floor, ${say.length(height)} above the floor: among the joists.`
          : `Inside, the hole comes out ${say.length(height)} above the floor of ${floor}.` +
            (joists === null
              ? ''
              : ` Joists lie ${say.length(joists.from)} to ${say.length(joists.to)} above the foot of the wall.`),
    advice: 'Go in and look before anyone drills.',
  }),
  32: ({ what, thing, distance }, say) => ({
    said:
      what === 'line'
        ? `The hole is ${PLACE[what]} ${thing}, ${say.length(distance)} off: cables and pipes often run there.`
        : `The hole is ${say.length(distance)} ${PLACE[what]} ${what === 'corner' ? 'corner of two walls inside' : thing}: cables and pipes often run there.`,
    advice: 'Search for them from both sides. Nothing that is drawn here shows that a place is free.',
  }),
  33: ({ year }) => ({
    said:
      year === null
        ? 'The fixing is in a soffit or board of unknown year: old boards may hold asbestos.'
        : `The fixing is in a soffit or board of ${year}: boards of that age may hold asbestos.`,
    advice: 'Do not drill until it is known. Thin plastic needs timber behind it.',
  }),
  34: ({ height, out, on, why }, say) => ({
    said: `A ladder to this fixing, ${say.length(height)} up, stands ${say.length(out)} out, on ${on === 'ground' ? 'the ground' : on}${why === null ? '.' : `, ${FOOT[why]}`}`,
    advice:
      why === null
        ? 'Have it footed and tied, and do not reach sideways. Keep well off overhead lines.'
        : 'Use a scaffold or a platform. Keep well off overhead lines.',
  }),
  35: ({ of, length, angle }, say) => ({
    said: `On ${of === 'pole' ? `a post ${say.length(length)} high` : `an arm ${say.length(length)} long`} a lens of ${say.angle(angle)} shows every sway in the wind.`,
    advice: of === 'pole' ? 'Take a stiffer post, or a wider lens.' : 'Take a shorter arm, or a wider lens.',
  }),
  36: ({ thing, distance }, say) => ({
    said: `${thing} is ${say.length(distance)} from the lens: steam and drips settle on its window.`,
    advice: 'Move the camera away from it.',
  }),
  37: ({ rise, plug, fall, bare }, say) => ({
    said:
      `The hole must pass a plug of ${(plug * 1000).toFixed(0)} mm and fall ${say.angle(fall)} outwards` +
      (rise === null ? '.' : `: its inner end is ${(rise * 1000).toFixed(0)} mm higher.`) +
      (bare ? ' It does not lie under the base of the camera.' : ''),
    advice: 'Loop the cable 0.1 m below its entry. Seal outside, and leave the weep hole open.',
  }),
  38: ({ why, thing, distance }, say) => ({
    said: `${EARTH[why](thing)}, ${say.length(distance)} from the building that is taken to hold the recorder: its earth may differ, and lightning finds long cables.`,
    advice: 'Use fibre, or protectors at both ends, put in by a competent person.',
  }),
  39: ({ reserved, budget, spare }) => ({
    said:
      spare < 0
        ? `All cameras together reserve ${reserved.toFixed(0)} W of a budget of ${budget.toFixed(0)} W.`
        : `All cameras together reserve ${reserved.toFixed(0)} W and leave ${spare.toFixed(0)} W of ${budget.toFixed(0)} W.`,
    advice: 'On a frosty night the last camera to start may be refused. Take a supply with more to spare.',
  }),
  40: ({ band, area, bound, openings }, say) => ({
    said: `Beyond the boundary this shows ${[
      ...(area > 0.05 ? [`${say.area(area)}${bound > 0.05 ? ` ± ${bound.toFixed(1)}` : ''} of ground`] : []),
      ...(openings.length > 0 ? [listed(openings)] : []),
    ].join(' and ')} at ${band.toLowerCase()} or better.`,
    advice: 'Turn, or mask it in the camera; put up a sign, and say why. Leave the microphone off.',
  }),
};
