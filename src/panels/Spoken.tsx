import { useStore } from 'zustand';
import type { AnswersStore } from '../answers/store.ts';
import type { Editor } from '../editor/editor.ts';
import { LiveRegion } from '../fittings/LiveRegion.tsx';
import { seenSentence, siteSentence } from './seenSentence.ts';

/** Speaks what the selected camera sees, or else the step just made, once a change has come to rest; a drag on its release. */
export function Spoken({ editor, answers }: { editor: Editor; answers: AnswersStore }) {
  const assessment = useStore(answers, (state) => state.assessment);
  const selected = useStore(editor.store, (state) => state.selected);
  const gesturing = useStore(editor.store, (state) => state.gesturing);
  const camera = selected?.kind === 'camera' ? selected.id : null;
  const plan = useStore(editor.store, (state) => state.plan);
  // What is undone is said where it is undone.
  const made = useStore(editor.store, ({ undoName, redoName }) => (redoName === null ? undoName : null));
  // As drawn, at the ground, the sheet of the whole site says it; what differs is worth a word.
  const plain = assessment?.scene.situation === null && assessment.question.target.kind === 'ground';
  const text =
    assessment === null || gesturing
      ? ''
      : camera === null
        ? plain
          ? doneWords(made)
          : siteSentence(assessment, plan)
        : seenSentence(assessment, camera);
  return <LiveRegion text={text} turn={0} />;
}

const doneWords = (step: string | null): string => (step === null ? '' : `${step}.`);
