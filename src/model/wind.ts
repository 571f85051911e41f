import { bearing, degreesFromRad } from '../base/angle.ts';
import type { Vec2 } from '../base/vector.ts';

const WINDS = [
  'north',
  'north-east',
  'east',
  'south-east',
  'south',
  'south-west',
  'west',
  'north-west',
] as const;

/** Which of the eight winds a direction over ground is nearest to. */
export function windOf(direction: Vec2): (typeof WINDS)[number] {
  const turned = bearing(degreesFromRad(Math.atan2(direction[0], direction[1])));
  return WINDS[Math.round(turned / 45) % 8] ?? 'north';
}

/** A name for each direction: "south", and where several share a wind, "south", "south 2", "south 3" in order. */
export function windNames(directions: readonly Vec2[]): string[] {
  const seen = new Map<string, number>();
  return directions.map((direction) => {
    const wind = windOf(direction);
    const count = (seen.get(wind) ?? 0) + 1;
    seen.set(wind, count);
    return count === 1 ? wind : `${wind} ${count}`;
  });
}

/** "south 2" as the beginning of a name: "South wall 2". */
export function namedAfter(windName: string, what: string): string {
  const [wind = '', number] = windName.split(' ');
  return `${wind.charAt(0).toUpperCase()}${wind.slice(1)} ${what}${number ? ` ${number}` : ''}`;
}

/** "south 2" within a name: "the south wall 2". */
export function withinName(windName: string, what: string): string {
  const [wind = '', number] = windName.split(' ');
  return `the ${wind} ${what}${number ? ` ${number}` : ''}`;
}
