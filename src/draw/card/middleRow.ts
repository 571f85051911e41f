import type { PageBox, PageItem } from '../../exchange/paper/page.ts';
import { insideWords } from './cardWords.ts';
import type { CardInput, CardPicture } from './cardPage.ts';
import { heading, HEAD, paragraphs, type Laid } from './flow.ts';
import { insideCut } from './insideCut.ts';
import { printable, shortened } from './letters.ts';
import { drawnItems } from './pictureItems.ts';
import { GREY, SIZE, text } from './pen.ts';

/** Where the hole comes out, and the picture to match. */
export function middleRow(input: CardInput, box: PageBox): readonly PageItem[] {
  const { facts, reading, picture } = input;
  const half = (box.width - 6) / 2;
  const cut: PageBox = { x: box.x, y: box.y + HEAD, width: 36, height: Math.min(34, box.height - HEAD) };
  const isWall = facts.inside.kind === 'wall';
  const at = { x: box.x + 39, y: box.y + HEAD, width: half - 39 };
  const most = box.height - HEAD - (isWall ? 4.4 : 0.6);
  const words = fitting(insideWords(facts, reading.units), at, most);
  const room = shortened(printable(asBuiltRoom(input.asBuilt)), half, SIZE.small);
  const x = box.x + half + 6;
  return [
    ...heading(box.x, box.y, '2. Hole, cable and fixings'),
    ...insideCut(facts.inside, cut, reading.units),
    ...words.items,
    ...(isWall ? [text(box.x, box.y + box.height - 1.2, room, { size: SIZE.small })] : []),
    ...heading(x, box.y, '3. Aim: first match this picture'),
    ...pictureBlock(picture, { x, y: box.y + HEAD, width: half, height: box.height - HEAD }),
  ];
}

const asBuiltRoom = ({ room }: Readonly<Record<string, string>>): string =>
  `Room where it comes out: ${room === undefined || room === '' ? '______________________' : room}`;

function pictureBlock(picture: CardPicture | null, box: PageBox): readonly PageItem[] {
  if (picture === null)
    return paragraphs(
      [
        'The expected picture is not drawn, since this camera is hidden or another is shown alone. Aim by turn and tilt below.',
      ],
      box,
      {
        ink: GREY,
      },
    ).items;
  const words =
    picture.landmarks.length > 0
      ? picture.landmarks
      : ['No fixed edge lies well within this picture: aim by turn and tilt.'];
  const look = { size: SIZE.small, gap: 0.2 };
  const names = paragraphs(words, { x: 0, y: 0, width: box.width }, look);
  // Names stand below the picture or beside it, whichever leaves it larger.
  const below = drawnItems(picture.drawn, { ...box, height: Math.max(10, box.height - names.height - 2) });
  const beside = drawnItems(picture.drawn, { ...box, width: box.width - BESIDE, height: box.height - 0.6 });
  const isBelow = below.frame.width >= beside.frame.width;
  const { items, frame } = isBelow ? below : beside;
  const at = isBelow
    ? { x: box.x, y: box.y + frame.height + 1.6, width: box.width }
    : { x: frame.x + frame.width + 2.5, y: box.y, width: box.width - frame.width - 2.5 };
  return [...items, ...paragraphs(words, at, look).items];
}

/** Room for the names of landmarks beside a picture, mm. */
const BESIDE = 32;

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
