import { tinykeys } from 'tinykeys';
import type { Editor } from '../editor/editor.ts';
import { selectEverything } from '../editor/selectEverything.ts';
import { deleteSelected } from '../editor/selectionActs.ts';
import { nextTarget } from '../panels/nextTarget.ts';
import type { DeskStore } from './desk.ts';
import { goToName } from './goToName.ts';
import type { Openings } from './opening.ts';

const MODEL = '[role="application"]';
const TREE = '[role="tree"]';

interface KeyParts {
  readonly editor: Editor;
  readonly desk: DeskStore;
  readonly openings: Openings;
  save(): void;
}

/** The keys of the window. Letters act only with the focus in the Model; in the list of the Site they find rows. */
export function listenToKeys({ editor, desk, openings, save }: KeyParts): () => void {
  const taken = (act: () => void) => (event: KeyboardEvent) => {
    event.preventDefault();
    act();
  };
  const within = (places: string, act: () => void) => (event: KeyboardEvent) => {
    if (event.getModifierState('AltGraph') || !(event.target instanceof Element)) return;
    if (!event.target.closest(places)) return;
    event.preventDefault();
    act();
  };
  const nextHeight = () => {
    const { target, plan } = editor.store.getState();
    editor.ask(nextTarget(target, plan.settings));
  };

  return tinykeys(window, {
    '$mod+z': taken(() => editor.undo()),
    '$mod+Shift+z': taken(() => editor.redo()),
    '$mod+y': taken(() => editor.redo()),
    '$mod+o': taken(() => openings.choose()),
    '$mod+s': taken(save),
    '$mod+Enter': taken(() => {
      // What is typed before the finder is there is not meant for the Model.
      if (!desk.getState().finding && document.activeElement instanceof HTMLElement)
        document.activeElement.blur();
      desk.setState(({ finding }) => ({ finding: !finding }));
    }),
    'Shift+?': (event) => {
      if (event.target instanceof HTMLInputElement) return;
      event.preventDefault();
      const open = desk.getState().sheet === 'keys';
      desk.setState({ sheet: open ? 'setting' : 'keys', drawer: true, tab: 'setting' });
    },
    // In the Model these are the acts' own.
    Delete: within(TREE, () => deleteSelected(editor, editor.store.getState().selection)),
    '$mod+a': within(`${MODEL}, ${TREE}`, () => selectEverything(editor)),
    F2: within(`${MODEL}, ${TREE}`, () => goToName(editor, desk)),
    y: within(MODEL, nextHeight),
  });
}
