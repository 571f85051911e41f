/**
 * What each operator is broken into. The first of a comparison moves its boundary, the second turns it over.
 * @type {Readonly<Record<string, readonly string[]>>}
 */
export const binarySwaps = {
  '<': ['<=', '>='],
  '<=': ['<', '>'],
  '>': ['>=', '<='],
  '>=': ['>', '<'],
  '===': ['!=='],
  '!==': ['==='],
  '+': ['-'],
  '-': ['+'],
  '*': ['/'],
  '/': ['*'],
  '%': ['*'],
  '&': ['|'],
  '|': ['&'],
  '^': ['&'],
  '<<': ['>>'],
  '>>': ['<<'],
  '>>>': ['<<'],
  '&&': ['||'],
  '||': ['&&'],
};

/** @type {Readonly<Record<string, string>>} */
export const assignmentSwaps = { '+=': '-=', '-=': '+=', '*=': '/=', '/=': '*=', '|=': '&=', '&=': '|=' };

/** @type {Readonly<Record<string, string>>} */
export const mathSwaps = {
  min: 'max',
  max: 'min',
  floor: 'ceil',
  ceil: 'floor',
  round: 'floor',
  trunc: 'ceil',
  sin: 'cos',
  cos: 'sin',
  tan: 'sin',
  asin: 'acos',
  acos: 'asin',
  abs: '',
  sqrt: '',
  sign: '',
};

/** Methods of lists: another one, or none, so that the list stays as it is. @type {Readonly<Record<string, string>>} */
export const listSwaps = {
  some: 'every',
  every: 'some',
  filter: '',
  sort: '',
  toSorted: '',
  reverse: '',
  toReversed: '',
  slice: '',
};

/**
 * A number that is wrong: small whole ones are one off, tolerances a million times as wide, all else is doubled.
 * @param {number} value
 */
export const wrongNumber = (value) => {
  if (Number.isInteger(value) && Math.abs(value) < 1000) return String(value + 1);
  return String(Math.abs(value) < 1e-5 ? value * 1e6 : value * 2);
};
