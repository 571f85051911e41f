import { Suspense, lazy } from 'react';
import { useStore } from 'zustand';
import type { AnswersStore } from '../answers/store.ts';
import type { Editor } from '../editor/editor.ts';
import { thingOf } from '../editor/recordsOf.ts';
import { UnwritableProvider } from '../fittings/writable.ts';
import type { PhotoActs } from './photoActs.ts';
import { SiteSheet } from './SiteSheet.tsx';

/** Fetched once the first coverage stands: nothing is selected before. */
export const loadThingSheet = () => import('./ThingSheet.tsx');
const ThingSheet = lazy(() => loadThingSheet().then((loaded) => ({ default: loaded.ThingSheet })));

interface SettingSheetProps {
  readonly editor: Editor;
  readonly answers: AnswersStore;
  readonly photos: PhotoActs;
  choosePhotometry(lamp: string): void;
}

/** The setting sheet of what is selected, or of the whole site. */
export function SettingSheet({ editor, answers, photos, choosePhotometry }: SettingSheetProps) {
  const readOnly = useStore(editor.store, (state) => state.readOnly);
  const isThing = useStore(
    editor.store,
    ({ plan, selected }) => selected !== null && thingOf(plan, selected) !== undefined,
  );
  return (
    <UnwritableProvider value={readOnly ? 'This plan is edited in another tab.' : null}>
      {isThing ? (
        <Suspense fallback={null}>
          <ThingSheet editor={editor} answers={answers} photos={photos} choosePhotometry={choosePhotometry} />
        </Suspense>
      ) : (
        <SiteSheet editor={editor} answers={answers} />
      )}
    </UnwritableProvider>
  );
}
