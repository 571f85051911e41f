import { directionOf } from '../../optics/frameEdges.ts';
import type { Section } from '../../assess/section/section.ts';
import { fixed } from '../../base/length.ts';
import type { Vec2 } from '../../base/vector.ts';
import { overlap, placeLabels, type Plate, type Wish } from '../labelPlaces.ts';
import { pathOf, plateOf, px, stroke, widthOf, words, type Mark, type Words } from './marks.ts';
import { edgePlates, movedTo, off, solidPlates, wish } from './labelWish.ts';
import { placesOf } from './sectionScene.ts';
import { faceWords, metres, personWords, type Named } from './sectionWords.ts';
import type { Frame } from './sectionView.ts';

/** Where the dimension of the mounting height stands, px left of the lens; and the least x that it may have. */
const HEIGHT_OFF = 46;
const LEAST_X = 22;
/** Radius of the tilt's arc, px. */
const ARC = 92;

/** x of the dimension of the mounting height. */
export const heightX = (frame: Frame): number => Math.max(LEAST_X, frame.x(0) - HEIGHT_OFF);

/** Where the tilt is held: on the axis, in sight. */
export function tiltPlace({ camera: { tilt }, lens, axisEnd }: Section, frame: Frame): Vec2 {
  const [x, y] = frame.place([0, lens]);
  const [dt, dh] = directionOf(tilt);
  const whole = Math.hypot(axisEnd[0], axisEnd[1] - lens) * frame.view.scale;
  const far = Math.max(30, Math.min(ARC + 18, 0.8 * whole));
  return [x + dt * far, y - dh * far];
}

/** Dimensions and the heights that are asked for, with their labels; labels never overlap, the first wins. */
export function measureMarks(section: Section, frame: Frame, named: Named, taken: readonly Plate[]): Mark[] {
  const { lines, shapes, wishes } = partsOf(section, frame, named);
  const placed = placeLabels(wishes, taken);
  return [...lines, ...shapes, ...placed.map(({ label, place }) => movedTo(label, place))];
}

interface Parts {
  readonly lines: Mark[];
  readonly shapes: Mark[];
  readonly wishes: Wish<Words>[];
}

function partsOf(section: Section, frame: Frame, named: Named): Parts {
  const each = [heightPart, nearPart, personPart, tiltPart, targetPart, solidsPart, hiddenPart];
  const parts = each.map((part) => part(section, frame, named));
  return {
    lines: parts.flatMap(({ lines }) => lines),
    shapes: parts.flatMap(({ shapes }) => shapes),
    wishes: parts.flatMap(({ wishes }) => wishes),
  };
}

const NONE: Parts = { lines: [], shapes: [], wishes: [] };

/** A 45° tick of a dimension. */
const slash = (x: number, y: number): string =>
  pathOf([
    [x - 4, y + 4],
    [x + 4, y - 4],
  ]);

function heightPart({ lens, groundBelow, mountingHeight }: Section, frame: Frame, { units }: Named): Parts {
  const [x, top, foot] = [heightX(frame), frame.y(lens), frame.y(groundBelow)];
  const label = words(x - 7, (top + foot) / 2, metres(mountingHeight, units), {
    anchor: 'middle',
    weight: 600,
    halo: true,
    turn: -90,
  });
  return {
    ...NONE,
    lines: [
      stroke(
        pathOf([
          [x, top],
          [x, foot],
        ]),
        { line: 'ink', width: 0.9 },
      ),
      stroke(
        pathOf([
          [x + 8, top],
          [Math.max(x + 8, frame.x(0) - 12), top],
        ]),
        { line: 'ink', width: 0.9 },
      ),
      stroke(slash(x, foot), { line: 'ink', width: 1.6 }),
    ],
    wishes: [wish(label, [14, 0])],
  };
}

