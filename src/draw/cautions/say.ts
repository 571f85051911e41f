import { fixed, lengthText, type LengthUnit } from '../../base/length.ts';

/** Numbers of cautions in words, in the plan's units. */
export interface Say {
  /** "2.40 m", `7' 10 1/2"`. */
  length(metres: number): string;
  /** "32°". */
  angle(degrees: number): string;
  /** "32 %"; below one "less than 1 %". */
  share(share: number): string;
  /** "4.2 m²". */
  area(squareMetres: number): string;
  /** "1/25 s", "0.5 s". */
  exposure(milliseconds: number): string;
  /** "07:10". */
  hour(hours: number): string;
}

/** @param units of the plan; areas stay in square metres */
export const sayIn = (units: LengthUnit): Say => ({
  length: (metres) => {
    const { text, unit } = lengthText(metres, units);
    return unit === '' ? text : `${text} ${unit}`;
  },
  angle: (degrees) => `${fixed(degrees, 0)}°`,
  share: (share) => (share < 0.01 ? 'less than 1 %' : `${fixed(share * 100, 0)} %`),
  area: (squareMetres) => `${fixed(squareMetres, squareMetres < 10 ? 1 : 0)} m²`,
  exposure: (milliseconds) =>
    milliseconds < 500 ? `1/${fixed(1000 / milliseconds, 0)} s` : `${fixed(milliseconds / 1000, 1)} s`,
  hour: (hours) => {
    const minutes = Math.round(hours * 60);
    const two = (n: number) => String(n).padStart(2, '0');
    return `${two(Math.floor(minutes / 60) % 24)}:${two(minutes % 60)}`;
  },
});

/** With a capital: a sentence may begin with what a person calls a thing. */
export const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "front gate, side door and window". */
export const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1) ?? ''}`;

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** Runs of months, also over the turn of the year: "from October to February", "in May", "all year". */
export function monthsText(months: readonly number[]): string {
  const has = new Set(months);
  if (has.size >= 12) return 'all year';
  const before = (month: number) => (month === 1 ? 12 : month - 1);
  const after = (month: number) => (month === 12 ? 1 : month + 1);
  const runs = [...has]
    .filter((month) => !has.has(before(month)))
    .sort((one, two) => one - two)
    .map((first) => {
      let end = first;
      while (has.has(after(end))) end = after(end);
      const [from, to] = [MONTHS[first - 1] ?? '', MONTHS[end - 1] ?? ''];
      return first === end ? `in ${from}` : `from ${from} to ${to}`;
    });
  return listed(runs);
}
