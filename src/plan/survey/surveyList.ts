import { lengthText } from '../../base/length.ts';
import type { Got } from '../../model/structure.ts';
import type { Plan } from '../plan.ts';
import { siteSizes } from './siteSizes.ts';
import type { Size } from './size.ts';
import { structureSizes } from './structureSizes.ts';

/** One size that is not taped yet, and what hangs on it. */
export interface SurveyRow {
  readonly thing: Size['thing'];
  /** What the person calls the thing. */
  readonly name: string;
  /** "wall height", "place"; of an opening or a point also the building that it is in. */
  readonly what: string;
  /** As it is in the plan, in its unit of display. */
  readonly value: string;
  readonly got: Exclude<Got, 'measured'>;
  /** How far the truth may be off, m. */
  readonly uncertainty: number;
  /** Cameras whose lens moves with it. */
  readonly touches: readonly string[];
  /** All of it as a sentence or two. */
  readonly text: string;
}

/**
 * What to measure on site: every size of the plan that was mapped or guessed, the most uncertain first, among equals the one
 * that most cameras hang on.
 */
export function surveyList(plan: Plan): readonly SurveyRow[] {
  const sizes = [
    ...plan.structureOrder.flatMap((id) => {
      const structure = plan.structures[id];
      return structure ? structureSizes(plan, structure) : [];
    }),
    ...siteSizes(plan),
  ];
  const rows = sizes.flatMap((size) => {
    const { got } = size;
    return got === 'measured' ? [] : [rowOf(plan, size, got)];
  });
  return rows.toSorted((a, b) => b.uncertainty - a.uncertainty || b.touches.length - a.touches.length);
}

function rowOf(plan: Plan, size: Size, got: SurveyRow['got']): SurveyRow {
  const { thing, name, what, touches } = size;
  const inUnit = (metres: number): string => {
    const { text, unit } = lengthText(metres, plan.settings.units);
    return unit === '' ? text : `${text} ${unit}`;
  };
  const value = size.value(inUnit);
  const { uncertainty } = size;
  const hang = touches.length === 1 ? 'hangs' : 'hang';
  const touched = touches.length === 0 ? '' : ` ${together(touches)} ${hang} on it.`;
  const of = value === '' ? '' : `: ${value}`;
  return {
    thing,
    name,
    what,
    value,
    got,
    uncertainty,
    touches,
    text: `${name}, ${what}${of}, ${got}, so ± ${inUnit(uncertainty)}.${touched}`,
  };
}

/** "C1, C2 and C3". */
const together = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
