import type { Tool } from '../../editor/editor.ts';
import type { Model } from '../Model.ts';

/** A tool in the column: its key again, before the first press, gives its next kind. */
export interface ToolKey {
  readonly tool: Tool;
  /** Null where no letter is free for it. */
  readonly key: string | null;
  readonly label: string;
}

/** What is built, in the order of the list. */
export const BUILD: readonly ToolKey[] = [
  { tool: 'outline', key: 'W', label: 'Building by its outline' },
  { tool: 'line', key: 'F', label: 'Fence, wall or hedge' },
  { tool: 'posts', key: null, label: 'Row of posts' },
  { tool: 'block', key: 'B', label: 'Block or canopy' },
  { tool: 'opening', key: 'O', label: 'Door, window, gate' },
  { tool: 'tree', key: 'T', label: 'Tree' },
  { tool: 'vehicle', key: 'V', label: 'Car or van' },
  { tool: 'boundary', key: 'G', label: 'Site boundary' },
];

export const OTHERS: readonly ToolKey[] = [
  { tool: 'camera', key: 'C', label: 'Add a camera' },
  { tool: 'lamp', key: 'U', label: 'Add a lamp' },
  { tool: 'measure', key: 'M', label: 'Measure' },
];

/** Takes a tool in hand; its next kind where it is in hand already. */
export function takeTool({ editor, toolbox }: Model, tool: Tool): void {
  if (editor.store.getState().tool === tool) toolbox.again();
  else editor.hold(tool);
}

/** The tool whose letter this is. */
export const toolOfKey = (key: string): Tool | undefined =>
  [...BUILD, ...OTHERS].find((one) => one.key === key.toUpperCase())?.tool;
