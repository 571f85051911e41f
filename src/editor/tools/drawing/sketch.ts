import { fixed, type LengthUnit } from '../../../base/length.ts';
import { turn } from '../../../base/angle.ts';
import type { Vec2, Vec3 } from '../../../base/vector.ts';
import type { Sketch, SketchLine, SketchMark, SketchPlate } from '../chart.ts';
import { lengthWords } from '../mount/mountWords.ts';
import { headingOf } from './axes.ts';
import type { Crossing } from './crossingWords.ts';
import type { Draft } from './draft.ts';

const lifted = ([x, y]: Vec2, z: number): Vec3 => [x, y, z];

/** A length drawn as a dimension between two points. */
export function dimension(from: Vec2, to: Vec2, z: number, unit: LengthUnit): SketchPlate {
  const text = lengthWords(Math.hypot(to[0] - from[0], to[1] - from[1]), unit);
  const at: Vec3 = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2, z];
  return { at, text, tone: 'measure', between: [lifted(from, z), lifted(to, z)] };
}

/** The chain so far, the edge in hand with its length, a tick at square corners, the ring that closes, what crosses. */
export function chainSketch(
  { corners, meant, keyed }: Draft,
  level: number,
  unit: LengthUnit,
  closes: boolean,
  crossing: Crossing | null,
): Sketch {
  const lines: SketchLine[] = [];
  const marks: SketchMark[] = corners.map((corner) => ({ at: lifted(corner, level), sign: 'fixed' }));
  const plates: SketchPlate[] = [];
  if (corners.length > 1)
    lines.push({ points: corners.map((corner) => lifted(corner, level)), closed: false, style: 'fixed' });
  corners.slice(1).forEach((to, index) => {
    const from = corners[index];
    if (from) plates.push(dimension(from, to, level, unit));
  });
  const [first] = corners;
  const last = corners.at(-1);
  if (meant) {
    if (last) {
      const style = crossing ? 'wrong' : 'live';
      lines.push({ points: [lifted(last, level), lifted(meant.point, level)], closed: false, style });
      plates.push(dimension(last, meant.point, level, unit));
      const before = corners.at(-2);
      if (before && isSquare(headingOf(before, last), headingOf(last, meant.point)))
        marks.push({ at: lifted(last, level), sign: 'perpendicular' });
    }
    lines.push(...meant.lines);
    marks.push(...meant.marks);
    plates.push(...meant.plates);
    if (keyed) marks.push({ at: lifted(meant.point, level), sign: 'cursor' });
  }
  if (closes && first) marks.push({ at: lifted(first, level), sign: 'ring' });
  if (crossing) {
    const at = corners[crossing.corner] ?? meant?.point;
    if (at) {
      marks.push({ at: lifted(at, level), sign: 'wrong' });
      plates.push({ at: lifted(at, level), text: `corner ${crossing.corner + 1}`, tone: 'wrong' });
    }
    const all = meant ? [...corners, meant.point] : corners;
    lines.push({
      points: all.map((corner) => lifted(corner, level)),
      closed: true,
      style: 'wrong',
      hatched: true,
    });
  }
  return { kind: 'sketch', lines, marks, plates };
}

const isSquare = (before: number, after: number): boolean =>
  Math.abs(Math.abs(turn(before, after)) - 90) < 0.05;

/** A closed shape in hand, with the lengths of its first two sides. */
export function ringSketch(ring: readonly Vec2[], level: number, unit: LengthUnit, draft: Draft): Sketch {
  const points = ring.map((corner) => lifted(corner, level));
  const [a, b, c] = ring;
  return {
    kind: 'sketch',
    lines: [{ points, closed: true, style: 'live' }, ...(draft.meant?.lines ?? [])],
    marks: [
      ...draft.corners.map((corner): SketchMark => ({ at: lifted(corner, level), sign: 'fixed' })),
      ...(draft.meant?.marks ?? []),
    ],
    plates: [
      ...(a && b && c ? [dimension(a, b, level, unit), dimension(b, c, level, unit)] : []),
      ...(draft.meant?.plates ?? []),
    ],
  };
}

/** "4.20 · 90.0° right of side 2 · corner of Garage" */
export function edgeWords({ corners, axes, meant }: Draft, unit: LengthUnit): string {
  const last = corners.at(-1);
  if (!meant || !last) return '';
  const away = Math.hypot(meant.point[0] - last[0], meant.point[1] - last[1]);
  if (away === 0) return meant.name ?? '';
  return [lengthWords(away, unit), turnWords(corners, axes.up, headingOf(last, meant.point)), meant.name]
    .filter(Boolean)
    .join(' · ');
}

function turnWords(corners: readonly Vec2[], up: number, heading: number): string {
  const last = corners.at(-1);
  const before = corners.at(-2);
  const by = turn(last && before ? headingOf(before, last) : up, heading);
  if (Math.abs(by) < 0.05) return 'straight on';
  return `${fixed(Math.abs(by), 1)}° ${by > 0 ? 'right' : 'left'}`;
}
