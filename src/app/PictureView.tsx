import { useCallback } from 'react';
import type { AnswersStore } from '../answers/store.ts';
import type { Vec3 } from '../base/vector.ts';
import type { Editor } from '../editor/editor.ts';
import { CameraPicture } from '../panels/picture/CameraPicture.tsx';
import { PicturePainter } from '../view3d/picture/PicturePainter.ts';

interface PictureViewProps {
  readonly editor: Editor;
  readonly answers: AnswersStore;
  find(point: Vec3): void;
}

/** The camera's view with what paints it. */
export function PictureView({ editor, answers, find }: PictureViewProps) {
  // The same as long as the window stands: a new one would begin a new canvas.
  const painter = useCallback(
    (canvas: HTMLCanvasElement) => new PicturePainter(canvas, editor, answers),
    [editor, answers],
  );
  return <CameraPicture editor={editor} answers={answers} painter={painter} find={find} />;
}
