import type {
  HidingLine,
  Picture,
  PictureAround,
  PictureLine,
  PicturePerson,
} from '../../assess/picture/picture.ts';
import type { Vec2 } from '../../base/vector.ts';
import { pathOf, stroke, type Stroke } from '../section/marks.ts';

/** How a picture lies on its sheet. */
export interface PictureView {
  /** px of the sheet. */
  readonly width: number;
  readonly height: number;
  /** px of the sheet a pixel of the recorded picture. */
  readonly scale: number;
}

/** A picture as wide as that on a sheet. */
export const viewOf = ({ width, height }: Pick<Picture, 'width' | 'height'>, wide: number): PictureView => ({
  width: wide,
  height: (wide * height) / width,
  scale: wide / width,
});

/** The places of a line on the sheet. */
export const placesOf = (at: Float64Array, { scale }: PictureView): Vec2[] =>
  Array.from({ length: at.length / 2 }, (_, k): Vec2 => [
    (at[2 * k] ?? 0) * scale,
    (at[2 * k + 1] ?? 0) * scale,
  ]);

const joined = (lines: readonly { readonly at: Float64Array }[], view: PictureView): string =>
  lines.map(({ at }) => pathOf(placesOf(at, view))).join('');

/** One mark for many lines of a kind; none without lines. */
const lines = (
  all: readonly { readonly at: Float64Array }[],
  view: PictureView,
  style: Partial<Omit<Stroke, 'kind' | 'd'>>,
): Stroke[] => (all.length === 0 ? [] : [stroke(joined(all, view), { ...style, clipped: true })]);

/** Edges of solids: silhouettes stronger than creases, mesh and leaves fine. @param fine indices of solids one sees through */
export function edgeMarks(
  visible: readonly PictureLine[],
  fine: (solid: number) => boolean,
  view: PictureView,
): Stroke[] {
  const solid = visible.filter((line) => !fine(line.solid));
  return [
    ...lines(
      visible.filter((line) => fine(line.solid)),
      view,
      { line: 'ink', width: 0.7, opacity: 0.45 },
    ),
    ...lines(
      solid.filter(({ kind }) => kind === 'crease'),
      view,
      { line: 'ink', width: 0.95, opacity: 0.75 },
    ),
    ...lines(
      solid.filter(({ kind }) => kind === 'outline'),
      view,
      { line: 'ink', width: 1.55 },
    ),
  ];
}

/** Edges that lie behind others. */
export const coveredMarks = (covered: readonly PictureLine[], view: PictureView): Stroke[] =>
  lines(covered, view, { line: 'ink2', width: 0.8, dash: '3 3', opacity: 0.8 });

/** The lines at which bands begin: ink within paper, so that they read on any band; limits thin and broken. */
export function bandMarks({ bands }: Picture, view: PictureView): Stroke[] {
  const own = bands.filter(({ limit }) => !limit);
  const limits = bands.filter(({ limit }) => limit);
  return [
    ...lines(limits, view, { line: 'paper', width: 3, opacity: 0.8 }),
    ...lines(limits, view, { line: 'ink', width: 1, dash: '5 4' }),
    ...lines(own, view, { line: 'paper', width: 4 }),
    ...lines(own, view, { line: 'ink', width: 1.5 }),
  ];
}

/** Between the hachures along an edge that hides something, and their length, px. */
const [PITCH, LENGTH] = [7, 5];

/** The edges past which solids hide what is asked for, with hachures on the hider. */
export function hidingMarks({ hiding }: PictureAround, view: PictureView): Stroke[] {
  if (hiding.length === 0) return [];
  const ticks = hiding.map((line) => hachures(line, view)).join('');
  return [
    ...lines(hiding, view, { line: 'coralLine', width: 1.8 }),
    ...(ticks === '' ? [] : [stroke(ticks, { line: 'coralLine', width: 1, clipped: true })]),
  ];
}

function hachures({ at }: HidingLine, view: PictureView): string {
  const places = placesOf(at, view);
  let [since, path] = [PITCH / 2, ''];
  places.forEach((to, k) => {
    const from = places[k - 1];
    if (from === undefined) return;
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    const length = Math.hypot(dx, dy);
    if (length === 0) return;
    const [ux, uy] = [dx / length, dy / length];
    for (; since < length; since += PITCH) {
      const [x, y] = [from[0] + ux * since, from[1] + uy * since];
      // The hider lies to the right, leaning back a little.
      path += pathOf([
        [x, y],
        [x - (uy + 0.4 * ux) * LENGTH, y + (ux - 0.4 * uy) * LENGTH],
      ]);
    }
    since -= length;
  });
  return path;
}

/** Horizon, end of the lens, and frames of lesser modes. */
export function surroundMarks({ horizon, rim, modes }: PictureAround, view: PictureView): Stroke[] {
  const plain = (all: readonly Float64Array[]) => all.map((at) => ({ at }));
  return [
    ...lines(plain(horizon), view, { line: 'ink2', width: 0.8, dash: '10 3 2 3' }),
    ...lines(plain(rim), view, { line: 'ink', width: 1.2 }),
    ...modes.map(({ ring }) =>
      stroke(
        pathOf(
          ring.map(([x, y]): Vec2 => [x * view.scale, y * view.scale]),
          true,
        ),
        { line: 'ink2', width: 1, dash: '6 4', clipped: true },
      ),
    ),
  ];
}

/** A person who stands there: what is seen of them in full, the rest dotted. */
export function personMarks({ body, seen, parts }: PicturePerson, view: PictureView): Stroke[] {
  const plain = (all: readonly Float64Array[]) => all.map((at) => ({ at }));
  const isWhole = parts.every(({ state }) => state === 'covered' || state === 'too coarse');
  return [
    // Nothing stands before somebody who is seen whole: they hide what is behind them.
    ...(isWhole ? lines(plain(body), view, { fill: 'cardTop' }) : []),
    ...lines(plain(body), view, { line: 'coralLine', width: 0.9, dash: '1.5 3' }),
    ...lines(plain(seen), view, { line: 'paper', width: 3.6, opacity: 0.8 }),
    ...lines(plain(seen), view, { line: 'ink', width: 1.4 }),
  ];
}
