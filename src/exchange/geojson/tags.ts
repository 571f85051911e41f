import { lengthOf } from '../../base/length.ts';

/** The tags of one feature, as OpenStreetMap writes them. */
export type Tags = Readonly<Record<string, string>>;

/** What a length tag may consist of: a number, perhaps a unit, feet and inches. No sums, ranges or lists. */
const LENGTH_FORM =
  /^\s*~?\s*\d[\d.,\s/]*(?:\s*(?:m|cm|mm|ft|in|feet|metres|meters|'|"|’|′|″|[\d.,/\s])+)?\s*$/i;

/**
 * A length as tagged, m: "12", "12 m", "12,5", "40'", "40 ft", "7'4\"". A bare number is metres.
 * @returns null where the tag is missing or cannot be read as one length
 */
export function taggedLength(tags: Tags, key: string): number | null {
  const text = tags[key];
  if (text === undefined || !LENGTH_FORM.test(text)) return null;
  const plain = text
    .replace('~', '')
    .replace(/metres|meters/i, 'm')
    .replace(/feet/i, 'ft');
  const reading = lengthOf(plain, 'metres');
  return reading.ok ? reading.metres : null;
}

/** A number as tagged, e.g. of levels: "2", "2.5", "1,5". Null where it is none or negative. */
export function taggedNumber(tags: Tags, key: string): number | null {
  const text = tags[key]?.trim().replace(',', '.');
  if (text === undefined || !/^\d+(?:\.\d+)?$/.test(text)) return null;
  return Number(text);
}

const POINTS = [
  'N',
  'NNE',
  'NE',
  'ENE',
  'E',
  'ESE',
  'SE',
  'SSE',
  'S',
  'SSW',
  'SW',
  'WSW',
  'W',
  'WNW',
  'NW',
  'NNW',
];

/** A bearing as tagged, °: "135", "SE". Null where it is none. */
export function taggedBearing(tags: Tags, key: string): number | null {
  const text = tags[key]?.trim().toUpperCase().replace('°', '');
  if (text === undefined || text === '') return null;
  const point = POINTS.indexOf(text);
  if (point >= 0) return point * 22.5;
  const degrees = Number(text);
  return Number.isFinite(degrees) && Math.abs(degrees) <= 360 ? (degrees + 360) % 360 : null;
}
