import { lengthText, type LengthUnit } from '../../base/length.ts';

/** A course of brick, m: 65 mm of brick and a joint of 10; common practice, no source. */
const COURSE = 0.075;

/** A length as a tape reads it: whole millimetres, or feet, inches and eighths, without feet or inches that are none. */
export function tape(metres: number, units: LengthUnit): string {
  if (units !== 'feet') return lengthText(metres, 'millimetres').text;
  return lengthText(metres, 'feet').text.replace(/^(−?)0' (?:0 (?=\d))?/u, '$1');
}

/** The same with its unit. */
export const tapeWithUnit = (metres: number, units: LengthUnit): string =>
  units === 'feet' ? tape(metres, units) : `${tape(metres, units)} mm`;

/** "36 courses", "34 courses + 45 mm". */
export function courses(metres: number, units: LengthUnit): string {
  // To the millimetre that is printed, so that both say the same.
  const size = Math.round(metres * 1000) / 1000;
  const whole = Math.floor(size / COURSE + 1e-6);
  const rest = size - whole * COURSE;
  const word = whole === 1 ? 'course' : 'courses';
  return rest < 0.0005 ? `${whole} ${word}` : `${whole} ${word} + ${tapeWithUnit(rest, units)}`;
}
