import { CancelledError } from '../base/progress.ts';
import type { Editor } from '../editor/editor.ts';
import { historyKept, keptPlans } from '../editor/keeping.ts';
import type { Keeping } from '../editor/keeping.ts';
import { takeUpDraft } from '../editor/keptDraft.ts';
import type { Kept, Shelf } from '../editor/shelf.ts';
import { pictureType } from '../exchange/pictures/pictureType.ts';
import { emptyPlan } from '../plan/emptyPlan.ts';
import type { History } from '../plan/history.ts';
import type { Plan } from '../plan/plan.ts';
import { readPlan } from '../plan/read.ts';
import { demoPlan } from './demo.ts';
import type { DeskStore } from './desk.ts';
import type { PictureStore } from './pictures/pictureStore.ts';
import type { DropSpot } from './pictures/tracing.ts';
import { hireWorker } from './workers.ts';
import { chooseFile } from './chooseFile.ts';

/** The ways in: a file, the sample, an empty plan, a plan that the device kept. None loses the one that is open. */
export interface Openings {
  choose(): void;
  /** @param at where on the window it was dropped, CSS px */
  file(file: File, at?: DropSpot): Promise<void>;
  sample(): void;
  empty(): void;
  kept(kept: Kept): void;
  forget(kept: Kept): void;
  /** Shows the ways in, with what the device keeps. */
  show(): void;
}

interface OpeningParts {
  readonly editor: Editor;
  readonly desk: DeskStore;
  readonly keeping: Keeping;
  readonly shelf: Shelf;
  readonly pictures: PictureStore;
  /** A picture or a page to be traced, or a photo to be pinned where it was dropped. */
  trace(file: File, at?: DropSpot): Promise<void>;
}

export function createOpenings({ editor, desk, keeping, shelf, pictures, trace }: OpeningParts): Openings {
  const trouble = (error: unknown) => {
    if (error instanceof CancelledError)
      return editor.say('Opening was called off. Your open plan is untouched.');
    editor.say(`The file could not be opened. Your open plan is untouched. ${wordsOf(error)}`);
  };

  const open = async (plan: Plan, said: string, history?: History) => {
    await keeping.open(plan, history);
    desk.setState({ sheet: 'setting' });
    editor.say(said);
    await takeUpDraft(editor, shelf);
  };

  const file = async (chosen: File, at?: DropSpot) => {
    desk.getState().opening?.cancel();
    const reader = hireWorker();
    const calling = new AbortController();
    const opening = { name: chosen.name, cancel: () => calling.abort() };
    desk.setState({ opening: { ...opening, share: 0, doing: 'Reading the file' } });
    try {
      const bytes = new Uint8Array(await chosen.arrayBuffer());
      if (pictureType(bytes) !== null) return await trace(chosen, at);
      const read = await reader.client.openFile(
        { name: chosen.name, bytes },
        {
          signal: calling.signal,
          transfer: [bytes.buffer],
          progress: (share, doing) => desk.setState({ opening: { ...opening, share, doing } }),
        },
      );
      if (!read.ok) {
        editor.say(`“${chosen.name}” was not opened.`, read.faults);
        return;
      }
      const { plan: found, report } = read.value;
      // A plan made from a map has no id of its own yet.
      const plan = report ? { ...found, id: crypto.randomUUID() } : found;
      const hint = plan.cameraOrder.length === 0 ? ' No camera yet. Press C, then point at a wall.' : '';
      const missing = await pictures.take(plan, read.value.pictures);
      await open(plan, `Opened “${plan.name}”.${hint}${missingWords(missing)}`);
      if (read.notes.length > 0) editor.say(`Opened “${plan.name}”, with notes.`, read.notes);
      if (report) desk.setState({ imported: { name: chosen.name, report }, sheet: 'report', drawer: true });
    } catch (error) {
      trouble(error);
    } finally {
      reader.dismiss();
      desk.setState({ opening: null });
    }
  };

  const show = () => {
    desk.setState({ sheet: 'open', drawer: true, tab: 'setting' });
    keptPlans(shelf).then((kept) => desk.setState({ kept }), trouble);
  };

  return {
    file,
    show,
    choose: () => {
      chooseFile({
        description: 'Plans and streets',
        extensions: ['.json', '.soffit', '.geojson', '.asc', '.png', '.jpg', '.jpeg', '.webp', '.pdf'],
        id: 'soffit',
      }).then(
        (chosen) => file(chosen),
        (error: unknown) => {
          // The person closed the system's file chooser.
          if (!(error instanceof DOMException && error.name === 'AbortError')) trouble(error);
        },
      );
    },
    sample: () => {
      open(demoPlan(), 'Opened the sample.').catch(trouble);
    },
    empty: () => {
      open(
        emptyPlan(crypto.randomUUID(), 'New plan'),
        'A new plan. What you changed before is kept on this device.',
      ).catch(trouble);
    },
    kept: (kept) => {
      const read = readPlan(kept.text);
      if (read.ok) {
        historyKept(shelf, kept, read.value)
          .then((history) => open(read.value, `Opened “${read.value.name}”.`, history))
          .catch(trouble);
      } else editor.say(`“${kept.name}” was not opened.`, read.faults);
    },
    forget: (kept) => {
      shelf.remove(kept.key).then(show, trouble);
    },
  };
}

const missingWords = (count: number): string =>
  count === 0 ? '' : ` ${count === 1 ? 'A picture is' : `${count} pictures are`} not on this device.`;

const wordsOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
