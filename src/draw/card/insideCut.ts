import { FALL, type InsideEnd } from '../../assess/card/insideEnd.ts';
import { tan } from '../../base/angle.ts';
import type { LengthUnit } from '../../base/length.ts';
import type { Vec2 } from '../../base/vector.ts';
import type { PageBox, PageItem } from '../../exchange/paper/page.ts';
import { GREY, hatch, INK, path, rect, SAFFRON, SIZE, text, through, WHITE } from './pen.ts';
import { tapeWithUnit } from './tape.ts';

/** What lies over what is drilled through from below. */
const OVER: Partial<Readonly<Record<InsideEnd['kind'], string>>> = {
  eaves: 'roof space',
  ceiling: 'above the ceiling',
};

/** Paper thickness of a wall whose own is not known, mm. */
const UNKNOWN = 13;

/** The hole cut open from the side: outside on the left, falling outwards, the cable looped below its entry. */
export function insideCut(inside: InsideEnd, box: PageBox, units: LengthUnit): readonly PageItem[] {
  const isWall = inside.kind === 'wall' || inside.kind === 'through';
  const thickness = isWall ? inside.thickness : null;
  const wide = thickness === null ? UNKNOWN : Math.max(7, Math.min(box.width * 0.5, thickness * 45));
  const x0 = box.x + (box.width - wide) / 2;
  const wall: PageBox = { x: x0, y: box.y + 3.2, width: wide, height: box.height - 6.6 };
  if (!isWall) return otherEnd(inside, box);
  const [low, high]: readonly [Vec2, Vec2] = [
    [x0, wall.y + wall.height * 0.42],
    [x0 + wide, wall.y + wall.height * 0.42 - wide * tan(FALL) * 1.6],
  ];
  const bore = 1.3;
  const loop = `M${high[0] + 5} ${high[1] - 0.4}L${low[0]} ${low[1]}C${low[0] - 5} ${low[1] + 0.4} ${low[0] - 6} ${low[1] + 7} ${low[0] - 3.4} ${low[1] + 7}C${low[0] - 0.8} ${low[1] + 7} ${low[0] - 1.4} ${low[1] - 1} ${low[0] - 4.6} ${low[1] - 4.6}`;
  return [
    rect(wall, { fill: WHITE }),
    hatch(wall, 1.5),
    ...[x0, x0 + wide].map((x) =>
      path(
        through([
          [x, wall.y],
          [x, wall.y + wall.height],
        ]),
        { line: INK, width: 0.5 },
      ),
    ),
    path(
      through(
        [
          [low[0], low[1] - bore],
          [high[0], high[1] - bore],
          [high[0], high[1] + bore],
          [low[0], low[1] + bore],
        ],
        true,
      ),
      { fill: WHITE, line: INK, width: 0.3 },
    ),
    path(loop, { line: INK, width: 0.7 }),
    rect({ x: x0 - 1.4, y: low[1] - 3.4, width: 1.4, height: 6.8 }, { fill: SAFFRON, line: INK, width: 0.3 }),
    text(box.x, box.y + 2.2, 'outside', { size: SIZE.small, ink: GREY }),
    text(box.x + box.width, box.y + 2.2, inside.kind === 'wall' ? 'inside' : 'other side', {
      size: SIZE.small,
      ink: GREY,
      anchor: 'end',
    }),
    text(
      box.x + box.width / 2,
      box.y + box.height - 0.5,
      thickness === null ? 'wall thickness not known' : `wall ${tapeWithUnit(thickness, units)}`,
      { size: SIZE.small, anchor: 'middle' },
    ),
  ];
}

/** The cable of a mount that no wall is drilled for. */
function otherEnd(inside: InsideEnd, box: PageBox): readonly PageItem[] {
  const middle = box.x + box.width / 2;
  if (inside.kind === 'post')
    return [
      rect(
        { x: middle - 2.2, y: box.y + 2, width: 4.4, height: box.height - 4 },
        { fill: WHITE, line: INK, width: 0.5 },
      ),
      path(
        `M${middle} ${box.y + box.height - 2}L${middle} ${box.y + 9}C${middle} ${box.y + 6} ${middle + 4} ${box.y + 6} ${middle + 5} ${box.y + 10}C${middle + 6} ${box.y + 13} ${middle + 9} ${box.y + 12} ${middle + 9} ${box.y + 7}`,
        { line: INK, width: 0.7 },
      ),
      path(`M${middle + 2.2} ${box.y + 6}L${middle + 9} ${box.y + 6}`, { line: INK, width: 0.8 }),
    ];
  if (inside.kind === 'corner')
    return [
      path(
        through([
          [middle - 14, box.y + 4],
          [middle, box.y + 13],
          [middle + 14, box.y + 4],
        ]),
        { line: INK, width: 0.8 },
      ),
      text(middle, box.y + box.height - 2, 'corner, from above', {
        size: SIZE.small,
        ink: GREY,
        anchor: 'middle',
      }),
    ];
  const board: PageBox = { x: box.x + 6, y: box.y + box.height * 0.4, width: box.width - 12, height: 1.6 };
  return [
    rect(board, { fill: WHITE, line: INK, width: 0.4 }),
    path(
      `M${middle + 6} ${board.y - 7}C${middle + 2} ${board.y - 7} ${middle} ${board.y - 4} ${middle} ${board.y + 4}`,
      { line: INK, width: 0.7 },
    ),
    rect(
      { x: middle - 4, y: board.y + 1.6, width: 8, height: 1.4 },
      { fill: SAFFRON, line: INK, width: 0.3 },
    ),
    text(box.x, box.y + 2.2, OVER[inside.kind] ?? 'above the board', {
      size: SIZE.small,
      ink: GREY,
    }),
    text(box.x, box.y + box.height - 1, inside.kind === 'ceiling' ? 'room, below' : 'outside, below', {
      size: SIZE.small,
      ink: GREY,
    }),
  ];
}
