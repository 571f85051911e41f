import type { ReactNode } from 'react';
import type { TreeRow } from './treeKeys.ts';

/** A row as it is shown and spoken. */
export interface TreeItem extends TreeRow {
  /** All that a screen reader says of it, the label first: "Garage, building, 3.20 by 6.00, 2.40 high". */
  readonly spoken: string;
  readonly detail: string;
  readonly icon: ReactNode;
  /** A rule is drawn above the first of a group. */
  readonly first?: boolean;
  /** Not shown in the picture. */
  readonly faint?: boolean;
}
