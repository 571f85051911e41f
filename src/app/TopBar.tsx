import {
  CircleQuestionMark,
  FolderOpen,
  Moon,
  PanelBottom,
  Redo2,
  Save,
  Search,
  SlidersHorizontal,
  Sun,
  Undo2,
} from 'lucide-react';
import { useStore } from 'zustand';
import { renameWhole } from '../editor/acts.ts';
import type { Editor } from '../editor/editor.ts';
import { Button } from '../fittings/Button.tsx';
import { Mark } from '../fittings/Mark.tsx';
import { TextField } from '../fittings/TextField.tsx';
import { UnwritableProvider } from '../fittings/writable.ts';
import { NAME_LENGTH } from '../plan/limits.ts';
import type { DeskStore } from './desk.ts';
import { KeptWords } from './KeptWords.tsx';
import { PageTabs } from './PageTabs.tsx';
import { chooseTheme } from './theme.ts';
import styles from './topBar.module.css';

interface TopBarProps {
  readonly editor: Editor;
  readonly desk: DeskStore;
  open(): void;
  save(): void;
  editHere(): void;
}

const SIGN = { size: 17, strokeWidth: 1.7 };

/** The bar: whose plan this is and how it is kept, then the few acts that concern the whole of it. */
export function TopBar({ editor, desk, open, save, editHere }: TopBarProps) {
  const name = useStore(editor.store, (state) => state.plan.name);
  const readOnly = useStore(editor.store, (state) => state.readOnly);
  const undoName = useStore(editor.store, (state) => state.undoName);
  const redoName = useStore(editor.store, (state) => state.redoName);
  const { theme, sheet, drawer, section } = useStore(desk);
  return (
    <header className={styles.bar}>
      <h1 className={styles.brand}>
        <Mark size={20} />
        <span>Soffit</span>
      </h1>
      <div className={styles.plan}>
        <UnwritableProvider value={readOnly ? 'This plan is edited in another tab.' : null}>
          <TextField
            label="Name of the plan"
            look="title"
            value={name}
            most={NAME_LENGTH}
            set={(other) => renameWhole(editor, other)}
          />
        </UnwritableProvider>
        <KeptWords editor={editor} editHere={editHere} />
      </div>
      <PageTabs desk={desk} />
      <nav className={styles.acts} aria-label="Plan">
        <Button look="quiet" label="Open" keys="Ctrl O opens a file" press={open}>
          <FolderOpen {...SIGN} />
          <span>Open</span>
        </Button>
        <Button look="quiet" label="Save to a file" keys="Ctrl S" press={save}>
          <Save {...SIGN} />
          <span>Save</span>
        </Button>
        <Button
          look="icon"
          label={undoName === null ? 'Undo' : `Undo: ${undoName}`}
          keys="Ctrl Z"
          off={undoName === null ? 'Nothing to undo' : null}
          press={() => editor.undo()}
        >
          <Undo2 {...SIGN} />
        </Button>
        <Button
          look="icon"
          label={redoName === null ? 'Redo' : `Redo: ${redoName}`}
          keys="Ctrl Y"
          off={redoName === null ? 'Nothing to do again' : null}
          press={() => editor.redo()}
        >
          <Redo2 {...SIGN} />
        </Button>
        <Button
          look="icon"
          label="Find a command, a thing or a number"
          keys="Ctrl Enter"
          press={() => desk.setState({ finding: true })}
        >
          <Search {...SIGN} />
        </Button>
        <span className={styles.cut}>
          <Button
            look="icon"
            label="Section"
            pressed={section}
            press={() => desk.setState(({ section: shown }) => ({ section: !shown }))}
          >
            <PanelBottom {...SIGN} />
          </Button>
        </span>
        <Button
          look="icon"
          label={theme === 'dark' ? 'Light theme' : 'Dark theme'}
          press={() => chooseTheme(desk, theme === 'dark' ? 'light' : 'dark')}
        >
          {theme === 'dark' ? <Sun {...SIGN} /> : <Moon {...SIGN} />}
        </Button>
        <Button
          look="icon"
          label="Keys"
          keys="?"
          pressed={sheet === 'keys'}
          press={() =>
            desk.setState({ sheet: sheet === 'keys' ? 'setting' : 'keys', drawer: true, tab: 'setting' })
          }
        >
          <CircleQuestionMark {...SIGN} />
        </Button>
        <span className={styles.drawer}>
          <Button
            look="icon"
            label="Setting sheet"
            pressed={drawer}
            press={() => desk.setState({ drawer: !drawer })}
          >
            <SlidersHorizontal {...SIGN} />
          </Button>
        </span>
      </nav>
    </header>
  );
}
