import { angleOf } from '../base/angleText.ts';
import { bearing } from '../base/angle.ts';
import { fixed, lengthOf, lengthText } from '../base/length.ts';
import type { LengthTrouble, LengthUnit } from '../base/length.ts';

export type Reading =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly trouble: LengthTrouble };

/** How a kind of number is shown, read and stepped. */
export interface Measure {
  readonly noun: string;
  /** What to write, for the words of a text that could not be read. */
  readonly example: string;
  /** What an arrow key changes; Shift makes it ten times that. */
  readonly step: number;
  show(value: number): { readonly text: string; readonly unit: string };
  read(text: string): Reading;
}

const readLength = (text: string, unit: LengthUnit): Reading => {
  const reading = lengthOf(text, unit);
  return reading.ok ? { ok: true, value: reading.metres } : reading;
};

const EXAMPLES: Readonly<Record<LengthUnit, string>> = {
  metres: '7\' 10", 2.4 or 240 cm',
  millimetres: '7\' 10", 2400 or 2.4 m',
  feet: '7\' 10", 8 or 2.4 m',
};

/** Metres, shown and read in the plan's unit. */
export const lengths = (unit: LengthUnit): Measure => ({
  noun: 'length',
  example: EXAMPLES[unit],
  step: unit === 'feet' ? 0.0254 : 0.01,
  show: (value) => lengthText(value, unit),
  read: (text) => readLength(text, unit),
});

const readAngle = (text: string): Reading => {
  const reading = angleOf(text);
  return reading.ok ? { ok: true, value: reading.degrees } : reading;
};

/** Degrees; a slope is read too. */
export const angles: Measure = {
  noun: 'angle',
  example: '22.5, 1:40 or 12%',
  step: 0.1,
  show: (value) => ({ text: fixed(value, 1), unit: '°' }),
  read: readAngle,
};

/** Degrees clockwise from north, shown in [0, 360). */
export const bearings: Measure = {
  ...angles,
  noun: 'bearing',
  example: '225 for south-west',
  show: (value) => ({ text: fixed(bearing(Math.round(value * 10) / 10), 1), unit: '°' }),
};

/** A plain number with a unit: lens and sensor mm, pixels, counts. Figures after the point as many as the value needs, between the two. */
export const numbers = (
  unit: string,
  step: number,
  figures: readonly [least: number, most: number],
): Measure => ({
  noun: 'number',
  example: (1234.5).toFixed(figures[1] > 0 ? 1 : 0),
  step,
  show: (value) => {
    const [least, most] = figures;
    let decimals = least;
    while (decimals < most && Math.abs(Number(value.toFixed(decimals)) - value) > 10 ** -most / 2)
      decimals += 1;
    return { text: fixed(value, decimals), unit };
  },
  read: (text) => {
    const plain = unit !== '' && text.trimEnd().endsWith(unit) ? text.trimEnd().slice(0, -unit.length) : text;
    const reading = readAngle(plain.replace(/[°%:]/g, '?'));
    if (!reading.ok || figures[1] > 0 || Number.isInteger(reading.value)) return reading;
    return { ok: false, trouble: 'unreadable' };
  },
});
