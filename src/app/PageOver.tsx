import { Suspense, lazy } from 'react';
import { useStore } from 'zustand';
import type { AnswersStore } from '../answers/store.ts';
import type { Editor } from '../editor/editor.ts';
import type { DeskStore } from './desk.ts';
import type { Tracing } from './pictures/tracing.ts';
import styles from './pages.module.css';

const LensTrialPage = lazy(() =>
  import('./trial/LensTrialPage.tsx').then((loaded) => ({ default: loaded.LensTrialPage })),
);
const CardsPage = lazy(() =>
  import('./cards/CardsPage.tsx').then((loaded) => ({ default: loaded.CardsPage })),
);
const QuickSum = lazy(() =>
  import('../panels/sum/QuickSum.tsx').then((loaded) => ({ default: loaded.QuickSum })),
);

interface PageOverProps {
  readonly editor: Editor;
  readonly answers: AnswersStore;
  readonly desk: DeskStore;
  readonly tracing: Tracing;
  caught(error: unknown): void;
}

/** A page that lies over the Model and its sheets; they stay as they are below it. */
export function PageOver({ editor, answers, desk, tracing, caught }: PageOverProps) {
  const page = useStore(desk, (state) => state.page);
  const toModel = () => desk.setState({ page: 'model' });
  if (page === 'model') return null;
  return (
    <main className={styles.page} aria-label={LABELS[page]}>
      <Suspense fallback={null}>
        {page === 'trial' && (
          <LensTrialPage
            editor={editor}
            answers={answers}
            bitmap={tracing.bitmap}
            failed={caught}
            toModel={toModel}
          />
        )}
        {page === 'cards' && <CardsPage editor={editor} answers={answers} />}
        {page === 'sum' && <QuickSum editor={editor} answers={answers} close={toModel} />}
      </Suspense>
    </main>
  );
}

const LABELS = { trial: 'Lens trial', cards: 'Drill cards', sum: 'Quick sum' } as const;
