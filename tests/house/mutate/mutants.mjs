import { parseSync } from 'vite';
import { assignmentSwaps, binarySwaps, listSwaps, mathSwaps, wrongNumber } from './swaps.mjs';

/**
 * One way of breaking a file.
 * @typedef {object} Mutant
 * @property {string} kind
 * @property {number} start  where the broken part starts in the text
 * @property {number} end
 * @property {string} text  what stands there instead
 * @property {boolean} statement  whether the part is a statement rather than an expression
 * @property {string} name  the line with the change marked, the same as long as the line is
 */
/** @typedef {Record<string, unknown> & { type: string, start: number, end: number }} Syntax */

/**
 * @param {unknown} value
 * @returns {value is Syntax}
 */
const isSyntax = (value) =>
  typeof value === 'object' && value !== null && 'type' in value && typeof value.type === 'string';

/** Syntax that only types are made of; what `as` stands behind is looked into. */
const looksThrough = new Set(['TSAsExpression', 'TSNonNullExpression', 'TSSatisfiesExpression']);
const typesOnly = new Set(['typeAnnotation', 'returnType', 'typeParameters', 'typeArguments', 'implements']);

/** @param {unknown} side */
const isText = (side) => {
  if (!isSyntax(side)) return false;
  return side.type === 'TemplateLiteral' || (side.type === 'Literal' && typeof side['value'] === 'string');
};

/**
 * Every mutant of a TypeScript file, in the order of its text. Left alone: types, imports, texts, what is thrown, and
 * numbers behind `??`, which only tell the type check what an index within bounds would be if it were not.
 * @param {string} file
 * @param {string} source
 * @returns {Mutant[]}
 */
export const mutantsOf = (file, source) => {
  const { program, errors } = parseSync(file, source);
  if (errors.length > 0) throw new Error(`${file}: ${errors[0]?.message ?? 'does not parse'}`);
  /** @type {Mutant[]} */
  const found = [];
  /** What stands behind `??`. @type {Set<Syntax>} */
  const guards = new Set();
  /** @param {Syntax} part */
  const code = (part) => source.slice(part.start, part.end);

  /**
   * @param {string} kind
   * @param {Syntax} part
   * @param {string} text
   * @param {{ start: number, end: number, by: string }} shown  the change as the name tells it
   * @param {boolean} [statement]
   */
  const add = (kind, part, text, shown, statement = false) => {
    const from = source.lastIndexOf('\n', shown.start - 1) + 1;
    const until = source.indexOf('\n', shown.end - 1);
    const line = (/** @type {number} */ a, /** @type {number} */ b) =>
      source.slice(a, b).replace(/\s+/g, ' ');
    const old = line(shown.start, shown.end);
    const after = line(shown.end, until < 0 ? source.length : until);
    const name = `${line(from, shown.start)}⟦${old} → ${shown.by}⟧${after}`.trim();
    found.push({ kind, start: part.start, end: part.end, text, statement, name });
  };
  /** @param {string} kind @param {Syntax} part @param {string} by @param {boolean} [statement] */
  const whole = (kind, part, by, statement) =>
    add(kind, part, statement ? ';' : `(${by})`, { start: part.start, end: part.end, by }, statement);

  /** @param {Syntax} part @param {Syntax} left @param {Syntax} right @param {string} operator @param {string} by */
  const operator = (part, left, right, operator, by, kind = 'operator') => {
    const start = source.indexOf(operator, left.end);
    add(kind, part, `((${code(left)}) ${by} (${code(right)}))`, { start, end: start + operator.length, by });
  };

  /** @param {Syntax} part @param {Syntax | null} parent @param {string} key */
  const here = (part, parent, key) => {
    const { left, right, test, argument, callee } = part;
    const sign = String(part['operator']);
    const decides = key === 'test';
    switch (part.type) {
      case 'BinaryExpression':
      case 'LogicalExpression': {
        if (!isSyntax(left) || !isSyntax(right)) return;
        if (sign === '+' && (isText(left) || isText(right))) return;
        if (sign === '??') guards.add(right);
        if (sign === '??' && right.type !== 'Literal' && code(right) !== '-1')
          operator(part, left, right, sign, '&&', 'default');
        (binarySwaps[sign] ?? []).forEach((by, index) => {
          // Hardly any test tells a decision turned over from one that always goes one way.
          if (decides && (index === 1 || /^[!=]==$/.test(sign))) return;
          operator(part, left, right, sign, by, index === 0 ? 'operator' : 'turned over');
        });
        return;
      }
      case 'AssignmentExpression': {
        const by = assignmentSwaps[sign];
        if (by !== undefined && isSyntax(left) && isSyntax(right) && key !== 'update')
          operator(part, left, right, sign, by);
        return;
      }
      case 'UpdateExpression':
        if (key === 'update' || !isSyntax(argument)) return;
        whole('operator', part, code(part).replace(sign, sign === '++' ? '--' : '++'));
        return;
      case 'UnaryExpression':
        if (!isSyntax(argument)) return;
        if ((sign === '-' && !guards.has(part)) || (sign === '!' && !decides))
          whole('sign', part, code(argument));
        return;
      case 'Literal': {
        const { value } = part;
        if (typeof value === 'boolean') whole('constant', part, String(!value));
        const guard = guards.has(part) || (parent !== null && guards.has(parent));
        if (typeof value === 'number' && !guard) whole('constant', part, wrongNumber(value));
        return;
      }
      case 'ConditionalExpression':
      case 'IfStatement':
      case 'WhileStatement':
      case 'ForStatement': {
        if (!isSyntax(test) || test.type === 'Literal') return;
        if (!part.type.includes('tional') && part.type !== 'IfStatement') whole('decision', test, 'false');
        else for (const by of ['true', 'false']) whole('decision', test, by);
        return;
      }
      case 'CallExpression': {
        if (!isSyntax(callee) || callee.type !== 'MemberExpression' || parent?.type === 'ChainExpression')
          return;
        const { object, property } = callee;
        if (!isSyntax(object) || !isSyntax(property) || callee['optional'] === true) return;
        const swaps = code(object) === 'Math' ? mathSwaps : listSwaps;
        const called = code(property);
        const by = Object.hasOwn(swaps, called) ? swaps[called] : undefined;
        if (by === undefined) return;
        const rest = source.slice(callee.end, part.end);
        const text = by === '' ? (swaps === mathSwaps ? rest : code(object)) : `${code(object)}.${by}${rest}`;
        add('call', part, `(${text})`, { start: property.start, end: property.end, by: by || 'nothing' });
        return;
      }
      case 'ExpressionStatement':
        if (
          part['directive'] ||
          (isSyntax(part['expression']) && code(part['expression']).startsWith('super('))
        )
          return;
        whole('removed', part, 'nothing', true);
        return;
      case 'ContinueStatement':
        whole('removed', part, 'nothing', true);
        return;
      case 'BreakStatement':
        if (parent?.type !== 'SwitchCase') whole('removed', part, 'nothing', true);
        return;
      case 'ReturnStatement':
        if (!isSyntax(argument)) whole('removed', part, 'nothing', true);
        return;
      default:
    }
  };

  /** @param {Syntax} part @param {Syntax | null} parent @param {string} key */
  const walk = (part, parent, key) => {
    if (part.type === 'ImportDeclaration' || part.type === 'ThrowStatement') return;
    if (part.type.startsWith('TS') && !looksThrough.has(part.type)) return;
    here(part, parent, key);
    for (const [name, value] of Object.entries(part)) {
      if (typesOnly.has(name)) continue;
      if ((name === 'key' || name === 'property') && part['computed'] !== true) continue;
      for (const child of Array.isArray(value) ? value : [value])
        if (isSyntax(child)) walk(child, part, name);
    }
  };
  for (const part of program.body) if (isSyntax(part)) walk(part, null, '');
  return numbered(found.sort((a, b) => a.start - b.start || b.end - a.end));
};

