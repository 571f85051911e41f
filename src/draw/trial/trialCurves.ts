import { densityCurve, farthestCovered, type CurvePart } from '../../assess/trial/alongAxis.ts';
import type { Edition } from '../../coverage/band.ts';
import { pathOf, px, stroke, words, type Mark } from '../section/marks.ts';
import type { TrialSetting } from './shownTrial.ts';

/** Lines by which settings are told apart, whatever their colour: A, B, C, D. */
const LINES: Readonly<Record<string, { readonly width: number; readonly dash: string | null }>> = {
  A: { width: 2, dash: null },
  B: { width: 2, dash: '8 4' },
  C: { width: 2, dash: '2 4' },
  D: { width: 2, dash: '12 3 2 3' },
};

/** Curves of density against distance, with what turns places into numbers and back. */
export interface CurvesDrawing {
  readonly width: number;
  readonly height: number;
  /** The part within the axes, px. */
  readonly plot: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
  /** The distance at the right end, m. */
  readonly far: number;
  /** How many bands the edition has: their inks go by it. */
  readonly levels: number;
  readonly marks: readonly Mark[];
  x(distance: number): number;
  y(density: number): number;
  distance(x: number): number;
}

const MARGIN = { left: 46, right: 12, top: 10, bottom: 30 };
/** Width of the strip of band tones beside the axis, px. */
const TONES = 7;
const LEAST_FAR = 5;
const STEPS = [1, 2, 5, 10, 20, 50, 100, 200, 500];

/**
 * The curves of some settings over one another: density on a scale of ratios, distance on an even one.
 * @param width,height px
 */
export function trialCurves(
  settings: readonly TrialSetting[],
  { bands }: Edition,
  width: number,
  height: number,
): CurvesDrawing {
  const plot = {
    left: MARGIN.left,
    right: Math.max(MARGIN.left + 40, width - MARGIN.right),
    top: MARGIN.top,
    bottom: Math.max(MARGIN.top + 30, height - MARGIN.bottom),
  };
  const far = endOf(settings);
  const low = (bands[0]?.density ?? 25) / 2;
  const curves = settings.map(({ letter, section }) => ({ letter, parts: densityCurve(section, far) }));
  const high = Math.max((bands.at(-1)?.density ?? 250) * 4, 1.3 * greatestSeen(curves));
  const x = (distance: number) => plot.left + (distance / far) * (plot.right - plot.left);
  const y = (density: number) => {
    const share = Math.log(Math.max(low, density) / low) / Math.log(high / low);
    return plot.bottom - share * (plot.bottom - plot.top);
  };
  const drawing = { width, height, plot, far, levels: bands.length, x, y };
  return {
    ...drawing,
    marks: [
      ...bandMarks(bands, drawing, high),
      ...distanceMarks(drawing),
      ...curves.flatMap((curve) => curveMarks(curve, drawing)),
      ...letterMarks(curves, drawing),
    ],
    distance: (at) => Math.min(far, Math.max(0, ((at - plot.left) / (plot.right - plot.left)) * far)),
  };
}

type Frame = Omit<CurvesDrawing, 'marks' | 'distance'>;

interface Curve {
  readonly letter: string;
  readonly parts: readonly CurvePart[];
}

const greatestSeen = (curves: readonly Curve[]): number =>
  curves
    .flatMap(({ parts }) => parts.filter(isSeen).flatMap(({ points }) => points))
    .reduce((most, [, density]) => Math.max(most, density), 0);

const isSeen = ({ state }: CurvePart): boolean => state === 'covered' || state === 'too coarse';

/** The distance at which the drawing ends: a little past the farthest target that any setting covers. */
function endOf(settings: readonly TrialSetting[]): number {
  const farthest = settings.reduce((most, { section }) => Math.max(most, farthestCovered(section) ?? 0), 0);
  const wanted = Math.max(LEAST_FAR, farthest * 1.1);
  const step = STEPS.find((one) => wanted / one <= 14) ?? 1000;
  return Math.ceil(wanted / step) * step;
}

