import type { Fault } from '../base/fault.ts';
import { editWords } from './faultWords/edit.ts';
import { exchangeWords } from './faultWords/exchange.ts';
import { fileWords } from './faultWords/file.ts';
import { modelWords } from './faultWords/model.ts';
import { planWords } from './faultWords/plan.ts';
import { given, subjectOf, where, type Words } from './faultWords/say.ts';

/** Every code that has words of its own. */
export const faultWords: Readonly<Record<string, Words>> = {
  ...fileWords,
  ...planWords,
  ...editWords,
  ...modelWords,
  ...exchangeWords,
};

/**
 * A fault as a plain sentence or two: what is wrong, where, and how to mend it.
 * The text is plain: names from a file may hold anything, so show it as text, never as HTML.
 */
export function faultText(fault: Fault): string {
  const words = Object.hasOwn(faultWords, fault.code) ? faultWords[fault.code] : undefined;
  if (words) return words(fault);
  const what = `${subjectOf(fault, 'Something')} cannot be used as it is${where(fault)}`;
  const found = fault.given === undefined ? '' : `: ${given(fault)}`;
  return `${what}${found}. ${fault.allowed === undefined ? 'Check it and try again.' : `Make it ${fault.allowed}.`}`;
}
