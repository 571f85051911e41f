import type { Section } from '../../assess/section/section.ts';
import type { SumSettings } from '../../assess/sum/sumSection.ts';
import { fixed, type LengthUnit } from '../../base/length.ts';
import type { Edition } from '../../coverage/band.ts';
import { reachOf, STRAIGHT, type Sum } from '../../optics/quickSum.ts';
import { metres } from '../section/sectionWords.ts';

/** One answer: "Width of view", "12.40 m", and what it is of. */
export interface SumRow {
  readonly name: string;
  readonly value: string;
  readonly note: string | null;
}

/** What a sum's words are taken from. */
export interface SumNamed {
  readonly edition: Edition;
  readonly settings: SumSettings;
  readonly units: LengthUnit;
}

/** What pixels do not promise; stands wherever a sum goes out. */
export const SUM_CAUTION =
  'Enough pixels, by geometry alone: light, movement, focus and compression are not in it. No promise that anyone is known.';

/** The answers in the order in which they are asked for. */
export function sumRows(sum: Sum, section: Section, named: SumNamed): readonly SumRow[] {
  const { units, settings } = named;
  const { asked, camera, hfov, vfov } = sum;
  const far = metres(asked.distance, units);
  const target = targetWords(asked.targetHeight, settings, units);
  const row = (name: string, value: string, note: string | null = null): SumRow => ({ name, value, note });
  const none = 'beside the picture';
  return [
    row('Pixels', sum.density === null ? none : `${count(sum.density)} px/m`, uprightNote(sum)),
    row('On a face, 16 cm', sum.face === null ? none : `${count(sum.face)} px`),
    bandRow(sum, section, named),
    row(
      'Width of view',
      sum.width === null ? (sum.seen ? 'no end' : none) : metres(sum.width, units),
      `at ${target}, ${far} away`,
    ),
    row(sum.above < 0 ? 'Seen from below' : 'Seen from above', `${Math.abs(sum.above).toFixed(1)}°`),
    row('Tilt', tiltWords(camera.tilt), asked.tilt === null ? 'brings the target to the middle' : 'as set'),
    row(
      'Nothing seen nearer than',
      sum.stretch === null ? none : metres(sum.stretch.from, units),
      `at ${target}`,
    ),
    row('Lens', `${fixed(camera.focalLength, 2)} mm`, anglesNote(hfov, vfov)),
    ...reachRows(sum, named),
  ];
}

const count = (pixels: number): string => (pixels < 9.95 ? pixels.toFixed(1) : pixels.toFixed(0));

/** The answers that are asked for most, in a line: "230 px/m, 37 px a face, 11.70 m wide, 10° above". */
export function sumGist({ density, face, width, seen, above }: Sum, { units }: SumNamed): string {
  if (!seen || density === null || face === null) return 'The target lies beside the picture.';
  return [
    `${count(density)} px/m`,
    `${count(face)} px a face`,
    width === null ? 'no end to the view' : `${metres(width, units)} wide`,
    `${Math.abs(above).toFixed(0)}° ${above < 0 ? 'below' : 'above'}`,
  ].join(', ');
}

const uprightNote = ({ upright }: Sum): string | null =>
  upright === null ? null : `across the sight line; upright ${count(upright)}`;

const tiltWords = (tilt: number): string => `${fixed(Math.abs(tilt), 1)}° ${tilt < 0 ? 'up' : 'down'}`;

const anglesNote = (hfov: number | null, vfov: number | null): string =>
  hfov === null || vfov === null ? 'all round' : `${fixed(hfov, 1)}° × ${fixed(vfov, 1)}°`;

/** "face, 1.60 m", "ground", "0.50 m". */
function targetWords(height: number, { faceHeight }: SumSettings, units: LengthUnit): string {
  if (height === 0) return 'ground';
  return height === faceHeight ? `face, ${metres(height, units)}` : metres(height, units);
}

/** For which band there are enough pixels; a face may count for less. */
function bandRow(sum: Sum, { lines }: Section, { edition }: SumNamed): SumRow {
  const name = 'Enough for';
  const { distance } = sum.asked;
  const here = lines[0]?.stretches.find(({ from, to }) => from <= distance && distance <= to);
  if (!sum.seen || here === undefined) return { name, value: 'beside the picture', note: null };
  const band = edition.bands[here.band - 1];
  if (band === undefined) return { name, value: 'too few pixels', note: null };
  return { name, value: band.name, note: STEEP[here.lost] ?? null };
}

/** Why a face counts for less: by the numbers of coverage/rule.ts. */
const STEEP: Readonly<Record<number, string>> = { 1: 'no more, seen from too steep' };

/** How far each band goes by its pixels, the finest first. */
function reachRows(sum: Sum, { edition, units }: SumNamed): readonly SumRow[] {
  return edition.bands.toReversed().map(({ name, density }) => {
    const reach = reachOf(sum, density);
    return {
      name: `${name} to`,
      value: reach === null ? 'nowhere' : reach >= 1e5 ? 'no end' : metres(reach, units),
      note: `${density} px/m`,
    };
  });
}

/** What is to be known about the lens of a sum. */
export function sumNotes({ asked, contradicts, hfov, seen }: Sum): readonly string[] {
  const { lens, sensor } = asked;
  return [
    ...(seen ? [] : ['The target lies beside the picture. Let the tilt follow it, or take a wider lens.']),
    ...(contradicts === null
      ? []
      : [
          `${fixed(lens.focalLength ?? 0, 2)} mm and ${fixed(lens.hfov ?? 0, 1)}° contradict a sensor ${fixed(sensor.width, 2)} mm wide: that angle would go with ${fixed(contradicts, 2)} mm.`,
        ]),
    ...(lens.hfov === null && lens.law === undefined
      ? [
          'Summed as a lens that draws straight lines straight. Data sheets often print a wider angle for short lenses, since those bend: type it too.',
        ]
      : []),
    ...(lens.focalLength === null && (hfov ?? 0) >= STRAIGHT
      ? ['So wide, it is summed as a lens that spreads angles evenly.']
      : []),
  ];
}

/** "2688 × 1520 px on 5.37 × 3.04 mm". */
export const cameraWords = ({ asked: { frame, sensor } }: Sum): string =>
  `${frame.width} × ${frame.height} px on ${fixed(sensor.width, 2)} × ${fixed(sensor.height, 2)} mm`;

/** What the sum is of: "Lens 2.70 m up, target face, 1.60 m, 6.00 m away". */
export const sumTitle = ({ asked }: Sum, { settings, units }: SumNamed): string =>
  `Lens ${metres(asked.height, units)} up, target ${targetWords(asked.targetHeight, settings, units)}, ${metres(asked.distance, units)} away`;

/** The whole as plain text, to be pasted. */
export function sumText(sum: Sum, section: Section, named: SumNamed): string {
  const lines = sumRows(sum, section, named).map(
    ({ name, value, note }) => `${name}: ${value}${note === null ? '' : ` (${note})`}`,
  );
  return [
    `${sumTitle(sum, named)}.`,
    `${cameraWords(sum)}.`,
    ...lines,
    `Bands: ${named.edition.name}.`,
    SUM_CAUTION,
  ].join('\n');
}
