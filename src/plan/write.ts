import type { Plan } from './plan.ts';

/** A line shorter than this holds a whole small record or list. */
const WIDTH = 100;

/** Keys that say what a record is come first; the rest follow the alphabet, so that equal plans are equal files. */
const LEADING = ['version', 'id', 'name', 'kind', 'sort', 'x', 'y', 'width', 'height'];

/** Lists that give the order of the records of the same name. */
const ORDERS: Readonly<Record<string, keyof Plan>> = {
  structures: 'structureOrder',
  cameras: 'cameraOrder',
  patches: 'patchOrder',
  lamps: 'lampOrder',
  requirements: 'requirementOrder',
  situations: 'situationOrder',
  groups: 'groupOrder',
  pictures: 'pictureOrder',
};

/**
 * A plan as its file: JSON by `shared/schema/plan.schema.json`, the same text for equal plans.
 * @throws RangeError on a number that is not finite, which JSON has no word for
 */
export function planText(plan: Plan): string {
  return `${printed(plan, plan, '', '')}\n`;
}

function printed(value: unknown, plan: Plan, key: string, indent: string): string {
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new RangeError(`a plan holds finite numbers, got ${value} at ${key}`);
    return JSON.stringify(value);
  }
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const inner = `${indent}  `;
  if (Array.isArray(value)) {
    const items = value.map((item: unknown) => printed(item, plan, '', inner));
    const isPlain = value.every((item: unknown) => typeof item === 'number' || item === null);
    return laidOut('[', isPlain ? filled(items, WIDTH - inner.length) : items, ']', indent);
  }
  const entries = Object.entries(value).filter(([, held]: [string, unknown]) => held !== undefined);
  const order = indent === '  ' && ORDERS[key] !== undefined ? plan[ORDERS[key]] : LEADING;
  const rank = rankOf(Array.isArray(order) ? order : LEADING);
  entries.sort(([a], [b]) => rank(a) - rank(b) || (a < b ? -1 : 1));
  const items = entries.map(
    ([name, held]: [string, unknown]) => `${JSON.stringify(name)}: ${printed(held, plan, name, inner)}`,
  );
  return laidOut('{', items, '}', indent);
}

/** Short items joined into lines, so that a long list of numbers is not as many lines. */
function filled(items: readonly string[], width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const item of items) {
    if (line !== '' && line.length + item.length + 3 > width) {
      lines.push(line);
      line = item;
    } else line = line === '' ? item : `${line}, ${item}`;
  }
  if (line !== '') lines.push(line);
  return lines;
}

function rankOf(order: readonly string[]): (key: string) => number {
  const ranks = new Map(order.map((key, index) => [key, index]));
  return (key) => ranks.get(key) ?? order.length;
}

function laidOut(open: string, items: readonly string[], close: string, indent: string): string {
  if (items.length === 0) return open + close;
  const space = open === '{' ? ' ' : '';
  const line = `${open}${space}${items.join(', ')}${space}${close}`;
  if (line.length + indent.length <= WIDTH && !line.includes('\n')) return line;
  return `${open}\n${items.map((item) => `${indent}  ${item}`).join(',\n')}\n${indent}${close}`;
}
