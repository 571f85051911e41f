import { useCallback, useEffect, useMemo, useState } from 'react';
import type { AnswersStore } from '../../answers/store.ts';
import { createCommands } from '../../editor/commands.ts';
import type { Editor } from '../../editor/editor.ts';
import { trialOf } from '../../editor/trial/trialOf.ts';
import { LensTrial } from '../../panels/trial/LensTrial.tsx';
import type { Model } from '../../view3d/Model.ts';
import { ModelView } from '../../view3d/ModelView.tsx';
import type { PictureBitmap } from '../../view3d/pictures/pictureTexture.ts';
import { joinTrial } from '../../view3d/trial/joinTrial.ts';
import { hireWorker } from '../workers.ts';
import { createTrialWork } from './trialWire.ts';

interface LensTrialPageProps {
  readonly editor: Editor;
  /** Of the window: shown until the trial has its own. */
  readonly answers: AnswersStore;
  readonly bitmap: PictureBitmap;
  failed(error: unknown): void;
  toModel(): void;
}

/** The page of the lens trial, with its own Model and its own work, which end with it. */
export function LensTrialPage({ editor, answers, bitmap, failed, toModel }: LensTrialPageProps) {
  const trial = useMemo(() => trialOf(editor, sessionStorage), [editor]);
  const [commands] = useState(createCommands);
  const work = useMemo(
    () =>
      createTrialWork({
        editor,
        trial,
        shown: answers,
        hire: hireWorker,
        frame: requestAnimationFrame,
        failed,
      }),
    [editor, trial, answers, failed],
  );
  const join = useCallback((model: Model) => joinTrial(model, trial), [trial]);
  useEffect(() => work.begin(), [work]);
  return (
    <LensTrial
      editor={editor}
      inTrial={work.editor}
      trial={trial}
      answers={work.answers}
      changes={work.changes}
      view={
        <ModelView
          editor={work.editor}
          answers={work.answers}
          commands={commands}
          bitmap={bitmap}
          join={join}
        />
      }
      toModel={toModel}
    />
  );
}
