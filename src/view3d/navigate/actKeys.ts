import type { Act } from '../../editor/tools/chart.ts';

/** What is done with what is selected, under its name and its key. */
export interface ActKey {
  readonly act: Act;
  readonly label: string;
  /** As it is shown; null where there is none. */
  readonly keys: string | null;
}

export const ACTS: readonly ActKey[] = [
  { act: 'copy', label: 'Copy', keys: 'D' },
  { act: 'turn right', label: 'Turn 15° right', keys: 'R' },
  { act: 'turn left', label: 'Turn 15° left', keys: 'Shift R' },
  { act: 'mirror', label: 'Mirror', keys: 'X' },
  { act: 'split', label: 'Put a corner in here', keys: 'K' },
  { act: 'join', label: 'Take this corner out', keys: 'J' },
  { act: 'bow', label: 'Bow this edge', keys: null },
  { act: 'align left', label: 'Align left', keys: null },
  { act: 'align right', label: 'Align right', keys: null },
  { act: 'align front', label: 'Align front', keys: null },
  { act: 'align rear', label: 'Align rear', keys: null },
  { act: 'group', label: 'Group', keys: null },
  { act: 'ungroup', label: 'Ungroup', keys: null },
  { act: 'forward', label: 'Up in the list', keys: null },
  { act: 'back', label: 'Down in the list', keys: null },
  { act: 'hide', label: 'Hide', keys: 'H' },
  { act: 'show all', label: 'Show all', keys: 'Shift H' },
  { act: 'lock', label: 'Lock, unlock', keys: 'L' },
  { act: 'delete', label: 'Delete', keys: 'Delete' },
];

/** The act that a key asks for. */
export function actOfKey(key: string, shift: boolean): Act | undefined {
  const name = key.length === 1 ? key.toUpperCase() : key;
  return ACTS.find(({ keys }) => keys === (shift ? `Shift ${name}` : name))?.act;
}
