import { fixed, type LengthUnit } from '../../../base/length.ts';
import type { Vec3 } from '../../../base/vector.ts';
import type { SightLine } from '../../sightPort.ts';
import { lengthWords } from '../mount/mountWords.ts';
import { cornerAngle, legOf, pathLength, ringArea } from './measured.ts';

/** Square metres in a square foot. */
const SQUARE_FOOT = 0.3048 ** 2;

/** "5.00 long · 4.00 over ground · 3.00 up · 36.9°", "blocked by Van, 4.10 on"; a path; an area. */
export function measureWords(
  points: readonly Vec3[],
  closed: boolean,
  sight: SightLine | null,
  unit: LengthUnit,
): string {
  const say = (metres: number): string => lengthWords(metres, unit);
  const [a, b] = [points.at(-2), points.at(-1)];
  if (!a || !b) return 'Pick where it ends.';
  if (closed) return `${areaWords(ringArea(points), unit)} · ${say(pathLength(points, true))} around`;
  if (points.length > 2) {
    const before = points.at(-3);
    const angle = before ? cornerAngle(before, a, b) : null;
    return [
      `${say(pathLength(points, false))} in all`,
      `last ${say(legOf(a, b).length)}`,
      ...(angle === null ? [] : [`${fixed(angle, 1)}° at the corner`]),
    ].join(' · ');
  }
  const { length, ground, rise, slope } = legOf(a, b);
  const isLevel = Math.abs(rise) < 0.005;
  return [
    `${say(length)} long`,
    ...(isLevel
      ? ['level']
      : [
          `${say(ground)} over ground`,
          `${say(Math.abs(rise))} ${rise > 0 ? 'up' : 'down'}`,
          `${fixed(Math.abs(slope), 1)}°`,
        ]),
    ...(sight === null ? [] : [sightWords(sight, say)]),
  ].join(' · ');
}

const sightWords = ({ blocked }: SightLine, say: (metres: number) => string): string =>
  blocked === null ? 'clear' : `blocked by ${blocked.by}, ${say(blocked.after)} on`;

/** "412.00 m²". */
export const areaWords = (squareMetres: number, unit: LengthUnit): string =>
  unit === 'feet' ? `${fixed(squareMetres / SQUARE_FOOT, 1)} sq ft` : `${fixed(squareMetres, 2)} m²`;
