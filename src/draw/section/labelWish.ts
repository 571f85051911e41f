import type { Section } from '../../assess/section/section.ts';
import type { Vec2 } from '../../base/vector.ts';
import { overlap, type Plate, type Wish } from '../labelPlaces.ts';
import { plateOf, type Words } from './marks.ts';
import { edgeLines, placesOf } from './sectionScene.ts';
import type { Frame } from './sectionView.ts';

/** A label with the places that would do: its own first. */
export const wish = (label: Words, ...moves: readonly Vec2[]): Wish<Words> => {
  const own = plateOf(label);
  return { label, places: [own, ...moves.map(([dx, dy]) => ({ ...own, x: own.x + dx, y: own.y + dy }))] };
};

/** The same places, those first that keep off some boxes. */
export const off = (asked: Wish<Words>, boxes: readonly Plate[]): Wish<Words> => {
  const free = asked.places.filter((place) => !boxes.some((box) => overlap(place, box)));
  return { ...asked, places: [...free, ...asked.places.filter((place) => !free.includes(place))] };
};

/** The frame's sides as thin boxes. */
export const edgePlates = (section: Section, frame: Frame): Plate[] =>
  Object.values(edgeLines(section, frame)).map(([[x0, y0], [x1, y1]]) => ({
    x: (x0 + x1) / 2,
    y: (y0 + y1) / 2,
    width: Math.hypot(x1 - x0, y1 - y0),
    height: 4,
    angle: (Math.atan2(y1 - y0, x1 - x0) * 180) / Math.PI,
  }));

/** The boxes around what is cut. */
export const solidPlates = ({ cuts }: Section, frame: Frame): Plate[] =>
  cuts.flatMap(({ rings }) =>
    rings.map((ring) => {
      const places = placesOf(ring).map(frame.place);
      const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)];
      const [left, right] = [Math.min(...xs), Math.max(...xs)];
      const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
      return {
        x: (left + right) / 2,
        y: (top + bottom) / 2,
        width: right - left,
        height: bottom - top,
        angle: 0,
      };
    }),
  );

/** The label where its box was put. */
export function movedTo(label: Words, place: Plate): Words {
  const own = plateOf(label);
  return { ...label, x: label.x + place.x - own.x, y: label.y + place.y - own.y };
}
