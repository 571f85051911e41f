import { Suspense, lazy } from 'react';
import { useStore } from 'zustand';
import type { AnswersStore } from '../answers/store.ts';
import type { Editor } from '../editor/editor.ts';
import { Segmented } from '../fittings/Segmented.tsx';
import type { Desk, DeskStore } from './desk.ts';

export const loadSection = () => import('../panels/section/SectionStrip.tsx');
const SectionStrip = lazy(() => loadSection().then((loaded) => ({ default: loaded.SectionStrip })));
const PersonCards = lazy(() =>
  import('../panels/person/PersonCards.tsx').then((loaded) => ({ default: loaded.PersonCards })),
);

interface StripProps {
  readonly editor: Editor;
  readonly answers: AnswersStore;
  readonly desk: DeskStore;
}

/** Below the Model: what proves what is selected. The cut from the side, or what a person there is made of. */
export function Strip({ editor, answers, desk }: StripProps) {
  const shown = useStore(desk, ({ strip }) => strip);
  const cut = useStore(editor.store, ({ selected }) => selected?.kind === 'camera');
  const choice = cut && (
    <Segmented<Desk['strip']>
      label="Strip"
      viewing
      value={shown}
      choices={[
        { value: 'section', label: 'From the side' },
        { value: 'person', label: 'Person at true pixels' },
      ]}
      set={(strip) => desk.setState({ strip })}
    />
  );
  return (
    <Suspense fallback={null}>
      {shown === 'person' && cut ? (
        <PersonCards editor={editor} answers={answers} beside={choice} />
      ) : (
        <SectionStrip editor={editor} answers={answers} beside={choice} />
      )}
    </Suspense>
  );
}
