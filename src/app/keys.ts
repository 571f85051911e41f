import { tinykeys } from 'tinykeys';
import { hide, remove } from '../editor/acts.ts';
import type { AnswersStore } from '../answers/store.ts';
import type { Editor } from '../editor/editor.ts';
import { nextTarget } from '../panels/nextTarget.ts';
import type { DeskStore } from './desk.ts';
import type { Openings } from './opening.ts';

const MODEL = '[role="application"]';

interface KeyParts {
  readonly editor: Editor;
  readonly answers: AnswersStore;
  readonly desk: DeskStore;
  readonly openings: Openings;
  save(): void;
}

/** The keys of the window. Letters act only with the focus in the Model; in the list of the Site they find rows. */
export function listenToKeys({ editor, answers, desk, openings, save }: KeyParts): () => void {
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
  const selectedThing = () => {
    const { selected } = editor.store.getState();
    switch (selected?.kind) {
      case 'structure':
      case 'camera':
      case 'lamp':
      case 'patch':
      case 'situation':
        return { kind: selected.kind, id: selected.id };
      default:
        return null;
    }
  };

  const deleteSelected = () => {
    const thing = selectedThing();
    const cameras = answers.getState().assessment?.scene.cameras ?? [];
    if (thing) remove(editor, thing, Object.fromEntries(cameras.map(({ id, eye }) => [id, eye])));
  };

  const hideSelected = () => {
    const thing = selectedThing();
    if (thing?.kind !== 'camera' && thing?.kind !== 'structure') return;
    const { plan } = editor.store.getState();
    const now = thing.kind === 'camera' ? plan.cameras[thing.id] : plan.structures[thing.id];
    if (now) hide(editor, { kind: thing.kind, id: thing.id }, !now.hidden);
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
    '$mod+Enter': taken(() => desk.setState(({ finding }) => ({ finding: !finding }))),
    'Shift+?': (event) => {
      if (event.target instanceof HTMLInputElement) return;
      event.preventDefault();
      const open = desk.getState().sheet === 'keys';
      desk.setState({ sheet: open ? 'setting' : 'keys', drawer: true, tab: 'setting' });
    },
    Delete: within(`${MODEL}, [role="tree"]`, deleteSelected),
    h: within(MODEL, hideSelected),
    y: within(MODEL, nextHeight),
  });
}
