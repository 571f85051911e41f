import { degreesFromRad } from './angle.ts';
import { lengthOf } from './length.ts';
import type { LengthTrouble } from './length.ts';

export type AngleReading =
  | { readonly ok: true; readonly degrees: number }
  | { readonly ok: false; readonly trouble: LengthTrouble };

/** Reads an angle: `22.5`, `22,5°`, a slope `1:40` or `12%`. Degrees; or why not. */
export function angleOf(text: string): AngleReading {
  const plain = text.replace(/[°\s]/g, '').replace('−', '-');
  const slope = /^([^:]+):([^:]+)$/.exec(plain);
  const over = slope?.[1];
  const under = slope?.[2];
  if (over !== undefined && under !== undefined) {
    const [rise, run] = [numberOf(over), numberOf(under)];
    if (!rise.ok) return rise;
    if (!run.ok) return run;
    if (run.degrees === 0) return { ok: false, trouble: 'by zero' };
    return { ok: true, degrees: degreesFromRad(Math.atan(rise.degrees / run.degrees)) };
  }
  if (plain.endsWith('%')) {
    const rise = numberOf(plain.slice(0, -1));
    return rise.ok ? { ok: true, degrees: degreesFromRad(Math.atan(rise.degrees / 100)) } : rise;
  }
  return numberOf(plain);
}

// A bare number reads as a length in metres does, sums and decimal comma included.
function numberOf(text: string): AngleReading {
  if (/[a-z'"]/i.test(text)) return { ok: false, trouble: 'unreadable' };
  const reading = lengthOf(text, 'metres');
  return reading.ok ? { ok: true, degrees: reading.metres } : reading;
}
