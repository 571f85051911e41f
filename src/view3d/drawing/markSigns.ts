import type { SketchMark } from '../../editor/tools/chart.ts';

type Sign = SketchMark['sign'];

/** How a mark is drawn: a path about its spot, and in which look. */
export interface MarkShape {
  readonly d: string;
  /** `solid` is filled with paper, `bold` a line alone, `fault` coral, `pointer` the keyboard's cursor. */
  readonly look: 'solid' | 'line' | 'bold' | 'fault' | 'pointer';
}

const square = (half: number): string => `M${-half},${-half}H${half}V${half}H${-half}Z`;
const ring = (r: number): string => `M${-r},0a${r},${r} 0 1,0 ${2 * r},0a${r},${r} 0 1,0 ${-2 * r},0Z`;
const cross = (r: number): string => `M${-r},${-r}L${r},${r}M${-r},${r}L${r},${-r}`;
const plus = (r: number): string => `M${-r},0H${r}M0,${-r}V${r}`;

/** Each kind of snap has a sign of its own, so that it is told without colour: gestures, section 4. */
const SHAPES: Readonly<Record<Sign, MarkShape>> = {
  corner: { d: square(4.5), look: 'solid' },
  fixed: { d: square(4.5), look: 'solid' },
  crossing: { d: cross(5), look: 'bold' },
  middle: { d: 'M0,-6L6,5H-6Z', look: 'solid' },
  perpendicular: { d: 'M-7,-7V7H7M-7,0H0V7', look: 'bold' },
  edge: { d: 'M-8,-2.5H8M-8,2.5H8', look: 'bold' },
  inLine: { d: 'M0,-8L8,0L0,8L-8,0Z', look: 'solid' },
  equal: { d: 'M-3,-7V7M3,-7V7', look: 'bold' },
  angle: { d: plus(5), look: 'line' },
  grid: { d: plus(4), look: 'line' },
  ring: { d: ring(8), look: 'line' },
  wrong: { d: `${ring(8)}${cross(4)}`, look: 'fault' },
  scale: { d: `${ring(8)}${plus(12)}`, look: 'line' },
  cursor: { d: 'M-14,0H-4M4,0H14M0,-14V-4M0,4V14', look: 'pointer' },
};

export const markShape = (sign: Sign): MarkShape => SHAPES[sign];