/** Nothing is seen nearer than this, at the height that is asked for. */
function nearPart({ lines: [line], ground }: Section, frame: Frame, { units }: Named): Parts {
  const near = line?.nearest ?? null;
  if (line === undefined || near === null || near * frame.view.scale < 4) return NONE;
  const level = (ground[0]?.[1] ?? 0) + line.target.height;
  const y = frame.y(level) - 8;
  const [from, to] = [frame.x(0), frame.x(near)];
  const text = metres(near, units);
  const label = words((from + to) / 2, y - 5, text, { anchor: 'middle', weight: 600, halo: true });
  return {
    ...NONE,
    lines: [
      stroke(
        pathOf([
          [from, y],
          [to, y],
        ]),
        { line: 'ink', width: 0.9, clipped: true },
      ),
      ...[from, to].map((x) =>
        stroke(
          pathOf([
            [x, y - 5],
            [x, y + 8],
          ]),
          { line: 'ink', width: 0.9, clipped: true },
        ),
      ),
    ],
    wishes: [wish(label, [0, 22], [(to - from) / 2 + widthOf(text, 12, 600) / 2 + 6, 8])],
  };
}

function personPart(section: Section, frame: Frame, named: Named): Parts {
  const { distance, ground, stature, face } = section.person;
  const x = frame.x(distance);
  if (x < 0 || x > frame.view.width) return NONE;
  const side = 0.11 * stature * frame.view.scale + 8;
  const high = frame.y(ground + 0.72 * stature);
  return {
    ...NONE,
    wishes: personWords(section.person, named).map((text, row): Wish<Words> => {
      const weight = row === 0 ? 600 : 400;
      const solids = solidPlates(section, frame);
      const asked = (told: string): Wish<Words> => {
        const width = widthOf(told, 12, weight);
        const label = words(x + side, high + row * 16, told, { weight, halo: true });
        const left = -width - 2 * side;
        const above = high - frame.y(ground + stature) + 10;
        const all = wish(
          label,
          [0, 16],
          [0, -18],
          [left, 0],
          [left, 16],
          [0, 32],
          [-width / 2 - side, -above],
          [left, 32],
        );
        const places = all.places.filter(
          (place) =>
            place.x - width / 2 > 4 &&
            place.x + width / 2 < frame.view.width - 4 &&
            place.y > 8 &&
            place.y < frame.foot,
        );
        return off({ label, places }, solids);
      };
      const whole = asked(text);
      const isShown = face.state === 'covered' || face.state === 'too coarse';
      const [first] = whole.places;
      const isFree = first !== undefined && !solids.some((box) => overlap(first, box));
      return row > 0 || !isShown || (isFree && !frame.view.narrow) ? whole : asked(faceWords(section.person));
    }),
  };
}

function tiltPart(section: Section, frame: Frame): Parts {
  const {
    camera: { tilt },
    lens,
  } = section;
  const [x, y] = frame.place([0, lens]);
  const [dt, dh] = directionOf(tilt);
  const [ex, ey] = [x + ARC * dt, y - ARC * dh];
  const arc = `M${px(x + ARC)} ${px(y)}A${ARC} ${ARC} 0 0 ${tilt >= 0 ? 1 : 0} ${px(ex)} ${px(ey)}`;
  const text = tilt < 0 ? `tilt ${fixed(-tilt, 1)}° up` : `tilt ${fixed(tilt, 1)}°`;
  const [mt, mh] = directionOf(tilt / 2);
  const label = words(x + (ARC + 8) * mt, y - (ARC + 8) * mh + 4, text, { weight: 600, halo: true });
  const asked = off(
    wish(label, [10, -14], [14, 12], [4, 22], [40, 0], [4, -26], [-70, -26]),
    edgePlates(section, frame),
  );
  return {
    lines: [
      stroke(
        pathOf([
          [x + 14, y],
          [x + ARC + 14, y],
        ]),
        { line: 'ink', width: 0.9, dash: '2 3', clipped: true },
      ),
      stroke(arc, { line: 'ink', width: 0.9, clipped: true }),
    ],
    shapes: [],
    wishes: [{ label, places: asked.places.filter((place) => place.y < frame.foot) }],
  };
}