/** Tells mutants of the same name apart by counting them. @param {Mutant[]} mutants */
const numbered = (mutants) => {
  /** @type {Map<string, number>} */
  const seen = new Map();
  return mutants.map((mutant) => {
    const count = (seen.get(mutant.name) ?? 0) + 1;
    seen.set(mutant.name, count);
    return count === 1 ? mutant : { ...mutant, name: `${mutant.name} #${count}` };
  });
};

/** The text with one mutant in it. @param {string} source @param {Mutant} mutant */
export const broken = (source, mutant) =>
  source.slice(0, mutant.start) + mutant.text + source.slice(mutant.end);

/**
 * The text that notes in `globalThis.soffitHits`, from a first number on, which mutants' places are reached.
 * @param {string} source
 * @param {readonly Mutant[]} mutants
 * @param {number} first
 */
export const watched = (source, mutants, first) => {
  /** @type {Map<string, { start: number, end: number, statement: boolean, numbers: number[] }>} */
  const places = new Map();
  mutants.forEach(({ start, end, statement }, index) => {
    const name = `${start} ${end} ${statement}`;
    const place = places.get(name) ?? { start, end, statement, numbers: [] };
    place.numbers.push(first + index);
    places.set(name, place);
  });
  const marks = [...places.values()].flatMap(({ start, end, statement, numbers }) => {
    const notes = numbers.map((number) => `hits_[${number}]=1`).join(',');
    // An outer part opens first and closes last; a statement is outside of the expression of the same length.
    const size = (end - start) * 2 + (statement ? 1 : 0);
    return [
      { at: start, closes: false, size, text: statement ? `{${notes};` : `(${notes},` },
      { at: end, closes: true, size, text: statement ? '}' : ')' },
    ];
  });
  marks.sort((a, b) => {
    if (a.at !== b.at) return a.at - b.at;
    if (a.closes !== b.closes) return a.closes ? -1 : 1;
    return a.closes ? a.size - b.size : b.size - a.size;
  });
  let text = 'const hits_ = globalThis.soffitHits;';
  let done = 0;
  for (const mark of marks) {
    text += source.slice(done, mark.at) + mark.text;
    done = mark.at;
  }
  return text + source.slice(done);
};
