import type { Selected } from '../../editor/editor.ts';

/** The row of a thing in the list of the Site. Ids hold no blanks. */
export const rowOf = (thing: Selected): string => {
  if ('on' in thing) return `${thing.kind} ${thing.on} ${thing.id}`;
  return 'id' in thing ? `${thing.kind} ${thing.id}` : thing.kind;
};

/** The row of a group of things. */
export const rowOfGroup = (id: string): string => `group ${id}`;

export const groupOfRow = (row: string): string | null =>
  row.startsWith('group ') ? row.slice('group '.length) : null;

/** The thing of a row; null for a group. */
export function thingOfRow(row: string): Selected | null {
  const [kind, first = '', second = ''] = row.split(' ');
  switch (kind) {
    case 'boundary':
    case 'ground':
      return { kind };
    case 'structure':
    case 'camera':
    case 'lamp':
    case 'situation':
    case 'patch':
    case 'picture':
      return { kind, id: first };
    case 'opening':
    case 'service':
      return { kind, on: first, id: second };
    default:
      return null;
  }
}
