import type { Fault } from '../base/fault.ts';

/**
 * Where and how a text stops being JSON; asked only after `JSON.parse` refused it, whose own words differ between
 * browsers and do not tell a file that stops half-way from one that is wrong.
 * Walks the grammar of RFC 8259 with a list for the depth, so that no nesting overflows the stack.
 */
export function jsonFault(text: string): Fault {
  const at = firstError(text);
  if (text.trim() === '') return { code: 'file.empty', path: [] };
  if (at >= text.length) return { code: 'file.truncated', path: [], given: place(text, text.length) };
  const word = /^-?(NaN|Infinity)/.exec(text.slice(at, at + 9));
  const code = word ? 'number.notFinite' : 'file.notJson';
  return { code, path: [], given: `${word?.[0] ?? quoted(text.slice(at, at + 12))} at ${place(text, at)}` };
}

/** "line 3, column 14". */
function place(text: string, at: number): string {
  const before = text.slice(0, at);
  const lines = before.split('\n');
  return `line ${lines.length}, column ${(lines.at(-1) ?? '').length + 1}`;
}

const quoted = (piece: string): string => `“${piece.split('\n')[0]?.trim() ?? ''}”`;

const LITERAL = /true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const STRING = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y;
/** A number, and a string, that the end of the text cuts. */
const CUT_NUMBER = /-?\d*\.?\d*(?:[eE][+-]?\d*)?$/y;
const CUT = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*(?:\\(?:u[0-9a-fA-F]{0,3})?)?$/y;
const BLANK = /[ \t\n\r]*/y;

type Expected = 'value' | 'valueOrEnd' | 'key' | 'keyOrEnd' | 'colon' | 'commaOrEnd' | 'nothing';

/** Index of the first character that fits nowhere; the length where more was expected. */
function firstError(text: string): number {
  const open: ('{' | '[')[] = [];
  let expected: Expected = 'value';
  let at = 0;
  const take = (pattern: RegExp): boolean => {
    pattern.lastIndex = at;
    if (!pattern.test(text) || pattern.lastIndex === at) return false;
    at = pattern.lastIndex;
    return true;
  };
  const after = (): Expected => (open.length > 0 ? 'commaOrEnd' : 'nothing');
  const close = (bracket: '{' | '['): boolean => {
    if (open.at(-1) !== bracket) return false;
    open.pop();
    at += 1;
    expected = after();
    return true;
  };

  for (;;) {
    take(BLANK);
    if (at >= text.length) return at;
    const char = text.charAt(at);
    if (expected === 'nothing') return at;
    if (expected === 'colon') {
      if (char !== ':') return at;
      at += 1;
      expected = 'value';
    } else if (expected === 'commaOrEnd') {
      if (char === ',') {
        at += 1;
        expected = open.at(-1) === '{' ? 'key' : 'value';
      } else if (!(char === '}' && close('{')) && !(char === ']' && close('['))) return at;
    } else if (expected === 'key' || expected === 'keyOrEnd') {
      if (expected === 'keyOrEnd' && char === '}') close('{');
      else if (take(STRING)) expected = 'colon';
      else return take(CUT) ? text.length : at;
    } else if (expected === 'valueOrEnd' && char === ']') {
      close('[');
    } else if (char === '{' || char === '[') {
      open.push(char);
      at += 1;
      expected = char === '{' ? 'keyOrEnd' : 'valueOrEnd';
    } else if (take(CUT_NUMBER)) {
      return text.length;
    } else if (take(STRING) || take(LITERAL)) {
      expected = after();
    } else {
      // A word or string that the end of the text cuts is a file that stops half-way.
      const rest = text.slice(at, at + 8);
      const cut =
        at + rest.length >= text.length && ['true', 'false', 'null'].some((word) => word.startsWith(rest));
      return cut || take(CUT) ? text.length : at;
    }
  }
}
