import { fixed, type LengthUnit } from '../../../base/length.ts';
import type { Vec2 } from '../../../base/vector.ts';
import type { Pull } from '../../grips/pull.ts';
import { lengthWords } from '../mount/mountWords.ts';
import { placeWords } from '../placeWords.ts';

/** What a handle stands at: "Wall height 2.70", "5.03 east · 0.15 south", "Turn 15.0°". */
export function valueWords(pull: Pull, value: Vec2, unit: LengthUnit): string {
  const [first, second] = value;
  if (pull.kind === 'line') return `${pull.label} ${lengthWords(first, unit)}`;
  if (pull.kind === 'turn') return `${pull.label} ${fixed(first, 1)}°`;
  if (pull.ground) return placeWords(value, unit);
  return `${pull.labels[0]} ${lengthWords(first, unit)} · ${pull.labels[1]} ${lengthWords(second, unit)}`;
}
