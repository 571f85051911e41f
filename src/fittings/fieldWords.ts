import type { LengthTrouble } from '../base/length.ts';
import type { Bounds } from './edit.ts';
import type { Measure } from './measure.ts';

/** What a person typed, read: a number within its bounds, or words on how to mend it. */
export type Typed =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly words: string };

/** Reads the text of a field called `label`. */
export function typedNumber(label: string, text: string, measure: Measure, bounds: Bounds): Typed {
  const reading = measure.read(text);
  if (!reading.ok) return { ok: false, words: troubleWords(reading.trouble, text, measure) };
  if (reading.value < bounds.least || reading.value > bounds.most)
    return { ok: false, words: boundsWords(label, measure, bounds) };
  return reading;
}

function troubleWords(trouble: LengthTrouble, text: string, measure: Measure): string {
  const article = /^[aeiou]/.test(measure.noun) ? 'an' : 'a';
  switch (trouble) {
    case 'empty':
      return `Write ${article} ${measure.noun}: ${measure.example}.`;
    case 'ambiguous':
      return `“${text}” could mean two things. Write ${withoutThousands(text)}.`;
    case 'by zero':
      return `“${text}” divides by nought.`;
    case 'unreadable':
      return `“${text}” is not ${article} ${measure.noun}. Write ${measure.example}.`;
  }
}

// The sign that comes last is the decimal one.
const withoutThousands = (text: string): string =>
  (text.lastIndexOf('.') > text.lastIndexOf(',')
    ? text.replaceAll(',', '')
    : text.replaceAll('.', '')
  ).trim();

function boundsWords(label: string, measure: Measure, { least, most }: Bounds): string {
  const shown = (value: number) => {
    const { text, unit } = measure.show(value);
    return unit === '°' || unit === '' ? `${text}${unit}` : `${text} ${unit}`;
  };
  return `${label} must be from ${shown(least)} to ${shown(most)}.`;
}

/** What is said when a field is left with a text that could not be taken. */
export function keptWords(words: string, value: number, measure: Measure): string {
  const { text, unit } = measure.show(value);
  return `${words} ${text}${unit === '°' || unit === '' ? unit : ` ${unit}`} is kept.`;
}

/** The next number of so many steps from a value, held within its bounds. */
export function stepped(value: number, steps: number, step: number, { least, most }: Bounds): number {
  // Nine figures: enough for any length here, and 0.1 + 0.2 stays 0.3.
  const next = Math.round((value + steps * step) * 1e9) / 1e9;
  return Math.min(most, Math.max(least, next));
}
