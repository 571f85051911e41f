import type { Command } from '../editor/commands.ts';
import { copied, cut, notCopied, paste } from '../editor/clip.ts';
import type { Editor } from '../editor/editor.ts';
import { selectEverything } from '../editor/selectEverything.ts';

/** The system's clipboard, as far as the browser lets a page have it. */
export interface SystemClipboard {
  write(text: string): Promise<void>;
  read(): Promise<string>;
}

/** The browser's; missing where the page has none, as over plain http. */
export const browserClipboard = (): SystemClipboard => ({
  write: (text) => navigator.clipboard.writeText(text),
  read: () => navigator.clipboard.readText(),
});

/** What is copied, cut and pasted of a plan: by menu and finder here, by keys through the events of `listenToClipboard`. */
export function clipCommands(editor: Editor, clipboard: SystemClipboard): readonly Command[] {
  // Where the browser refuses, what was copied in this window can still be pasted in it.
  let last: string | null = null;
  const put = (text: string | null) => {
    if (text === null) return;
    last = text;
    attempt(() => clipboard.write(text)).catch(() =>
      editor.say(
        'The browser keeps the clipboard from this page: what was copied can be pasted in this window only. Ctrl C copies for all.',
      ),
    );
  };
  const take = () => {
    attempt(() => clipboard.read()).then(
      (text) => paste(editor, text),
      () => {
        if (last !== null) paste(editor, last);
        else editor.say('The browser does not let this page read the clipboard. Press Ctrl V instead.');
      },
    );
  };
  const readOnly = () => (editor.store.getState().readOnly ? 'This plan is edited in another tab.' : null);
  return [
    {
      id: 'clip copy',
      label: 'Copy to the clipboard',
      also: 'another plan tab',
      keys: 'Ctrl C',
      off: () => notCopied(editor),
      run: () => put(copied(editor)),
    },
    {
      id: 'clip cut',
      label: 'Cut to the clipboard',
      also: 'another plan tab',
      keys: 'Ctrl X',
      off: () => readOnly() ?? notCopied(editor),
      run: () => put(cut(editor)),
    },
    {
      id: 'clip paste',
      label: 'Paste',
      also: 'clipboard insert',
      keys: 'Ctrl V',
      off: readOnly,
      run: take,
    },
    {
      id: 'select all',
      label: 'Select everything',
      also: 'all',
      keys: 'Ctrl A',
      run: () => selectEverything(editor),
    },
  ];
}

/** A clipboard that is not there fails like one that refuses. */
const attempt = async <T>(act: () => Promise<T>): Promise<T> => act();

/** Ctrl+C, X and V wherever no text is being written or marked. */
export function listenToClipboard(editor: Editor): () => void {
  const isOurs = ({ target }: Event): boolean =>
    !isWriting(target) && document.getSelection()?.isCollapsed !== false;
  const onto = (take: () => string | null) => (event: ClipboardEvent) => {
    if (!isOurs(event) || !event.clipboardData) return;
    const text = take();
    if (text === null) return;
    event.clipboardData.setData('text/plain', text);
    event.preventDefault();
  };
  const copying = onto(() => copied(editor));
  const cutting = onto(() => cut(editor));
  const pasting = (event: ClipboardEvent) => {
    if (isWriting(event.target) || !event.clipboardData) return;
    event.preventDefault();
    paste(editor, event.clipboardData.getData('text/plain'));
  };
  document.addEventListener('copy', copying);
  document.addEventListener('cut', cutting);
  document.addEventListener('paste', pasting);
  return () => {
    document.removeEventListener('copy', copying);
    document.removeEventListener('cut', cutting);
    document.removeEventListener('paste', pasting);
  };
}

/** Whether the keys go into a text. */
const isWriting = (target: EventTarget | null): boolean =>
  target instanceof Element && target.closest('input, textarea, select, [contenteditable]') !== null;
