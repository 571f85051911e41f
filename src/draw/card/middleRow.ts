import type { PageBox, PageItem } from '../../exchange/paper/page.ts';
import { insideWords } from './cardWords.ts';
import type { CardInput, CardPicture } from './cardPage.ts';
import { heading, HEAD, paragraphs, type Laid } from './flow.ts';
import { insideCut } from './insideCut.ts';
import { printable, shortened, textWidth } from './letters.ts';
import { drawnItems } from './pictureItems.ts';
import { GREY, SIZE, text } from './pen.ts';
import type { Need } from './settingRow.ts';

/** The drawing of the hole is so wide and at most so high, mm. */
const CUT = { width: 36, height: 34 } as const;
/** Room for the names of landmarks beside a picture, mm. */
const BESIDE = 32;
/** The row is at least so high, mm, and for the sake of a large picture at most so much higher than its words. */
const LEAST = 44;
const MOST = 56;
const NAMES = { size: SIZE.small, gap: 0.2 } as const;
/** A line of the room in which the hole comes out, mm. */
const ROOM_LINE = 4.4;

const halfOf = (width: number): number => (width - 6) / 2;

/** How high the row is, across a page of a width. */
export function middleNeed({ facts, reading, picture }: CardInput, width: number): Need {
  const half = halfOf(width);
  const at = { x: 0, y: 0, width: half - CUT.width - 3 };
  const words = paragraphs(insideWords(facts, reading.units), at).height + lineOf(facts);
  const shown =
    picture === null ? 0 : laidPicture(picture, { x: 0, y: 0, width: half, height: MOST - HEAD }).height;
  return { least: LEAST, best: Math.max(LEAST, Math.min(MOST, HEAD + Math.max(words, CUT.height, shown))) };
}

const lineOf = ({ inside }: CardInput['facts']): number => (inside.kind === 'wall' ? ROOM_LINE : 0.6);

/** Where the hole comes out, and the picture to match. */
export function middleRow(input: CardInput, box: PageBox): readonly PageItem[] {
  const { facts, reading, picture } = input;
  const half = halfOf(box.width);
  const cut: PageBox = {
    x: box.x,
    y: box.y + HEAD,
    width: CUT.width,
    height: Math.min(CUT.height, box.height - HEAD - lineOf(facts)),
  };
  const at = { x: box.x + CUT.width + 3, y: box.y + HEAD, width: half - CUT.width - 3 };
  const words = fitting(insideWords(facts, reading.units), at, box.height - HEAD - lineOf(facts));
  const room = shortened(printable(asBuiltRoom(input.asBuilt)), half, SIZE.small);
  const x = box.x + half + 6;
  const place = { x, y: box.y + HEAD, width: half, height: box.height - HEAD };
  return [
    ...heading(box.x, box.y, '2. Hole, cable and fixings'),
    ...insideCut(facts.inside, cut, reading.units),
    ...words.items,
    ...(facts.inside.kind === 'wall'
      ? [text(box.x, box.y + box.height - 1.2, room, { size: SIZE.small })]
      : []),
    ...heading(x, box.y, '3. Aim: first match this picture'),
    ...(picture === null ? paragraphs([NO_PICTURE], place, { ink: GREY }) : laidPicture(picture, place))
      .items,
  ];
}

const NO_PICTURE =
  'The expected picture is not drawn, since this camera is hidden or another is shown alone. Aim by turn and tilt below.';

const asBuiltRoom = ({ room }: Readonly<Record<string, string>>): string =>
  `Room where it comes out: ${room === undefined || room === '' ? '______________________' : room}`;

/** A picture with the names of its landmarks below it or beside it, whichever leaves it larger. */
function laidPicture({ drawn, landmarks }: CardPicture, box: PageBox): Laid {
  const lines = linesFor(landmarks, box.width);
  const low = paragraphs(lines, { x: 0, y: 0, width: box.width }, NAMES).height;
  const below = drawnItems(drawn, { ...box, height: Math.max(10, box.height - low - 2) });
  const beside = drawnItems(drawn, { ...box, width: box.width - BESIDE, height: box.height - 0.6 });
  const right = {
    x: beside.frame.x + beside.frame.width + 2.5,
    y: box.y,
    width: box.width - beside.frame.width - 2.5,
  };
  const names = paragraphs(linesFor(landmarks, 2.6 * right.width), right, NAMES);
  if (below.frame.width >= beside.frame.width || names.height > box.height) {
    const at = { x: box.x, y: box.y + below.frame.height + 1.6, width: box.width };
    return {
      items: [...below.items, ...paragraphs(lines, at, NAMES).items],
      height: below.frame.height + 1.6 + low,
    };
  }
  return {
    items: [...beside.items, ...names.items],
    height: Math.max(beside.frame.height + 0.6, names.height),
  };
}

/** What the letters in the picture are; a long name is cut short, never where it falls. */
function linesFor(landmarks: CardPicture['landmarks'], room: number): readonly string[] {
  if (landmarks.length === 0) return ['No fixed edge lies well within this picture: aim by turn and tilt.'];
  return landmarks.map(({ letter, name, where }) => {
    const rest = textWidth(printable(`${letter}  : ${where}`), NAMES.size);
    return `${letter}  ${shortened(printable(name), Math.max(8, room - rest), NAMES.size)}: ${where}`;
  });
}

/** Paragraphs as large as fits. */
function fitting(
  words: readonly string[],
  at: { readonly x: number; readonly y: number; readonly width: number },
  most: number,
): Laid {
  const sizes = [SIZE.body, 2.5, SIZE.small, 2.1, 1.9];
  const laid = sizes.map((size) => paragraphs(words, at, { size }));
  return laid.find(({ height }) => height <= most) ?? paragraphs(words, at, { size: 1.7, gap: 0.3 });
}
