import { createStore } from 'zustand/vanilla';
import type { Kept } from '../editor/shelf.ts';
import type { Theme } from '../draw/ink.ts';
import type { ImportReport } from '../exchange/report.ts';

/** A file that is being read. */
interface Opening {
  readonly name: string;
  readonly share: number;
  readonly doing: string;
  cancel(): void;
}

/** What became of an imported file. */
interface Imported {
  readonly name: string;
  readonly report: ImportReport;
}

interface Pages {
  readonly name: string;
  readonly count: number;
  thumbnail(page: number): Promise<Blob>;
  choose(page: number): void;
  close(): void;
}

/** From here up a window has room for the Section below the Model, px. */
const TALL = 780;

/** The pages of the window, in the order of the work. */
export type Page = 'model' | 'trial' | 'cards' | 'sum';

/** What lies on the desk besides the plan: which sheet is on top, what is being opened. */
export interface Desk {
  readonly page: Page;
  /** What stands in the Model's place: the Model, the picture of the selected camera, or both beside each other. */
  readonly look: 'model' | 'picture' | 'both';
  /** What the strip below shows. */
  readonly strip: 'section' | 'person';
  /** The sheet at the right. */
  readonly sheet: 'setting' | 'open' | 'report' | 'keys' | 'versions' | 'survey' | 'pages' | 'shapes';
  /** The pages of a document, one of which is to be traced. */
  readonly pages: Pages | null;
  /** The finder is open. */
  readonly finding: boolean;
  /** On a narrow window: whether the sheet is drawn over the Model; on a phone: which tab is shown. */
  readonly drawer: boolean;
  readonly tab: 'site' | 'setting' | 'section';
  /** Whether the Section lies below the Model. */
  readonly section: boolean;
  readonly opening: Opening | null;
  readonly imported: Imported | null;
  readonly kept: readonly Kept[];
  readonly theme: Theme;
}

export type DeskStore = ReturnType<typeof createDesk>;

export const createDesk = (theme: Theme) =>
  createStore<Desk>(() => ({
    page: 'model',
    look: 'model',
    strip: 'section',
    sheet: 'setting',
    finding: false,
    pages: null,
    drawer: false,
    tab: 'site',
    section: window.innerHeight >= TALL,
    opening: null,
    imported: null,
    kept: [],
    theme,
  }));
