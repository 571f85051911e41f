import type { OnWall } from '../../assess/card/drillFacts.ts';
import type { SeenService, WallView } from '../../assess/card/wallView.ts';
import type { Vec2 } from '../../base/vector.ts';
import type { PageBox, PageItem } from '../../exchange/paper/page.ts';
import { overlap, placeLabels, type Plate, type Wish } from '../labelPlaces.ts';
import type { Shown, WallPart } from './elevation.ts';
import {
  boxOfText,
  circle,
  GREY,
  INK,
  OPENING,
  path,
  plated,
  ROOF,
  SIZE,
  text,
  through,
  WALL,
  WHITE,
} from './pen.ts';

type Place = (at: Vec2) => Vec2;

/** Roof, wall, openings, ground and what hangs on the wall; without words. */
export function wallItems(
  parts: readonly WallPart[],
  place: Place,
  region: PageBox,
  shown: Shown,
): readonly PageItem[] {
  const one = 1000 / shown.scale;
  return [
    ...parts.flatMap(({ wall, offset }, index) => {
      const on: Place = ([x, y]) => place([x + offset, y]);
      // Of several walls each shows its own half.
      const clip =
        parts.length === 1
          ? region
          : halfOf(region, place([offset + (index === 0 ? wall.view.width : 0), 0])[0], index);
      return oneWall(wall, on, clip);
    }),
    ...parts.flatMap(({ wall, offset }) =>
      groundItems(wall, ([x, y]) => place([x + offset, y]), region, one),
    ),
    ...(parts.length > 1 ? cornerEdge(parts, place) : []),
    ...(shown.isPart ? breakLines(shown, place, region) : []),
  ];
}

const halfOf = (region: PageBox, edge: number, index: number): PageBox =>
  index === 0
    ? { ...region, width: Math.max(0, edge - region.x) }
    : { ...region, x: edge, width: Math.max(0, region.x + region.width - edge) };

/** Half the width of a drawn post, m. */
const POST = 0.05;

/** A post from the ground to the board. */
function postItem(x: number, { view, groundAtHole }: OnWall, on: Place, clip: PageBox): PageItem {
  // It stands in from the end of the board.
  const at = Math.min(Math.max(x, POST), view.width - POST);
  const corners = [
    [at - POST, groundAtHole] as const,
    [at + POST, groundAtHole] as const,
    [at + POST, view.foot] as const,
    [at - POST, view.foot] as const,
  ];
  return path(through(corners.map(on), true), { fill: WHITE, line: INK, width: 0.25, clip });
}

function oneWall(wall: OnWall, on: Place, clip: PageBox): PageItem[] {
  const { view, others, hole } = wall;
  const { topLine, width, foot, openings, services, roof, soffit, posts } = view;
  const outline = [[0, foot] as const, ...topLine, [width, foot] as const].map(on);
  return [
    ...posts.map((x) => postItem(x, wall, on, clip)),
    ...roof.map((face) => path(through(face.map(on), true), { fill: ROOF, line: GREY, width: 0.2, clip })),
    path(through(outline, true), { fill: WALL, line: INK, width: 0.45, clip }),
    ...(soffit ? [eavesLine(view, soffit, on, clip)] : []),
    ...openings.map(({ left, right, foot: from, head }) =>
      path(
        through(
          [[left, from] as const, [right, from] as const, [right, head] as const, [left, head] as const].map(
            on,
          ),
          true,
        ),
        { fill: OPENING, line: INK, width: 0.3, clip },
      ),
    ),
    ...services.map(({ at, inside }) =>
      path(circle(on(at), 1), {
        fill: WHITE,
        line: INK,
        width: 0.25,
        dash: inside ? [0.5, 0.4] : null,
        clip,
      }),
    ),
    ...others
      .filter(({ at: [x, y] }) => Math.hypot(x - hole[0], y - hole[1]) > 1e-6)
      .map(({ at }) => path(circle(on(at), 1.2), { fill: WHITE, line: INK, width: 0.3, clip })),
  ];
}

/** The eaves over a wall reach as far to both sides as out from it. */
const eavesLine = (
  { width, roof }: WallView,
  { y }: { readonly y: number },
  on: Place,
  clip: PageBox,
): PageItem => {
  const xs = roof.flat().map(([x]) => x);
  const ends = [Math.min(0, ...xs), Math.max(width, ...xs)] as const;
  return path(through([on([ends[0], y]), on([ends[1], y])]), { line: INK, width: 0.45, clip });
};

function groundItems({ ground }: OnWall, on: Place, region: PageBox, one: number): PageItem[] {
  const [first, last] = [ground[0], ground.at(-1)];
  if (!first || !last) return [];
  const beyond = 1.2;
  const line = [[first[0] - beyond, first[1]] as const, ...ground, [last[0] + beyond, last[1]] as const].map(
    on,
  );
  const foot = line.map(([x, y]): Vec2 => [x, y + 0.25 * one]).toReversed();
  return [
    path(through([...line, ...foot], true), { fill: WHITE, clip: region }),
    path(through(line), { line: INK, width: 0.6, clip: region }),
  ];
}

function cornerEdge(parts: readonly WallPart[], place: Place): PageItem[] {
  const [, right] = parts;
  if (!right) return [];
  const { wall, offset } = right;
  const top = wall.view.topLine[0]?.[1] ?? wall.view.foot;
  return [path(through([place([offset, wall.view.foot]), place([offset, top])]), { line: INK, width: 0.7 })];
}

