import type { Landmark, Picture } from '../../assess/picture/picture.ts';
import type { Vec2 } from '../../base/vector.ts';
import { contourAnchors } from '../contourLabels.ts';
import { placeLabels, type Plate, type Wish } from '../labelPlaces.ts';
import { pathOf, stroke, widthOf, words, type Mark } from '../section/marks.ts';
import type { Paint } from '../section/paint.ts';
import type { Named } from '../section/sectionWords.ts';
import { placesOf, type PictureView } from './pictureMarks.ts';

/** Height of a plate, what stands beside its text, and how far a line may bend under one, px. */
const [HIGH, ASIDE, BEND] = [17, 6, 13];
const SIZE = 11.5;

interface Label {
  readonly text: string;
  readonly fill: Paint;
  readonly ink: Paint;
  readonly edge: Paint | null;
}

/** The names of bands on their lines and of what hides on its edge; none overlaps another, the first wins. */
export function labelMarks(
  picture: Picture,
  named: Named & { readonly edition: { readonly bands: readonly { readonly density: number }[] } },
  view: PictureView,
  taken: readonly Plate[],
): Mark[] {
  const wishes = [...hiderWishes(picture, named, view), ...bandWishes(picture, named, view)];
  return placeLabels(wishes, taken).flatMap(({ label, place }) => plateMarks(label, place));
}

function bandWishes(
  { bands }: Picture,
  { edition }: Parameters<typeof labelMarks>[1],
  view: PictureView,
): Wish<Label>[] {
  // The longest line of each band carries its name, finest first.
  const order = bands
    .filter(({ limit }) => !limit)
    .toSorted((a, b) => b.band - a.band || b.at.length - a.at.length);
  return order.flatMap(({ band, at }): Wish<Label>[] => {
    const own = edition.bands[band - 1];
    if (own === undefined) return [];
    const text = `${own.name} ${own.density}`;
    const width = widthOf(text, SIZE, 600) + 2 * ASIDE;
    const line = placesOf(at, view).map(([x, y]) => ({ x, y, open: within(x, y, view) }));
    const places = contourAnchors(line, width, BEND).map(({ x, y, angle }): Plate => ({
      x,
      y,
      width,
      height: HIGH,
      angle,
    }));
    return [
      { label: { text, fill: { band }, ink: { onBand: band }, edge: null }, places: places.slice(0, 80) },
    ];
  });
}

/** Off the sheet's edge by at least half a plate. */
const within = (x: number, y: number, { width, height }: PictureView): boolean =>
  x > 4 && y > HIGH / 2 + 2 && x < width - 4 && y < height - HIGH / 2 - 2;

/** Shorter edges are not named, px. */
const SHORT = 18;

function hiderWishes({ hiding }: Picture, { solids }: Named, view: PictureView): Wish<Label>[] {
  const best = new Map<string, { readonly length: number; readonly middle: Vec2 }>();
  for (const { at, solid } of hiding) {
    const name = solids[solid]?.name ?? 'something';
    const places = placesOf(at, view);
    const length = places.reduce((sum, [x, y], k) => {
      const before = places[k - 1];
      return before ? sum + Math.hypot(x - before[0], y - before[1]) : sum;
    }, 0);
    const middle = places[Math.floor(places.length / 2)] ?? [0, 0];
    const first = places[0] ?? middle;
    const mid: Vec2 = places.length > 2 ? middle : [(first[0] + middle[0]) / 2, (first[1] + middle[1]) / 2];
    if (length >= SHORT && length > (best.get(name)?.length ?? 0)) best.set(name, { length, middle: mid });
  }
  return [...best]
    .toSorted(([, a], [, b]) => b.length - a.length)
    .map(
      ([
        name,
        {
          middle: [x, y],
        },
      ]): Wish<Label> => {
        const text = `Hidden behind ${name}`;
        const width = widthOf(text, SIZE, 400) + 2 * ASIDE;
        const shifts: readonly Vec2[] = [
          [0, -HIGH],
          [0, HIGH],
          [-width / 2 - 8, 0],
          [width / 2 + 8, 0],
          [0, -2.2 * HIGH],
          [0, 2.2 * HIGH],
        ];
        const places = shifts
          .map(([dx, dy]): Plate => ({ x: x + dx, y: y + dy, width, height: HIGH, angle: 0 }))
          .map((plate) => keptIn(plate, view));
        return { label: { text, fill: 'paper', ink: 'coralText', edge: 'coralLine' }, places };
      },
    );
}

const keptIn = (plate: Plate, { width, height }: PictureView): Plate => ({
  ...plate,
  x: Math.min(width - plate.width / 2 - 3, Math.max(plate.width / 2 + 3, plate.x)),
  y: Math.min(height - plate.height / 2 - 3, Math.max(plate.height / 2 + 3, plate.y)),
});

function plateMarks({ text, fill, ink, edge }: Label, { x, y, width, height, angle }: Plate): Mark[] {
  const turnRad = (angle * Math.PI) / 180;
  const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
  const corner = (dx: number, dy: number): Vec2 => [x + dx * c - dy * s, y + dx * s + dy * c];
  const [w, h] = [width / 2, height / 2];
  const [tx, ty] = corner(0, SIZE * 0.35);
  return [
    stroke(pathOf([corner(-w, -h), corner(w, -h), corner(w, h), corner(-w, h)], true), {
      fill,
      line: edge,
      width: 1,
    }),
    words(tx, ty, text, {
      size: SIZE,
      weight: edge === null ? 600 : 400,
      anchor: 'middle',
      fill: ink,
      turn: angle,
    }),
  ];
}

/** Radius of the ring around a landmark, px. */
const RING = 4;

/** Landmarks with their letters, and the boxes that they take up. */
export function landmarkMarks(
  landmarks: readonly Landmark[],
  view: PictureView,
): { readonly marks: readonly Mark[]; readonly taken: readonly Plate[] } {
  const marks = landmarks.flatMap((one, k): Mark[] => {
    const [x, y] = [one.x * view.scale, one.y * view.scale];
    const isRight = x < view.width - 24;
    return [
      stroke(circlePath(x, y, RING), { line: 'paper', width: 4 }),
      stroke(circlePath(x, y, RING), { line: 'ink', width: 1.4 }),
      stroke(circlePath(x, y, 1), { fill: 'ink' }),
      words(x + (isRight ? 8 : -8), y + (y < 18 ? 14 : -5), letterOf(k), {
        size: 13,
        weight: 650,
        anchor: isRight ? 'start' : 'end',
        halo: true,
      }),
    ];
  });
  const taken = landmarks.map((one): Plate => ({
    x: one.x * view.scale,
    y: one.y * view.scale,
    width: 26,
    height: 26,
    angle: 0,
  }));
  return { marks, taken };
}

/** a, b, … z, then aa: how landmarks are told apart in picture and list. */
export function letterOf(index: number): string {
  const letter = String.fromCodePoint(97 + (index % 26));
  return index < 26 ? letter : `${letterOf(Math.floor(index / 26) - 1)}${letter}`;
}

const circlePath = (x: number, y: number, r: number): string =>
  `M${(x - r).toFixed(2)} ${y.toFixed(2)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`;
