import type { Landmark, Picture, PicturePerson } from '../../assess/picture/picture.ts';
import { pathOf, stroke, words, type Mark } from '../section/marks.ts';
import type { Named } from '../section/sectionWords.ts';
import { labelMarks, landmarkMarks } from './pictureLabels.ts';
import {
  bandMarks,
  coveredMarks,
  edgeMarks,
  hidingMarks,
  personMarks,
  surroundMarks,
  viewOf,
} from './pictureMarks.ts';
import { pictureSentence } from './pictureWords.ts';

/** What a picture's words are taken from. */
export interface PictureNamed extends Named {
  readonly solids: readonly { readonly name: string; readonly passage: 'solid' | 'screen' | 'clear' }[];
  readonly edition: {
    readonly name: string;
    readonly bands: readonly { readonly name: string; readonly density: number }[];
  };
}

/** What of a picture is drawn. */
export interface PictureAsked {
  /** Of the drawing, px; its height follows. */
  readonly width: number;
  /** Edges behind others, dashed. */
  readonly covered?: boolean;
  /** Marked a, b, c in their order. */
  readonly landmarks?: readonly Landmark[];
  readonly person?: PicturePerson | null;
}

/** A picture drawn: marks from the back, all within its frame. */
export interface PictureDrawing {
  readonly width: number;
  readonly height: number;
  readonly marks: readonly Mark[];
  /** The whole in words. */
  readonly sentence: string;
  /** How many bands the edition has. */
  readonly levels: number;
}

/** The picture that a camera gives, in lines alone: for paper, and for whoever compares it with what the camera shows. */
export function pictureDrawing(
  picture: Picture,
  named: PictureNamed,
  { width, covered = false, landmarks = [], person = null }: PictureAsked,
): PictureDrawing {
  const view = viewOf(picture, width);
  const frame = pathOf(
    [
      [0, 0],
      [view.width, 0],
      [view.width, view.height],
      [0, view.height],
    ],
    true,
  );
  const fine = (solid: number) => named.solids[solid]?.passage !== 'solid';
  const lettered = landmarkMarks(landmarks, view);
  const blind = picture.lensInside;
  return {
    width: view.width,
    height: view.height,
    marks: [
      stroke(frame, { fill: 'paper' }),
      ...(blind === null
        ? []
        : [
            stroke(frame, { fill: { pattern: 'hidden' } }),
            words(
              view.width / 2,
              view.height / 2,
              `The lens stands inside ${named.solids[blind]?.name ?? 'something'}`,
              { anchor: 'middle', size: 13, weight: 600, halo: true },
            ),
          ]),
      ...surroundMarks(picture, view),
      ...bandMarks(picture, view),
      ...(covered ? coveredMarks(picture.covered, view) : []),
      ...edgeMarks(picture.visible, fine, view),
      ...hidingMarks(picture, view),
      ...(person === null ? [] : personMarks(person, view)),
      ...labelMarks(picture, named, view, lettered.taken),
      ...lettered.marks,
      stroke(frame, { line: 'ink', width: 1 }),
    ],
    sentence: pictureSentence(picture, named),
    levels: named.edition.bands.length,
  };
}
