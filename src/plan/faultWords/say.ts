import type { Fault } from '../../base/fault.ts';

/** A sentence or two for one fault: what, where, how to mend. */
export type Words = (fault: Fault) => string;

/** The thing's name in quotation marks, at the beginning of a sentence; else words for "the file". */
export const subjectOf = ({ subject }: Fault, otherwise = 'The file'): string =>
  subject === undefined ? otherwise : `“${subject}”`;

/** " (structures › house › outline › 3)": the way from the root of the file; entries of lists count from 1. */
export function where({ path }: Fault): string {
  if (path.length === 0) return '';
  return ` (${path.map((key) => (typeof key === 'number' ? key + 1 : key)).join(' › ')})`;
}

/** What stood there, in quotation marks if it was text. */
export const given = ({ given: value }: Fault, otherwise = 'nothing'): string => {
  if (value === undefined) return otherwise;
  return typeof value === 'number' ? String(value) : `“${value}”`;
};

export const allowed = ({ allowed: value }: Fault, otherwise = 'another value'): string => value ?? otherwise;

/** The last key of the path, as a person would read it: "focalLength" becomes "focal length". */
export function lastKey({ path }: Fault): string {
  const key = path.findLast((part) => typeof part === 'string');
  return key === undefined
    ? 'value'
    : String(key).replace(/([a-z])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`);
}

/** The same at the beginning of a sentence. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
