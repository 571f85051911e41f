import type { LengthUnit } from '../../../base/length.ts';
import { LEAST_SIZE } from '../../../base/tolerance.ts';
import { typedAngle, typedLength, type TypedNumber } from '../typing/typedNumber.ts';

/** A typed length with the turn that may follow it: `8.2<30`; turn in °, right positive, null where none was typed. */
export type TypedEdge =
  | { readonly ok: true; readonly length: number; readonly turn: number | null }
  | { readonly ok: false; readonly trouble: string };

/** Reads an edge's length, above nought, and its turn. */
export function typedEdge(text: string, unit: LengthUnit): TypedEdge {
  const [before = '', after, ...more] = text.split('<');
  if (more.length > 0) return { ok: false, trouble: `“${text}” has two turns. Write 8.2<30.` };
  const length = above(typedLength(before, unit));
  if (!length.ok) return length;
  if (after === undefined) return { ok: true, length: length.value, turn: null };
  const turn = typedAngle(after);
  return turn.ok ? { ok: true, length: length.value, turn: turn.value } : turn;
}

/** A side of a rectangle as typed: `explicit` where a minus sign says which way it goes. */
export interface TypedSide {
  readonly metres: number;
  readonly explicit: boolean;
}

export type TypedRectangle =
  | { readonly ok: true; readonly across: TypedSide; readonly up: TypedSide }
  | { readonly ok: false; readonly trouble: string };

/** Whether a text is meant as a rectangle; `×` is one only where it stands alone, since `2 × 0.6` is a length. */
export const meansRectangle = (text: string): boolean => /x/i.test(text);

/** Reads `3.2x6`, `2.4x-1.4`: across, then up. */
export function typedRectangle(text: string, unit: LengthUnit): TypedRectangle {
  const [across = '', up, ...more] = text.split(/x/i);
  if (up === undefined || more.length > 0)
    return { ok: false, trouble: `“${text}” is no rectangle. Write 3.2x6.` };
  const sides = [typedSide(across, unit), typedSide(up, unit)] as const;
  for (const side of sides) if (!side.ok) return side;
  const [one, two] = sides;
  return one.ok && two.ok
    ? { ok: true, across: one.side, up: two.side }
    : { ok: false, trouble: `“${text}” is no rectangle. Write 3.2x6.` };
}

/** Reads one side, 10 mm or more either way. */
export function typedSide(
  text: string,
  unit: LengthUnit,
): { readonly ok: true; readonly side: TypedSide } | { readonly ok: false; readonly trouble: string } {
  const isPlus = /^\s*\+/.test(text);
  const read = typedLength(isPlus ? text.replace('+', '') : text, unit);
  if (!read.ok) return read;
  if (Math.abs(read.value) < LEAST_SIZE) return { ok: false, trouble: TOO_SMALL };
  return { ok: true, side: { metres: read.value, explicit: read.value < 0 || isPlus } };
}

const TOO_SMALL = 'Each side must be 0.01 m or more.';

function above(read: TypedNumber): TypedNumber {
  if (read.ok && read.value < LEAST_SIZE) return { ok: false, trouble: 'Length must be 0.01 m or more.' };
  return read;
}
