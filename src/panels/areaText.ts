import { fixed } from '../base/length.ts';
import type { Area } from '../coverage/area.ts';

/**
 * An area's figure and, where it is not exact, its bound: "23.4" and "± 0.2"; about, "≈ 23.4", where it was only counted at the
 * middles of cells.
 */
export function areaFigures({ value, bound, how }: Area): { readonly value: string; readonly bound: string } {
  if (how === 'cells' && bound > 0) return { value: `≈ ${fixed(value, 1)}`, bound: '' };
  // A bound is rounded up: what is printed may not promise more than is known.
  const certain = how === 'exact' || bound === 0;
  return { value: fixed(value, 1), bound: certain ? '' : `± ${(Math.ceil(bound * 10) / 10).toFixed(1)}` };
}

/** "23.4 ± 0.2 m²" */
export function areaText(area: Area): string {
  const { value, bound } = areaFigures(area);
  return `${[value, bound].filter(Boolean).join(' ')} m²`;
}