/** The heights that rulers are told at, dashed; the ground has its own line. */
function targetPart({ lines, ground, from, to }: Section, frame: Frame, { units }: Named): Parts {
  const above = lines.slice(0, 2).filter(({ target }) => target.height > 0);
  return {
    shapes: [],
    lines: above.map(({ target }) =>
      stroke(pathOf(ground.map(([t, h]) => frame.place([t, h + target.height]))), {
        line: 'ink',
        width: 0.9,
        dash: '7 4',
        clipped: true,
      }),
    ),
    wishes: above.map(({ target }) => {
      const kind = target.kind === 'face' || target.kind === 'plate' ? `${target.kind} height ` : '';
      const right = Math.min(frame.x(to), frame.view.width) - 6;
      const level = groundAt(
        ground,
        Math.max(from, Math.min(to, frame.view.left + right / frame.view.scale)),
      );
      const label = words(
        right,
        frame.y(level + target.height) - 5,
        `${kind}${metres(target.height, units)}`,
        {
          anchor: 'end',
          halo: true,
        },
      );
      return wish(label, [0, 18], [-160, 0], [-320, 0]);
    }),
  };
}

function groundAt(ground: readonly Vec2[], t: number): number {
  const right = ground.findIndex(([at]) => at >= t);
  const [one, two] = [ground[Math.max(0, right - 1)], ground[Math.max(0, right)]];
  if (!one || !two || two[0] === one[0]) return two?.[1] ?? 0;
  return one[1] + ((two[1] - one[1]) * (t - one[0])) / (two[0] - one[0]);
}

/** What is cut, by name: in it where it fits, else above it. */
function solidsPart({ cuts }: Section, frame: Frame): Parts {
  const seen = new Set<string>();
  const wishes = cuts.flatMap(({ rings, name }): Wish<Words>[] => {
    const places = rings.flatMap(placesOf).map(frame.place);
    const [left, right] = [Math.min(...places.map(([x]) => x)), Math.max(...places.map(([x]) => x))];
    const top = Math.max(0, Math.min(...places.map(([, y]) => y)));
    const bottom = Math.min(frame.foot, Math.max(...places.map(([, y]) => y)));
    const [l, r] = [Math.max(4, left), Math.min(frame.view.width - 4, right)];
    if (r < l || seen.has(name) || bottom - top < 3) return [];
    seen.add(name);
    const width = widthOf(name, 12);
    const label = words((l + r) / 2, (top + bottom) / 2 + 4, name, { anchor: 'middle', halo: true });
    const own = plateOf(label);
    const within = width + 2 <= r - l && bottom - top >= 16 ? [own] : [];
    const over = top > 18 ? [{ ...own, y: top - 9 }] : [];
    return [
      {
        label,
        places: [...within, ...over].filter(({ x }) => x - width / 2 > 2 && x + width / 2 < frame.view.width),
      },
    ];
  });
  return { ...NONE, wishes };
}

function hiddenPart({ hidden }: Section, frame: Frame, named: Named): Parts {
  return {
    ...NONE,
    wishes: hidden.flatMap(({ solid, outline }) => {
      const name = named.solids[solid]?.name;
      const [near] = outline.map(frame.place);
      if (name === undefined || near === undefined) return [];
      const text = `Hidden by ${name}`;
      const width = widthOf(text, 11);
      const label = words(near[0] + width / 2 + 30, frame.foot - 14, text, {
        size: 11,
        anchor: 'middle',
        fill: 'coralText',
        halo: true,
      });
      const box = plateOf(label);
      return box.x + width / 2 < frame.view.width && isWithin(outline.map(frame.place), [box.x, box.y])
        ? [wish(label)]
        : [];
    }),
  };
}

/** Whether a place lies within an outline, by crossings. */
function isWithin(outline: readonly Vec2[], [x, y]: Vec2): boolean {
  let inside = false;
  outline.forEach(([x1, y1], at) => {
    const [x0, y0] = outline[(at + outline.length - 1) % outline.length] ?? [x1, y1];
    if (y0 > y !== y1 > y && x < x0 + ((y - y0) / (y1 - y0)) * (x1 - x0)) inside = !inside;
  });
  return inside;
}
