import { Suspense, lazy, useEffect } from 'react';
import { useStore } from 'zustand';
import type { AnswersStore } from '../answers/store.ts';
import type { Editor } from '../editor/editor.ts';
import type { Commands } from '../editor/commands.ts';
import type { Keeping } from '../editor/keeping.ts';
import type { Versions } from '../editor/versions.ts';
import { loadThingSheet } from '../panels/SettingSheet.tsx';
import { SiteTree } from '../panels/site/SiteTree.tsx';
import { TitleBlock } from '../panels/TitleBlock.tsx';
import { FaultWordsProvider } from '../panels/faultWords.ts';
import { faultText } from '../plan/faultText.ts';
import type { Theme } from '../draw/ink.ts';
import { afterFirst } from '../view3d/afterFirst.ts';
import { ErrorBoundary } from './ErrorBoundary.tsx';
import { joinClipboard } from './joinClipboard.ts';
import { ModelRegion } from './ModelRegion.tsx';
import { PageOver } from './PageOver.tsx';
import { SheetColumn, loadAskedSheet } from './SheetColumn.tsx';
import { Strip, loadSection } from './Strip.tsx';
import { loadFileAccess } from './chooseFile.ts';
import { Tabs } from './Tabs.tsx';
import { TopBar } from './TopBar.tsx';
import type { DeskStore, Page } from './desk.ts';
import { listenToDrops } from './drops.ts';
import { listenToKeys } from './keys.ts';
import type { Openings } from './opening.ts';
import type { Tracing } from './pictures/tracing.ts';
import { bandTokens } from './theme.ts';
import { useNarrow } from './narrow.ts';
import { windowCommands } from './windowCommands.ts';
import styles from './app.module.css';

const loadFinder = () => import('../panels/finder/Finder.tsx');
const Finder = lazy(() => loadFinder().then((loaded) => ({ default: loaded.Finder })));

interface AppProps {
  readonly editor: Editor;
  readonly answers: AnswersStore;
  readonly desk: DeskStore;
  readonly keeping: Keeping;
  readonly openings: Openings;
  readonly tracing: Tracing;
  readonly versions: Versions;
  readonly commands: Commands;
  save(): void;
  caught(error: unknown): void;
}

/** The window: bar, site, Model, sheet. */
export function App({
  editor,
  answers,
  desk,
  keeping,
  openings,
  tracing,
  versions,
  commands,
  save,
  caught,
}: AppProps) {
  const { theme, drawer, tab, finding, section, page } = useStore(desk);
  const name = useStore(editor.store, ({ plan }) => plan.name);
  const narrow = useNarrow();

  useEffect(() => listenToKeys({ editor, desk, openings, save }), [editor, desk, openings, save]);
  useEffect(
    () => commands.add(windowCommands({ editor, desk, openings, tracing, save })),
    [commands, editor, desk, openings, tracing, save],
  );
  useEffect(() => joinClipboard(editor, answers, commands), [editor, answers, commands]);
  useEffect(() => afterFirst(answers, loadRest), [answers]);
  useEffect(() => listenToDrops(openings.file), [openings]);
  useEffect(() => {
    document.title = `${name} · Soffit`;
  }, [name]);

  const part = (name: string, content: React.ReactNode) => (
    <ErrorBoundary part={name} caught={caught}>
      {content}
    </ErrorBoundary>
  );
  const covered = page !== 'model';
  const goToModel = () => document.querySelector<HTMLElement>('[role="application"]')?.focus();

  const site = (
    <aside
      key="site"
      className={styles.site}
      aria-label="Site"
      hidden={narrow && tab !== 'site'}
      inert={covered}
    >
      {part('The list of the site', <SiteTree editor={editor} goToModel={goToModel} />)}
      {part('The title block', <TitleBlock editor={editor} answers={answers} />)}
    </aside>
  );
  const model = part(
    'The Model',
    <ModelRegion
      editor={editor}
      answers={answers}
      desk={desk}
      openings={openings}
      tracing={tracing}
      commands={commands}
    />,
  );
  const sheet = (
    <aside
      key="sheet"
      className={styles.sheet}
      aria-label="Setting sheet"
      data-drawer={drawer}
      hidden={narrow && tab !== 'setting'}
      inert={covered}
    >
      {part(
        'The setting sheet',
        <SheetColumn
          editor={editor}
          answers={answers}
          desk={desk}
          openings={openings}
          versions={versions}
          photos={tracing}
        />,
      )}
    </aside>
  );

  const cut = (narrow ? tab === 'section' : section) && (
    <div key="section" className={styles.section} inert={covered}>
      {part('The Section', <Strip editor={editor} answers={answers} desk={desk} />)}
    </div>
  );

  return (
    <FaultWordsProvider value={faultText}>
      <Shown answers={answers} theme={theme} page={page}>
        <TopBar
          editor={editor}
          desk={desk}
          open={openings.show}
          save={save}
          editHere={() => {
            keeping.editHere().catch(caught);
          }}
        />
        {finding && (
          <Suspense fallback={null}>
            <Finder editor={editor} commands={commands} close={() => desk.setState({ finding: false })} />
          </Suspense>
        )}
        {narrow
          ? [
              <div key="model" className={styles.model} inert={covered}>
                {model}
              </div>,
              <Tabs key="tabs" desk={desk} covered={covered} />,
              site,
              sheet,
              cut,
            ]
          : [
              site,
              <div key="model" className={styles.model} inert={covered}>
                {model}
              </div>,
              sheet,
              cut,
            ]}
        {covered &&
          part(
            'The page',
            <PageOver editor={editor} answers={answers} desk={desk} tracing={tracing} caught={caught} />,
          )}
      </Shown>
    </FaultWordsProvider>
  );
}

/** What is not needed for the first coverage, so that it is at hand when it is asked for. */
const loadRest = (): void => {
  for (const load of [loadThingSheet, loadAskedSheet, loadFinder, loadSection, loadFileAccess])
    load().catch(() => undefined);
};

interface ShownProps {
  readonly answers: AnswersStore;
  readonly theme: Theme;
  readonly page: Page;
  readonly children: React.ReactNode;
}

/** Says which answer is shown, and in what tones; only this is made anew with each answer, not what it holds. */
function Shown({ answers, theme, page, children }: ShownProps) {
  const revision = useStore(answers, ({ assessment }) => assessment?.revision ?? 0);
  const bands = useStore(answers, ({ assessment }) => assessment?.edition.bands.length ?? 4);
  const computing = useStore(answers, (state) => state.computing !== null);
  const ahead = useStore(answers, (state) => state.ahead !== null);
  return (
    <div
      className={styles.app}
      data-page={page}
      data-revision={revision}
      data-computing={computing}
      data-ahead={ahead}
      style={bandTokens(bands, theme)}
    >
      {children}
    </div>
  );
}