/** Where the wall goes on beyond the drawing. */
const breakLines = ({ left, right, bottom, top }: Shown, place: Place, region: PageBox): PageItem[] =>
  [left, right].map((x) => {
    const [at, low, high] = [place([x, bottom])[0], place([x, bottom])[1], place([x, top])[1]];
    const middle = (low + high) / 2;
    return path(
      through([
        [at, high],
        [at, middle - 2],
        [at - 1.2, middle - 0.7],
        [at + 1.2, middle + 0.7],
        [at, middle + 2],
        [at, low],
      ]),
      { line: GREY, width: 0.2, clip: { ...region, x: region.x - 1.5, width: region.width + 3 } },
    );
  });

const KIND: Readonly<Record<SeenService['kind'], string>> = {
  socket: 'socket',
  switch: 'switch',
  light: 'light',
  tap: 'tap',
  meter: 'meter',
  flue: 'flue',
};

/** Names on the wall where there is room, and numbers beside points of which the legend tells what they are. */
export function wallLabels(
  parts: readonly WallPart[],
  place: Place,
  region: PageBox,
  hole: Vec2,
): { readonly items: readonly PageItem[]; readonly legend: readonly string[] } {
  const legend: string[] = [];
  const wishes: Wish<string>[] = [];
  const [hx, hy] = place(hole);
  const taken: Plate[] = [{ x: hx, y: hy, width: 7.5, height: 7.5, angle: 0 }];
  const isIn = ([x, y]: Vec2): boolean =>
    x > region.x && x < region.x + region.width && y > region.y && y < region.y + region.height;
  for (const { wall, offset } of parts) {
    const on: Place = ([x, y]) => place([x + offset, y]);
    const { services, openings } = wall.view;
    for (const { at } of [...services, ...wall.others]) {
      const [x, y] = on(at);
      taken.push({ x, y, width: 2.6, height: 2.6, angle: 0 });
    }
    for (const { name, kind, at, inside } of services) {
      if (!isIn(on(at))) continue;
      const number = String(legend.length + 1);
      legend.push(`${number} ${name} (${KIND[kind]}${inside ? ', inside' : ''})`);
      wishes.push(around(number, on(at)));
    }
    for (const { name, at } of wall.others)
      if (isIn(on(at)) && Math.hypot(at[0] + offset - hole[0], at[1] - hole[1]) > 1e-6)
        wishes.push(around(name, on(at)));
    const boxes = openings.map(({ left, right, foot, head }) =>
      plateOver(on([left, head]), on([right, foot])),
    );
    openings.forEach(({ name }, index) => {
      const [own, others] = [boxes[index], boxes.filter((_, at) => at !== index)];
      if (own && isIn([own.x, own.y])) wishes.push(inOrBeside(name, own, others));
    });
  }
  const placed = placeLabels(
    wishes.map(({ label, places }) => ({ label, places: places.filter((one) => inBox(one, region)) })),
    taken,
    0.4,
  );
  const items = placed.flatMap(({ label, place: at }) =>
    plated(text(at.x, at.y + SIZE.small * 0.26, label, { size: SIZE.small, anchor: 'middle', ink: GREY })),
  );
  return { items, legend };
}

const inBox = (one: Plate, box: PageBox): boolean =>
  one.x - one.width / 2 >= box.x &&
  one.x + one.width / 2 <= box.x + box.width &&
  one.y - one.height / 2 >= box.y &&
  one.y + one.height / 2 <= box.y + box.height;

function plateAt(label: string, [x, y]: Vec2): Plate {
  const box = boxOfText(text(0, 0, label, { size: SIZE.small }));
  return { x, y, width: box.width + 0.6, height: box.height + 0.2, angle: 0 };
}

/** The box between two corners. */
const plateOver = ([x0, y0]: Vec2, [x1, y1]: Vec2): Plate => ({
  x: (x0 + x1) / 2,
  y: (y0 + y1) / 2,
  width: Math.abs(x1 - x0),
  height: Math.abs(y1 - y0),
  angle: 0,
});

/** The name of an opening within it, where it has room; else above or below it, clear of the others. */
function inOrBeside(label: string, own: Plate, others: readonly Plate[]): Wish<string> {
  const at = (y: number): Plate => plateAt(label, [own.x, y]);
  const { width, height } = at(own.y);
  const beside = [own.y - (own.height + height) / 2 - 0.7, own.y + (own.height + height) / 2 + 0.7]
    .map(at)
    .filter((place) => !others.some((other) => overlap(place, other, 0.3)));
  return { label, places: width <= own.width - 0.4 ? [at(own.y), ...beside] : beside };
}

/** Right of a place, left, above, below, then farther. */
function around(label: string, [x, y]: Vec2): Wish<string> {
  const { width } = plateAt(label, [x, y]);
  const off = 1.6 + width / 2;
  return {
    label,
    places: [1, 1.7, 2.6].flatMap((far) =>
      [
        [x + off * far, y],
        [x - off * far, y],
        [x, y - 2.9 * far],
        [x, y + 2.9 * far],
      ].map(([px = 0, py = 0]) => plateAt(label, [px, py])),
    ),
  };
}
