import type { Fault } from '../base/fault.ts';
import type { z } from './zod.ts';

type Issue = z.core.$ZodIssue;
type Key = string | number;

/**
 * What zod found wrong with a value, as faults: what stood there, what would be accepted, and the name of the
 * innermost thing around it that has one.
 */
export function shapeFaults(issues: readonly Issue[], root: unknown): readonly Fault[] {
  return issues.flatMap((issue) => {
    const path = issue.path.map((key) => (typeof key === 'symbol' ? String(key) : key));
    const subject = nameAround(root, path);
    const fault = (code: string, rest: Partial<Fault> = {}, at: readonly Key[] = path): Fault => ({
      code,
      path: at,
      given: shown(valueAt(root, at)),
      ...rest,
      ...(subject === undefined ? {} : { subject }),
    });
    if (/^[a-z]+\.[A-Za-z]+$/.test(issue.message)) return [fault(issue.message, allowedBy(issue))];
    switch (issue.code) {
      case 'unrecognized_keys':
        return issue.keys.map((key) => fault('value.extra', { given: key }, [...path, key]));
      case 'invalid_type':
        return [wrongType(issue, fault, valueAt(root, path))];
      case 'invalid_value':
        return [fault('value.choice', { allowed: listed(issue.values.map(String)) })];
      case 'invalid_union':
        return [fault('value.choice', { allowed: listed((optionsOf(issue) ?? []).map(String)) })];
      case 'invalid_key':
        return [fault('id.form', { given: String(path.at(-1)) })];
      case 'too_small':
      case 'too_big':
        if (issue.origin === 'array') return [fault('list.length', allowedBy(issue))];
        return [fault('number.range', allowedBy(issue))];
      default:
        return [fault('value.type')];
    }
  });
}

function optionsOf(issue: Issue): readonly unknown[] | undefined {
  return 'options' in issue && Array.isArray(issue.options) ? issue.options : undefined;
}

function wrongType(
  issue: Extract<Issue, { code: 'invalid_type' }>,
  fault: (code: string, rest?: Partial<Fault>) => Fault,
  value: unknown,
): Fault {
  if (value === undefined) return fault('value.missing', { allowed: kindInWords(issue.expected) });
  if (typeof value === 'number' && !Number.isFinite(value)) return fault('number.notFinite');
  return fault('value.type', { allowed: kindInWords(issue.expected) });
}

const kindInWords = (expected: string): string => {
  const words: Record<string, string> = {
    number: 'a number',
    int: 'a whole number',
    string: 'text in quotation marks',
    boolean: 'true or false',
    array: 'a list in square brackets',
    tuple: 'a list of coordinates',
    object: 'a record in curly brackets',
    record: 'a record in curly brackets',
  };
  return words[expected] ?? expected;
};

function allowedBy(issue: Issue): Partial<Fault> {
  if (issue.code === 'too_small')
    return { allowed: issue.origin === 'array' ? `${issue.minimum} or more` : `${issue.minimum} or above` };
  if (issue.code === 'too_big')
    return { allowed: issue.origin === 'array' ? `${issue.maximum} or fewer` : `${issue.maximum} or below` };
  return {};
}

/** "a, b or c". */
export const listed = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;

/** The value at a path; undefined where there is none. */
function valueAt(root: unknown, path: readonly Key[]): unknown {
  let value = root;
  for (const key of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
    value = Reflect.get(value, key);
  }
  return value;
}

function nameAround(root: unknown, path: readonly Key[]): string | undefined {
  for (let depth = path.length; depth > 0; depth -= 1) {
    const name = valueAt(root, [...path.slice(0, depth), 'name']);
    if (typeof name === 'string' && name !== '') return name;
  }
  return undefined;
}

/** A value as a sentence can hold it. */
export function shown(value: unknown): string | number | undefined {
  if (typeof value === 'number') return value;
  if (typeof value === 'string') return value.length > 60 ? `${value.slice(0, 57)}…` : value;
  if (typeof value === 'boolean' || value === null) return String(value);
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : 'a list';
  return typeof value === 'object' ? 'a record' : undefined;
}
