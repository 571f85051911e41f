import { fileSave } from 'browser-fs-access';
import type { Assessment } from '../../assess/assessment.ts';
import type { Picture, PicturePerson } from '../../assess/picture/picture.ts';
import { pictureDrawing } from '../../draw/picture/pictureDrawing.ts';
import { pictureSvg } from '../../draw/picture/pictureSvg.ts';
import { namedInPicture, pictureSheet } from '../../draw/picture/shownPicture.ts';
import type { Editor } from '../../editor/editor.ts';
import type { Plan } from '../../plan/plan.ts';

/** The longer side of the saved drawing, px. */
const LONG = 1200;

/** Saves a picture as a drawing of the person's, on paper's inks. */
export function savePicture(
  editor: Editor,
  assessment: Assessment,
  plan: Plan,
  picture: Picture,
  person: PicturePerson | null,
  covered: boolean,
): void {
  const width = LONG * Math.min(1, picture.width / picture.height);
  const drawing = pictureDrawing(picture, namedInPicture(assessment, plan), { width, covered, person });
  const text = pictureSvg(drawing, pictureSheet(assessment, plan, picture.camera), 'light');
  const fileName = `Picture of ${picture.camera.name.replaceAll(/[^\p{L}\p{N} ._-]/gu, '_')}.svg`;
  fileSave(new Blob([text], { type: 'image/svg+xml' }), {
    fileName,
    extensions: ['.svg'],
    mimeTypes: ['image/svg+xml'],
    id: 'soffit-picture',
  }).then(
    (saved) => editor.say(`Saved as ${saved?.name ?? fileName}.`),
    (error: unknown) => {
      if (error instanceof DOMException && error.name === 'AbortError') return;
      editor.say(
        `The picture could not be saved: ${error instanceof Error ? error.message : String(error)}.`,
      );
    },
  );
}
