import type { Plate } from '../../optics/mount.ts';
import type { LengthUnit } from '../../base/length.ts';
import type { Vec2 } from '../../base/vector.ts';
import type { PageBox, PageItem } from '../../exchange/paper/page.ts';
import { holeItems } from './elevation.ts';
import { GREY, INK, path, rect, SIZE, text, through, tick, WHITE } from './pen.ts';
import { scaleFor } from './scale.ts';
import { tape } from './tape.ts';

/** Room for the words below the plate, mm. */
const WORDS = 11;

/** The plate with the hole where it lies in it, seen from outside, true to scale. */
export function plateDetail(
  plate: Plate,
  box: PageBox,
  units: LengthUnit,
): { readonly items: readonly PageItem[]; readonly scale: number } {
  const room = { width: box.width - 8, height: box.height - WORDS - 7 };
  // The hole may lie beside its plate.
  const left = Math.min(0, plate.right - plate.width / 2);
  const right = Math.max(0, plate.right + plate.width / 2);
  const low = Math.min(0, plate.up - plate.height / 2);
  const high = Math.max(0, plate.up + plate.height / 2);
  const scale = scaleFor([right - left, high - low], [room.width, room.height]);
  const one = 1000 / scale;
  const middle: Vec2 = [box.x + box.width / 2 + 2, box.y + 1 + room.height / 2];
  const place = ([x, y]: Vec2): Vec2 => [
    middle[0] + (x - (left + right) / 2) * one,
    middle[1] - (y - (low + high) / 2) * one,
  ];
  const [x0, y0] = place([plate.right - plate.width / 2, plate.up + plate.height / 2]);
  const [width, height] = [plate.width * one, plate.height * one];
  const below = y0 + height + 3.4;
  const beside = x0 - 2.6;
  const hole = place([0, 0]);
  return {
    items: [
      rect({ x: x0, y: y0, width, height }, { fill: WHITE, line: INK, width: 0.35 }),
      path(
        through([
          [x0, below],
          [x0 + width, below],
        ]) +
          through([
            [beside, y0],
            [beside, y0 + height],
          ]),
        { line: GREY, width: 0.2 },
      ),
      ...[
        [x0, below],
        [x0 + width, below],
        [beside, y0],
        [beside, y0 + height],
      ].map(([x = 0, y = 0]) => tick([x, y])),
      text(x0 + width / 2, below + 2.9, tape(plate.width, units), { size: SIZE.small, anchor: 'middle' }),
      text(beside - 0.7, y0 + height / 2, tape(plate.height, units), {
        size: SIZE.small,
        anchor: 'middle',
        turn: -90,
      }),
      ...holeItems(hole, 1.3),
      ...holeWords(plate, units).map((words, row) =>
        text(box.x, box.y + box.height - 3.6 + row * 3, words, { size: SIZE.small, ink: GREY }),
      ),
    ],
    scale,
  };
}

/** "Hole in the middle of the plate", or how far it is from there. */
function holeWords({ right, up }: Plate, units: LengthUnit): readonly string[] {
  const off = [
    Math.abs(right) < 0.0005 ? [] : [`${tape(Math.abs(right), units)} ${right > 0 ? 'left' : 'right'}`],
    Math.abs(up) < 0.0005 ? [] : [`${tape(Math.abs(up), units)} ${up > 0 ? 'below' : 'above'}`],
  ].flat();
  return off.length === 0
    ? ['Hole in the middle', 'of the plate']
    : ['Hole from its middle:', off.join(', ')];
}
