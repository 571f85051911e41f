import type { TreeItem } from '../../fittings/treeItem.ts';

/** A row without anything below it, but for its icon. */
export const leaf = (
  id: string,
  label: string,
  detail: string,
  spoken: string,
  level = 1,
): Omit<TreeItem, 'icon'> => ({ id, level, label, detail, spoken, open: null });
