import { accept, refuse, type Outcome } from '../../base/fault.ts';
import { GROUND_CELLS, LIMITS } from '../../plan/limits.ts';
import { z } from '../../plan/zod.ts';

/*
 * Esri ASCII grid, the open text format of elevation grids: keywords with a number each, in any case and order, then heights row by
 * row from the north-west. Format: from memory; the files in tests/inputs follow it.
 */

const WORDS = [
  'ncols',
  'nrows',
  'xllcorner',
  'yllcorner',
  'xllcenter',
  'yllcenter',
  'cellsize',
  'nodata_value',
] as const;

const header = z
  .object({
    ncols: z.number().int().min(1),
    nrows: z.number().int().min(1),
    xllcorner: z.number().optional(),
    yllcorner: z.number().optional(),
    xllcenter: z.number().optional(),
    yllcenter: z.number().optional(),
    cellsize: z.number().gt(0),
    nodata_value: z.number().default(-9999),
  })
  .transform(({ ncols, nrows, cellsize, nodata_value, ...at }) => ({
    columns: ncols,
    rows: nrows,
    cell: cellsize,
    unknown: nodata_value,
    left: at.xllcorner ?? (at.xllcenter ?? Number.NaN) - cellsize / 2,
    bottom: at.yllcorner ?? (at.yllcenter ?? Number.NaN) - cellsize / 2,
  }));

/** A grid as its file has it, in the file's own coordinates. */
export interface HeightGrid {
  readonly columns: number;
  readonly rows: number;
  readonly cell: number;
  /** West and south edge. */
  readonly left: number;
  readonly bottom: number;
  /** Row by row from the south-west; null where the file has none. */
  readonly heights: readonly (number | null)[];
}

/** Whether a text begins with one of the format's keywords. */
export const isHeightGrid = (text: string): boolean => {
  const [first = ''] = /^\s*\w+/.exec(text) ?? [];
  return WORDS.some((word) => word === first.trim().toLowerCase());
};

/**
 * The grid in a text; a fault on a head that is not whole, on degrees, on too many cells, and on heights that are missing, too
 * many or no numbers.
 */
export function gridFromText(text: string): Outcome<HeightGrid> {
  const { words, rest } = headOf(text);
  const head = header.safeParse(words);
  if (!head.success || Number.isNaN(head.data.left) || Number.isNaN(head.data.bottom)) {
    const at = head.success
      ? Number.isNaN(head.data.left)
        ? 'xllcorner'
        : 'yllcorner'
      : head.error.issues[0]?.path[0];
    const key = String(at ?? 'ncols');
    return refuse({ code: 'elevation.head', path: [key], given: words[key] });
  }
  const { columns, rows, cell, left, bottom, unknown } = head.data;
  if (cell < LIMITS.cell.least && Math.abs(left) <= 360 && Math.abs(bottom) <= 360)
    return refuse({ code: 'elevation.degrees', path: ['cellsize'], given: cell });
  if (cell < LIMITS.cell.least || cell > LIMITS.cell.most)
    return refuse({
      code: 'elevation.cell',
      path: ['cellsize'],
      given: cell,
      allowed: `${LIMITS.cell.least} to ${LIMITS.cell.most} m`,
    });
  const total = columns * rows;
  if (total > GROUND_CELLS)
    return refuse({ code: 'elevation.cells', path: [], given: total, allowed: String(GROUND_CELLS) });

  const heights = Array.from<number | null>({ length: total }).fill(null);
  let count = 0;
  for (const [word] of rest.matchAll(/\S+/g)) {
    const height = Number(word);
    if (!Number.isFinite(height) && !/^-?nan$/i.test(word))
      return refuse({ code: 'elevation.number', path: ['heights', count], given: word.slice(0, 60) });
    if (count < total && height !== unknown && Number.isFinite(height))
      heights[(rows - 1 - Math.floor(count / columns)) * columns + (count % columns)] = height;
    count += 1;
  }
  if (count !== total)
    return refuse({
      code: 'elevation.count',
      path: [],
      given: count,
      allowed: `${columns} × ${rows} = ${total}`,
    });
  return accept({ columns, rows, cell, left, bottom, heights });
}

/** The numbers after the keywords that a text begins with, and what comes after them. */
function headOf(text: string): { readonly words: Readonly<Record<string, number>>; readonly rest: string } {
  const words: Record<string, number> = {};
  let rest = text;
  for (;;) {
    const line = /^\s*([a-z_]+)\s+(\S+)/i.exec(rest);
    const word = line?.[1]?.toLowerCase();
    if (line === null || word === undefined || !WORDS.some((one) => one === word)) return { words, rest };
    words[word] = Number(line[2]);
    rest = rest.slice(line[0].length);
  }
}
