import type { Tool } from '../editor/editor.ts';

/** Keys and what they do. */
export type KeyRow = readonly [keys: string, does: string];

interface KeyGroup {
  readonly title: string;
  readonly rows: readonly KeyRow[];
}

const DRAW: readonly KeyRow[] = [
  ['4.2 →', 'a length, and the arrow of its way'],
  ['8.2<30', 'a length, and a turn from the last edge'],
  ['Tab', 'from the length to the turn'],
  ['Arrows, Space', 'move the cursor over the grid, Shift ten steps; press'],
  ['Shift', 'only along the axes'],
  ['Ctrl held', 'no snapping'],
  ['Backspace', 'the last corner off'],
  ['Enter', 'finish, close'],
  ['Esc', 'one step back'],
];

const NUMBERS: readonly KeyRow[] = [
  ['Digits', 'into the first field'],
  ['Tab', 'take it, and the next'],
  ['Enter', 'take it, and done'],
  ['Esc', 'one step back'],
];

const AGAIN: Partial<Readonly<Record<Tool, KeyRow>>> = {
  outline: ['3.2x6', 'a rectangle, after the first corner'],
  line: ['F again', 'fence, wall, hedge in turn'],
  block: ['B again', 'block, canopy in turn'],
  vehicle: ['V again', 'car, van in turn'],
  camera: ['C again', 'the next mount that fits'],
};

/** The keys of the tool in hand; none at rest. */
export function keysOfTool(tool: Tool): KeyGroup | null {
  switch (tool) {
    case 'rest':
    case 'place':
    case 'stand':
      return null;
    case 'outline':
    case 'line':
    case 'posts':
    case 'boundary':
    case 'block':
    case 'measure':
      return { title: 'With this tool', rows: [...again(tool), ...DRAW] };
    default:
      return { title: 'With this tool', rows: [...again(tool), ...NUMBERS] };
  }
}

const again = (tool: Tool): readonly KeyRow[] => {
  const row = AGAIN[tool];
  return row ? [row] : [];
};
