import { lengthText } from '../../base/length.ts';
import type { Vec3 } from '../../base/vector.ts';
import type { Wish } from '../../draw/labelPlaces.ts';
import type { Label, Plates } from './PlateLayer.ts';

/** The height of a target plane, beside the post of the board's corner that is nearest to the viewer. */
export function heightWishes(
  { assessment, sheet, unit }: Plates,
  size: (text: string, look: Label['look']) => { readonly width: number; readonly height: number },
): Wish<Label>[] {
  const { board, ground } = assessment.scene;
  const { height } = assessment.question.target;
  if (height <= 0) return [];
  const posts = [board.left, board.right].flatMap((x) =>
    [board.bottom, board.top].flatMap((y) => {
      const at: Vec3 = [x, y, ground + height / 2];
      const spot = sheet.spotFromSite(at);
      return spot ? [{ at, spot }] : [];
    }),
  );
  const nearest = posts.toSorted((a, b) => a.spot.depth - b.spot.depth)[0];
  if (!nearest) return [];
  const { text, unit: sign } = lengthText(height, unit);
  const label = `${text} ${sign}`.trim();
  const box = size(label, 'size');
  const places = [1, -1].map((side) => ({
    x: nearest.spot.x + side * (box.width / 2 + 6),
    y: nearest.spot.y,
    ...box,
    angle: 0,
  }));
  return [{ label: { text: label, look: 'size', at: nearest.at, fill: null, ink: null }, places }];
}
