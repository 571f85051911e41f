import type { Section } from '../../assess/section/section.ts';
import type { Vec2 } from '../../base/vector.ts';

/** How a section lies on its sheet: one scale both ways. */
export interface SectionView {
  /** px */
  readonly width: number;
  readonly height: number;
  /** px a metre. */
  readonly scale: number;
  /** The t at the left edge of what is drawn, m. */
  readonly left: number;
  /** One ruler, with its limits above it: for a phone. */
  readonly narrow: boolean;
}

/** Where the drawing ends and rulers begin, and where t and h lie. */
export interface Frame {
  readonly view: SectionView;
  /** y of the lowest ground in sight. */
  readonly foot: number;
  /** Left of it stand the rulers' names. */
  readonly gutter: number;
  x(t: number): number;
  y(h: number): number;
  place(at: Vec2): Vec2;
}

/** Rows of rulers and their scale, px. */
export const RULER = 13;
const SCALE_ROW = 30;
/** Between the ground and the first ruler; on a phone limits stand there. */
const GAP = { wide: 10, narrow: 24 } as const;

export const rulersOf = (section: Section, { narrow }: SectionView): number =>
  Math.min(narrow ? 1 : 2, section.lines.length);

/** Room for the rulers' names and the dimension of the height, px. */
const GUTTER = { wide: 96, narrow: 58 } as const;
/** The look's own scale, px a metre. */
const SCALE = { wide: 40, narrow: 34 } as const;
/** Above the lens there is at least so much, m. */
const HEADROOM = 0.5;

/** The view that a section opens with: its lens in sight, at the scale of the look or as much smaller as that takes. */
export function firstView(section: Section, width: number, height: number, narrow: boolean): SectionView {
  const kind = narrow ? 'narrow' : 'wide';
  const room =
    height - rulersOf(section, { width, height, scale: 1, left: 0, narrow }) * RULER - SCALE_ROW - GAP[kind];
  const scale = Math.max(2, Math.min(SCALE[kind], room / (section.mountingHeight + HEADROOM)));
  return { width, height, scale, left: -GUTTER[kind] / scale, narrow };
}

/** Where things lie in a view. */
export function frameOf(section: Section, view: SectionView): Frame {
  const { width, height, scale, left, narrow } = view;
  const kind = narrow ? 'narrow' : 'wide';
  const base = height - rulersOf(section, view) * RULER - SCALE_ROW - GAP[kind];
  const right = left + width / scale;
  const low = section.ground
    .filter(([t]) => t >= left && t <= right)
    .reduce((least, [, h]) => Math.min(least, h), section.groundBelow);
  // A slope that falls away far off does not push the lens out of the drawing.
  const lowest = Math.max(low, section.groundBelow - 0.3 * (base / scale));
  const x = (t: number): number => (t - left) * scale;
  const y = (h: number): number => base - (h - lowest) * scale;
  return { view, foot: base, gutter: GUTTER[kind], x, y, place: ([t, h]) => [x(t), y(h)] };
}

export const rulersTop = ({ foot, view }: Frame): number => foot + (view.narrow ? GAP.narrow : GAP.wide);
