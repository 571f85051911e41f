import { createRoot } from 'react-dom/client';
import { createAnswers } from '../answers/store.ts';
import { createSession } from '../assess/session.ts';
import { autosave, browserPad, keepCoverShaping, keptCoverShaping, whileFree } from '../editor/autosave.ts';
import { noShelf, openShelf } from '../editor/browserShelf.ts';
import { keepDraft, takeUpDraft } from '../editor/keptDraft.ts';
import { restore } from '../editor/keeping.ts';
import { settlePad, withPad } from '../editor/pad.ts';
import type { Shelf } from '../editor/shelf.ts';
import { createCommands } from '../editor/commands.ts';
import { createEditor } from '../editor/store.ts';
import { keepVersions } from '../editor/versions.ts';
import { createHistory } from '../plan/history.ts';
import { createPool } from '../worker/pool.ts';
import { App } from './App.tsx';
import { demoPlan } from './demo.ts';
import { createDesk } from './desk.ts';
import { createOpenings } from './opening.ts';
import { createPictureStore } from './pictures/pictureStore.ts';
import { createTracing } from './pictures/tracing.ts';
import { createSaving } from './saving.ts';
import { dressPage, firstTheme } from './theme.ts';
import { wire } from './wire.ts';
import { poolSize } from './poolSize.ts';
import { hireWorker } from './workers.ts';
import './sheet.css';

async function start(): Promise<void> {
  const desk = createDesk(firstTheme());
  dressPage(desk);
  const session = createSession();
  const pool = createPool(session, hireWorker, poolSize(navigator.hardwareConcurrency));
  const shelf: Shelf = await openShelf().then(
    (opened) => withPad(opened, browserPad),
    () => noShelf,
  );
  await settlePad(shelf, browserPad, whileFree).catch(() => undefined);
  const linked = new URLSearchParams(location.search).get('plan') === 'demo';
  const found = await restore(shelf).catch(() => null);
  const kept = found && 'history' in found ? found : null;
  const begun = kept?.history ?? createHistory(demoPlan());
  const editor = createEditor(begun.plan, Date.now, begun);
  editor.coverShaping(keptCoverShaping());
  if (kept) editor.store.setState({ kept: { at: kept.at, trouble: null } });
  const answers = createAnswers();
  const caught = (error: unknown) => {
    editor.say(`Something went wrong here, and your plan is untouched: ${wordsOf(error)}`);
    reportError(error);
  };
  wire({ editor, answers, session, pool, frame: requestAnimationFrame, failed: caught });
  const keeping = autosave(editor, shelf);
  keepDraft(editor, shelf);
  const versions = keepVersions(editor, shelf, Date.now);
  const commands = createCommands();
  const pictures = createPictureStore(shelf);
  const tracing = createTracing({ editor, desk, pictures, commands });
  const openings = createOpenings({ editor, desk, keeping, shelf, pictures, trace: tracing.file });
  if (found && 'unreadable' in found)
    editor.say(
      `“${found.unreadable.name}” is kept on this device but cannot be read. Save nothing over it; see Open for what else is kept.`,
    );
  else if (!linked) await takeUpDraft(editor, shelf);
  if (linked) {
    // A reload brings back what was made of it, not the sample anew.
    history.replaceState(null, '', location.pathname);
    if (kept) openings.sample();
  }
  editor.store.subscribe(({ selected, tool, coverShaping }, before) => {
    if (coverShaping !== before.coverShaping) keepCoverShaping(coverShaping);
    // A tool needs the ground that the drawer covers, and what was just made asks its questions there.
    const working = tool !== 'rest' || before.tool !== 'rest';
    if (tool !== before.tool && working) desk.setState({ drawer: false });
    if (selected !== before.selected && selected)
      desk.setState({ sheet: 'setting', ...(working ? {} : { drawer: true }) });
  });

  const root = document.querySelector('#root');
  if (!root) throw new Error('the page has no #root');
  createRoot(root, { onUncaughtError: caught }).render(
    <App
      editor={editor}
      answers={answers}
      desk={desk}
      keeping={keeping}
      openings={openings}
      tracing={tracing}
      versions={versions}
      commands={commands}
      save={createSaving(editor, shelf)}
      caught={caught}
    />,
  );
}

const wordsOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

void start();
