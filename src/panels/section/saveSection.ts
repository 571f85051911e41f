import { fileSave } from 'browser-fs-access';
import type { Assessment } from '../../assess/assessment.ts';
import type { Section } from '../../assess/section/section.ts';
import { drawSection } from '../../draw/section/sectionDrawing.ts';
import { sectionSvg } from '../../draw/section/sectionSvg.ts';
import { firstView } from '../../draw/section/sectionView.ts';
import { namedIn, sheetWords } from '../../draw/section/shownSection.ts';
import type { Editor } from '../../editor/editor.ts';
import type { Plan } from '../../plan/plan.ts';

/** The saved drawing's size, px. */
const [WIDTH, HEIGHT] = [1180, 236];

/** Saves a section as a file of the person's, on paper's inks, whole and at the scale that it opens with. */
export function saveSection(editor: Editor, assessment: Assessment, plan: Plan, section: Section): void {
  const drawing = drawSection(section, firstView(section, WIDTH, HEIGHT, false), namedIn(assessment, plan));
  const text = sectionSvg(drawing, sheetWords(assessment, plan, section), 'light');
  const fileName = `Section ${section.camera.name.replaceAll(/[^\p{L}\p{N} ._-]/gu, '_')}.svg`;
  fileSave(new Blob([text], { type: 'image/svg+xml' }), {
    fileName,
    extensions: ['.svg'],
    mimeTypes: ['image/svg+xml'],
    id: 'soffit-section',
  }).then(
    (saved) => editor.say(`Saved as ${saved?.name ?? fileName}.`),
    (error: unknown) => {
      if (error instanceof DOMException && error.name === 'AbortError') return;
      editor.say(
        `The section could not be saved: ${error instanceof Error ? error.message : String(error)}.`,
      );
    },
  );
}
