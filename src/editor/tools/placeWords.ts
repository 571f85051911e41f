import type { LengthUnit } from '../../base/length.ts';
import type { Vec2 } from '../../base/vector.ts';
import { lengthWords } from './mount/mountWords.ts';

/** "5.03 east · 0.15 south" */
export function placeWords([x, y]: Vec2, unit: LengthUnit): string {
  const say = (value: number, plus: string, minus: string): string =>
    `${lengthWords(Math.abs(value), unit)} ${value < 0 ? minus : plus}`;
  return `${say(x, 'east', 'west')} · ${say(y, 'north', 'south')}`;
}
