import { distance, type Vec3 } from '../../../base/vector.ts';
import type { LengthUnit } from '../../../base/length.ts';
import type { Measured } from '../../editor.ts';
import type { SightLine } from '../../sightPort.ts';
import type { Sketch, SketchLine, SketchMark, SketchPlate } from '../chart.ts';
import { lengthWords } from '../mount/mountWords.ts';
import { ringArea } from './measured.ts';
import { areaWords } from './measureWords.ts';

/** What is being measured, with what was kept before. */
export function measureSketch(
  points: readonly Vec3[],
  closed: boolean,
  sight: SightLine | null,
  snapped: Vec3 | null,
  kept: readonly Measured[],
  unit: LengthUnit,
): Sketch {
  const before = keptSketch(kept, unit);
  const [first] = points;
  const marks: SketchMark[] = [
    ...points.map((at, index): SketchMark => ({
      at,
      sign: index === 0 && points.length > 2 ? 'ring' : 'fixed',
    })),
    ...(snapped ? [{ at: snapped, sign: 'corner' as const }] : []),
  ];
  return {
    kind: 'sketch',
    lines: [...before.lines, ...(first ? linesOf(points, closed, sight) : [])],
    marks: [...before.marks, ...marks],
    plates: [...before.plates, ...platesOf({ points, closed }, unit)],
  };
}

/** What was kept, drawn beside the work; nothing where nothing was. */
export function keptSketch(kept: readonly Measured[], unit: LengthUnit): Sketch {
  return {
    kind: 'sketch',
    lines: kept.map(({ points, closed }) => ({ points, closed, style: 'fixed' })),
    marks: [],
    plates: kept.flatMap((one) => platesOf(one, unit)),
  };
}

/** One line, or up to the blocker and on from it. */
function linesOf(points: readonly Vec3[], closed: boolean, sight: SightLine | null): SketchLine[] {
  const [a, b] = points;
  if (points.length !== 2 || !a || !b || sight === null) return [{ points, closed, style: 'live' }];
  if (sight.blocked === null) return [{ points, closed: false, style: 'clear' }];
  const { at } = sight.blocked;
  return [
    { points: [a, at], closed: false, style: 'clear' },
    { points: [at, b], closed: false, style: 'blocked' },
  ];
}

function platesOf({ points, closed }: Measured, unit: LengthUnit): SketchPlate[] {
  const ends = closed ? [...points.slice(1), ...points.slice(0, 1)] : points.slice(1);
  const legs = ends.flatMap((end, index): SketchPlate[] => {
    const start = points[index];
    if (!start) return [];
    const text = lengthWords(distance(start, end), unit);
    return [{ at: middle([start, end]), text, tone: 'measure', between: [start, end] }];
  });
  if (!closed) return legs;
  return [...legs, { at: middle(points), text: areaWords(ringArea(points), unit), tone: 'measure' }];
}

function middle(points: readonly Vec3[]): Vec3 {
  const sum = points.reduce<Vec3>(
    (total, [x, y, z]) => [total[0] + x, total[1] + y, total[2] + z],
    [0, 0, 0],
  );
  return [sum[0] / points.length, sum[1] / points.length, sum[2] / points.length];
}
