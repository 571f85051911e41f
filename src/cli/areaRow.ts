import type { Area } from '../coverage/area.ts';

/** A row of a table: the label over so many characters, the area, and its ± where that surely holds; else ≈ before it. */
export function areaRow(label: string, width: number, { value, bound, how }: Area): string {
  const guessed = how === 'cells' && bound > 0;
  const figure = `${guessed ? '≈ ' : ''}${value.toFixed(2)}`;
  return `  ${label.padEnd(width)} ${figure.padStart(10)} m²${guessed || bound === 0 ? '' : ` ± ${roundedUp(bound)}`}\n`;
}

/** What is printed may not promise more than is known. */
const roundedUp = (bound: number): string =>
  bound < 0.005 ? bound.toExponential(0) : (Math.ceil(bound * 100) / 100).toFixed(2);
