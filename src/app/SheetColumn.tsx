import { Suspense, lazy } from 'react';
import { useStore } from 'zustand';
import type { AnswersStore } from '../answers/store.ts';
import type { Editor } from '../editor/editor.ts';
import type { Versions } from '../editor/versions.ts';
import type { PhotoActs } from '../panels/photoActs.ts';
import { SettingSheet } from '../panels/SettingSheet.tsx';
import type { DeskStore } from './desk.ts';
import { openLight } from './openLight.ts';
import type { Openings } from './opening.ts';

/** Fetched once the first coverage stands. */
export const loadAskedSheet = () => import('./AskedSheet.tsx');
const AskedSheet = lazy(() => loadAskedSheet().then((loaded) => ({ default: loaded.AskedSheet })));

interface SheetColumnProps {
  readonly editor: Editor;
  readonly answers: AnswersStore;
  readonly desk: DeskStore;
  readonly openings: Openings;
  readonly versions: Versions;
  readonly photos: PhotoActs;
}

/** The sheet at the right: of what is selected, or one that was asked for. */
export function SheetColumn({ editor, answers, desk, openings, versions, photos }: SheetColumnProps) {
  const sheet = useStore(desk, (state) => state.sheet);
  if (sheet === 'setting')
    return (
      <SettingSheet
        editor={editor}
        answers={answers}
        photos={photos}
        choosePhotometry={(lamp) => openLight(editor, lamp)}
      />
    );
  return (
    <Suspense fallback={null}>
      <AskedSheet editor={editor} desk={desk} openings={openings} versions={versions} />
    </Suspense>
  );
}
