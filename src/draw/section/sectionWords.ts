import type { Section, SectionLine, StandingPerson, Stretch } from '../../assess/section/section.ts';
import { fixed, lengthText, type LengthUnit } from '../../base/length.ts';

/** What names are taken from: the scene's solids, by index, and the bands of the edition. */
export interface Named {
  readonly solids: readonly { readonly name: string }[];
  readonly edition: { readonly name: string; readonly bands: readonly { readonly name: string }[] };
  readonly units: LengthUnit;
}

/** "2.70 m" in the plan's unit. */
export function metres(value: number, units: LengthUnit): string {
  const { text, unit } = lengthText(value, units);
  return unit === '' ? text : `${text} ${unit}`;
}

const nameOf = ({ solids }: Named, index: number | null): string =>
  index === null ? 'something' : (solids[index]?.name ?? 'something');

/** "Identify", "Hidden by Hedge", "Too few pixels": what is made of a stretch, at the length that fits first. */
export function stretchWords({ state, band, hider }: Stretch, named: Named): readonly string[] {
  switch (state) {
    case 'covered':
      return [named.edition.bands[band - 1]?.name ?? ''];
    case 'hidden':
      return [`Hidden by ${nameOf(named, hider)}`, 'Hidden'];
    case 'screened':
      return [`Screened by ${nameOf(named, hider)}`, 'Screened'];
    case 'too dark':
      return ['Too dark'];
    case 'too coarse':
      return ['Too few pixels', 'Too few'];
    case 'inside':
    case 'out of frame':
      return [];
  }
}

/** "at ground", "at face 1.60": by what a ruler is judged. */
export function lineName({ target }: SectionLine): string {
  if (target.height === 0) return 'at ground';
  const kind = target.kind === 'height' || target.kind === 'surface' ? '' : `${target.kind} `;
  return `at ${kind}${fixed(target.height, 2)}`;
}

/** What is made of the person's face, then of the parts that are not seen. */
export function personWords({ face, density, across, above, parts }: StandingPerson, named: Named): string[] {
  const unseen = parts.filter(
    ({ part, state }) => part !== 'face' && state !== 'covered' && state !== 'too coarse',
  );
  const rest = unseen.map(({ part, state, hider }) => `${part} ${whyWords(state, hider, named)}`);
  const second = rest.length === 0 ? [] : [rest.join(', ')];
  if (face.state !== 'covered' && face.state !== 'too coarse')
    return [`face ${whyWords(face.state, face.hider, named)}`, ...second];
  const from = `seen from ${Math.abs(above).toFixed(0)}° ${above < 0 ? 'below' : 'above'}`;
  const band = face.band > 0 ? `, ${(named.edition.bands[face.band - 1]?.name ?? '').toLowerCase()}` : '';
  const pixels = `face: ${(density ?? 0).toFixed(0)} px/m, ${(across ?? 0).toFixed(0)} px across`;
  return [`${pixels}${band}, ${from}`, ...second];
}

function whyWords(state: Stretch['state'], hider: number | null, named: Named): string {
  if (state === 'hidden' || state === 'screened') return `${state} by ${nameOf(named, hider)}`;
  return state === 'inside' ? 'inside something' : state;
}

/** The same of a face that is seen, as short as it goes. */
export const faceWords = ({ density, above }: StandingPerson): string =>
  `${(density ?? 0).toFixed(0)} px/m, ${Math.abs(above).toFixed(0)}° from ${above < 0 ? 'below' : 'above'}`;

/** One line in a sentence: "at ground nothing is seen nearer than 1.69 m, identify from 1.69 to 3.74 m, …". */
function lineSentence(line: SectionLine, named: Named): string {
  const near =
    line.nearest === null
      ? 'nothing is covered'
      : `nothing is seen nearer than ${metres(line.nearest, named.units)}`;
  const stretches = line.stretches
    .filter(({ state, to }) => state !== 'out of frame' && state !== 'inside' && to > 0)
    .map((one) => {
      const [what = ''] = stretchWords(one, named);
      return `${what.toLowerCase()} from ${fixed(one.from, 2)} to ${metres(one.to, named.units)}`;
    });
  return `${lineName(line)} ${[near, ...stretches].join(', ')}`;
}

/** The whole section in words, for those who do not see it. */
export function sectionSentence(section: Section, named: Named): string {
  const { camera, mountingHeight, person } = section;
  const down = `${Math.abs(camera.tilt).toFixed(1)}° ${camera.tilt < 0 ? 'up' : 'down'}`;
  const [first] = section.lines;
  return [
    `Section through ${camera.name} along ${camera.pan.toFixed(0)}°: lens ${metres(mountingHeight, named.units)} up, tilted ${down}`,
    ...(first === undefined ? [] : [lineSentence(first, named)]),
    `A person ${metres(person.distance, named.units)} away: ${personWords(person, named).join('; ')}`,
  ]
    .map((one) => `${one.charAt(0).toUpperCase()}${one.slice(1)}.`)
    .join(' ');
}
