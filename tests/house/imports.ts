import { parseSync } from 'vite';

/** One mention of another module in a source file. */
export interface Import {
  readonly specifier: string;
  /** Gone once the types are stripped. */
  readonly isType: boolean;
}

const isNode = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

const textOf = (node: unknown): string | undefined =>
  isNode(node) && node['type'] === 'Literal' && typeof node['value'] === 'string' ? node['value'] : undefined;

/** `new URL('…', import.meta.url)`: how a worker or an asset is named to the bundler. */
const urlOf = (node: Readonly<Record<string, unknown>>): string | undefined => {
  const callee = node['callee'];
  const words: unknown = node['arguments'];
  if (!isNode(callee) || callee['name'] !== 'URL' || !Array.isArray(words) || words.length !== 2)
    return undefined;
  return textOf(words[0]);
};

const importOf = (node: Readonly<Record<string, unknown>>): Import | undefined => {
  const named = (specifier: string | undefined, isType: boolean): Import | undefined =>
    specifier === undefined ? undefined : { specifier, isType };
  switch (node['type']) {
    case 'ImportDeclaration':
      return named(textOf(node['source']), node['importKind'] === 'type');
    case 'ExportNamedDeclaration':
    case 'ExportAllDeclaration':
      return named(textOf(node['source']), node['exportKind'] === 'type');
    case 'ImportExpression':
      return named(textOf(node['source']), false);
    case 'TSImportType':
      return named(textOf(node['source']), true);
    case 'NewExpression':
      return named(urlOf(node), false);
    default:
      return undefined;
  }
};

/**
 * Every module that a TypeScript source mentions: static, re-exported, loaded
 * on demand, named in a type or given to `new URL`.
 * @throws SyntaxError where the source does not parse
 */
export const importsOf = (file: string, source: string): Import[] => {
  const { program, errors } = parseSync(file, source);
  const first = errors[0];
  if (first !== undefined) throw new SyntaxError(`${file}: ${first.message}`);
  const found: Import[] = [];
  const waiting: unknown[] = [program];
  while (waiting.length > 0) {
    const node = waiting.pop();
    if (!isNode(node)) continue;
    const mention = importOf(node);
    if (mention !== undefined) found.push(mention);
    waiting.push(...Object.values(node));
  }
  return found.reverse();
};
