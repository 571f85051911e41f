import { angleOf } from '../../../base/angleText.ts';
import { lengthOf, type LengthTrouble, type LengthUnit } from '../../../base/length.ts';
import type { StripField } from '../chart.ts';

/** A typed text as a number, or what is wrong with it and how to write it. */
export type TypedNumber =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly trouble: string };

const EXAMPLES: Readonly<Record<LengthUnit, string>> = {
  metres: '2.4, 240 cm or 7\' 10"',
  millimetres: '2400, 2.4 m or 7\' 10"',
  feet: '7\' 10", 2.4 m or 240 cm',
};

/** Reads a length, m; a bare number is in the plan's unit. */
export function typedLength(text: string, unit: LengthUnit): TypedNumber {
  const reading = lengthOf(text, unit);
  return reading.ok
    ? { ok: true, value: reading.metres }
    : { ok: false, trouble: troubleWords(reading.trouble, text, 'a length', EXAMPLES[unit]) };
}

/** Reads an angle or a slope, °. */
export function typedAngle(text: string): TypedNumber {
  const reading = angleOf(text);
  return reading.ok
    ? { ok: true, value: reading.degrees }
    : { ok: false, trouble: troubleWords(reading.trouble, text, 'an angle', '22.5, 1:40 or 12%') };
}

/** Reads what a field of the strip measures. */
export function typedField(text: string, measure: StripField['measure'], unit: LengthUnit): TypedNumber {
  if (measure === 'length') return typedLength(text, unit);
  if (measure === 'angle') return typedAngle(text);
  const count = Number(text.trim());
  return text.trim() !== '' && Number.isInteger(count)
    ? { ok: true, value: count }
    : { ok: false, trouble: `“${text}” is not a whole number. Write 2.` };
}

function troubleWords(trouble: LengthTrouble, text: string, what: string, example: string): string {
  switch (trouble) {
    case 'empty':
      return `Write ${what}: ${example}.`;
    case 'ambiguous':
      return `“${text}” could mean two things. Write ${withoutThousands(text)}.`;
    case 'by zero':
      return `“${text}” divides by nought.`;
    case 'unreadable':
      return `“${text}” is not ${what}. Write ${example}.`;
  }
}

// The sign that comes last is the decimal one.
const withoutThousands = (text: string): string =>
  (text.lastIndexOf('.') > text.lastIndexOf(',')
    ? text.replaceAll(',', '')
    : text.replaceAll('.', '')
  ).trim();