function bandMarks(bands: Edition['bands'], { plot, y }: Frame, high: number): Mark[] {
  return bands.flatMap((band, at): Mark[] => {
    const [foot, head] = [y(band.density), y(bands[at + 1]?.density ?? high)];
    const line = [
      [plot.left, foot],
      [plot.right, foot],
    ] as const;
    return [
      stroke(`M${px(plot.left - TONES)} ${px(foot)}H${px(plot.left)}V${px(head)}H${px(plot.left - TONES)}Z`, {
        fill: { band: at + 1 },
      }),
      stroke(pathOf(line), { line: 'rule2', width: 1 }),
      words(plot.left - TONES - 4, foot + 4, String(band.density), { size: 11, anchor: 'end', fill: 'ink2' }),
      words(plot.right - 4, foot - 3, band.name, { size: 11, anchor: 'end', fill: 'ink2', halo: true }),
    ];
  });
}

function distanceMarks({ plot, far, x }: Frame): Mark[] {
  const room = (plot.right - plot.left) / far;
  const every = STEPS.find((step) => step * room >= 44) ?? 1000;
  const ticks = Array.from({ length: Math.floor(far / every) + 1 }, (_, at) => at * every);
  const axis = [
    [plot.left, plot.bottom],
    [plot.right, plot.bottom],
  ] as const;
  return [
    stroke(pathOf(axis), { line: 'ink', width: 0.9 }),
    ...ticks.flatMap((at): Mark[] => {
      const isLast = at + every > far;
      return [
        stroke(`M${px(x(at))} ${px(plot.bottom)}v5`, { line: 'ink', width: 0.9 }),
        words(x(at), plot.bottom + 17, isLast ? `${at} m` : String(at), {
          size: 11,
          anchor: isLast && at === far ? 'end' : 'middle',
        }),
      ];
    }),
    words(2, plot.bottom + 17, 'px/m', { size: 11, fill: 'ink2' }),
  ];
}

/** A setting's curve: firm where targets are seen, pale where they are not. */
function curveMarks({ letter, parts }: Curve, { x, y }: Frame): Mark[] {
  const { width, dash } = LINES[letter] ?? { width: 1, dash: null };
  return parts.map((part) => {
    const path = pathOf(part.points.map(([distance, density]) => [x(distance), y(density)] as const));
    return stroke(path, {
      line: 'ink',
      width: isSeen(part) ? width : 0.9,
      dash,
      opacity: isSeen(part) ? 1 : 0.35,
      clipped: true,
    });
  });
}

/** The letter of each setting on the longest stretch that it sees: over the uppermost curve, under the others. */
function letterMarks(curves: readonly Curve[], { x, y }: Frame): Mark[] {
  return curves.flatMap(({ letter, parts }, at): Mark[] => {
    const seen = parts.filter(({ state }) => state === 'covered');
    const longest = seen.reduce<CurvePart | null>(
      (best, part) => (best === null || lengthOf(part) > lengthOf(best) ? part : best),
      null,
    );
    if (longest === null) return [];
    const [from, to] = [longest.points[0]?.[0] ?? 0, longest.points.at(-1)?.[0] ?? 0];
    const wanted = from + (to - from) * ((at + 1) / (curves.length + 1));
    const [distance, density] = longest.points.find(([t]) => t >= wanted) ?? [wanted, 0];
    const isUppermost = curves.every(
      (other, place) => place === at || densityIn(other.parts, distance) <= density,
    );
    return [
      words(x(distance), y(density) + (isUppermost ? -7 : 16), letter, {
        size: 13,
        weight: 650,
        anchor: 'middle',
        halo: true,
      }),
    ];
  });
}

/** The density of a curve at a distance, or a little past it; 0 where it has none. */
const densityIn = (parts: readonly CurvePart[], distance: number): number =>
  parts.flatMap(({ points }) => points).find(([t]) => t >= distance)?.[1] ?? 0;

const lengthOf = ({ points }: CurvePart): number => (points.at(-1)?.[0] ?? 0) - (points[0]?.[0] ?? 0);
