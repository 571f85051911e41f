/** Sheets that cards are printed on. */
export type PaperName = 'a4' | 'letter';

/** Margin on all sides, mm: what printers leave blank, with room. */
export const PAPER_MARGIN = 11;

interface Sheet {
  readonly name: string;
  /** mm */
  readonly width: number;
  readonly height: number;
}

/** ISO 216 A4, and Letter of 8 1/2 by 11 inches; from memory. */
const SHEETS: Readonly<Record<PaperName, Sheet>> = {
  a4: { name: 'A4', width: 210, height: 297 },
  letter: { name: 'Letter', width: 215.9, height: 279.4 },
};

export const paperOf = (paper: PaperName): Sheet => SHEETS[paper];
