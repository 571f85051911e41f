import { accept, refuse, type Fault, type Outcome } from '../../base/fault.ts';
import type { Photometry } from '../../optics/light.ts';
import { LIMITS } from '../../plan/limits.ts';
import { shapeFaults } from '../../plan/shapeFaults.ts';
import { z } from '../../plan/zod.ts';
import { angleFaults } from './angleFaults.ts';

/*
 * IES LM-63, the open photometric text format, versions of 1986 to 2019. Order of the numbers after the TILT line:
 * several public parsers and their fixtures; what the factor before the watts was until 1991: from memory.
 */

const above0 = z.number().gt(0).max(LIMITS.candela.most);
const count = z.number().int('number.whole').min(1).max(100_000);

const header = z.object({
  lamps: z.number(),
  /** −1 where candela are absolute; they are given in full in either case. */
  lumensPerLamp: z.number(),
  multiplier: above0,
  verticals: count,
  horizontals: count,
  type: z.literal([1, 2, 3]),
  units: z.literal([1, 2]),
  width: z.number(),
  length: z.number(),
  height: z.number(),
  ballastFactor: above0,
  /** A factor of ballast and lamp until 1991; then nothing, and since 2019 how the file was made. */
  factor: z.number(),
  watts: z.number(),
});

const KEYS = Object.keys(header.shape);

const candela = z.array(z.number().min(0).max(LIMITS.candela.most));

const TYPES = ['C', 'B', 'A'];

/**
 * How a lamp shines, out of the text of an IES LM-63 file: candela with the multiplier and the ballast's factor applied.
 * The size of the luminous opening is left: a lamp counts as a point.
 * @param name of the file, for its messages
 * @returns    faults on anything but photometry of type C, or on numbers that are missing or none; a note where the
 *             file says how the light changes as the lamp is tilted, which is not followed
 */
export function readPhotometry(name: string, text: string): Outcome<Photometry> {
  const refused = (faults: readonly Fault[]) =>
    refuse(...faults.map((fault) => ({ ...fault, subject: name })));
  const line = /^[ \t]*TILT[ \t]*=[ \t]*(.*?)[ \t]*$/im.exec(text.replace(/\r\n?/g, '\n'));
  if (!line) return refused([{ code: 'ies.noTilt', path: [] }]);
  const [whole, tilt = ''] = line;
  const body = text.replace(/\r\n?/g, '\n').slice(line.index + whole.length);
  const isIncluded = tilt.toUpperCase() === 'INCLUDE';
  if (!isIncluded && tilt.toUpperCase() !== 'NONE')
    return refused([{ code: 'ies.tiltFile', path: [], given: tilt.slice(0, 60) }]);

  const read = numbersOf(body);
  if (typeof read === 'string') return refused([{ code: 'ies.number', path: [], given: read }]);
  // Tilt: how the lamp sits, how many angles, the angles, their factors.
  const from = isIncluded ? 2 + 2 * Math.max(0, Math.trunc(read[1] ?? 0)) : 0;
  const numbers = read.slice(from);
  if (numbers.length < KEYS.length) return refused([short(read.length, from + KEYS.length)]);
  const head = header.safeParse(Object.fromEntries(KEYS.map((key, at) => [key, numbers[at]])));
  if (!head.success) {
    const given = Object.fromEntries(KEYS.map((key, at) => [key, numbers[at]]));
    return refused(shapeFaults(head.error.issues, given));
  }
  const { type, verticals, horizontals } = head.data;
  if (type !== 1) return refused([{ code: 'ies.type', path: [], given: TYPES[type - 1] ?? type }]);

  const across = KEYS.length + verticals;
  const start = across + horizontals;
  const end = start + verticals * horizontals;
  if (numbers.length < end) return refused([short(read.length, from + end)]);
  const angles = {
    verticals: numbers.slice(KEYS.length, across),
    horizontals: numbers.slice(across, start),
  };
  const wrong = angleFaults(angles);
  if (wrong.length > 0) return refused(wrong);
  const factor = head.data.multiplier * head.data.ballastFactor * (isBefore95(text) ? head.data.factor : 1);
  const bright = candela.safeParse(numbers.slice(start, end).map((value) => value * factor));
  if (!bright.success) return refused([{ code: 'ies.candela', path: [], given: badCandela(bright.error) }]);
  const rows = Array.from({ length: horizontals }, (_, at) =>
    bright.data.slice(at * verticals, (at + 1) * verticals),
  );
  const notes: Fault[] = [];
  if (isIncluded) notes.push({ code: 'ies.tiltLeft', path: [], subject: name });
  if (numbers.length > end)
    notes.push({ code: 'ies.more', path: [], given: numbers.length - end, subject: name });
  return accept({ ...angles, candela: rows }, notes);
}

const short = (given: number, least: number): Fault => ({
  code: 'ies.short',
  path: [],
  given,
  allowed: String(least),
});

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;

/** Numbers between blanks, commas and line ends; or the first word that is none. */
function numbersOf(text: string): number[] | string {
  // Ctrl-Z ended text files once.
  const words = text.split(/[\s,\u001A]+/).filter((word) => word !== '');
  const wrong = words.find((word) => !NUMBER.test(word) || !Number.isFinite(Number(word)));
  return wrong === undefined ? words.map(Number) : wrong.slice(0, 60);
}

/** Files of 1986 begin with no version, those of 1991 with "IESNA91". */
function isBefore95(text: string): boolean {
  const first = text.trimStart().split(/\r|\n/, 1)[0] ?? '';
  return !/^IES/i.test(first) || /^IESNA:?(?:LM-63-)?(?:19)?91\b/i.test(first.trim());
}

const badCandela = ({ issues }: { readonly issues: readonly { readonly path: PropertyKey[] }[] }): string =>
  `number ${Number(issues[0]?.path[0] ?? 0) + 1}`;
