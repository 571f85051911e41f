export type LengthUnit = 'metres' | 'millimetres' | 'feet';

/** Why a text is no length: `ambiguous` has both a point and a comma in one number. */
export type LengthTrouble = 'empty' | 'unreadable' | 'ambiguous' | 'by zero';

export type LengthReading =
  | { readonly ok: true; readonly metres: number }
  | { readonly ok: false; readonly trouble: LengthTrouble };

/** Metres in one of each unit that a person may write. */
const METRES: Readonly<Record<string, number>> = {
  m: 1,
  cm: 0.01,
  mm: 0.001,
  ft: 0.3048,
  "'": 0.3048,
  in: 0.0254,
  '"': 0.0254,
};

const METRES_PER: Readonly<Record<LengthUnit, number>> = { metres: 1, millimetres: 0.001, feet: 0.3048 };

const TWINS: readonly (readonly [RegExp, string])[] = [
  [/[’‘′]/g, "'"],
  [/[“”″]|''/g, '"'],
  [/[−–]/g, '-'],
  [/×/g, '*'],
  [/÷/g, '/'],
  [/½/g, ' 1/2'],
  [/¼/g, ' 1/4'],
  [/¾/g, ' 3/4'],
];

/** A number with its power of length: 0 for a bare number, 1 for metres, anything else is no length. */
interface Quantity {
  readonly value: number;
  readonly power: number;
}

class Trouble extends Error {
  readonly trouble: LengthTrouble;
  constructor(trouble: LengthTrouble) {
    super(trouble);
    this.trouble = trouble;
  }
}

/**
 * Reads a length as a person writes one: `2.4`, `2,4`, `240 cm`, `7' 10 1/2"`, `3.2 + 2 × 0.6`, `(4.2 - 1.6) / 2`.
 * A bare number is in `unit`. `10 1/2` is ten and a half, `11/4` a division.
 * @returns metres, negative where so written; or why not. Never a silent 0.
 */
export function lengthOf(text: string, unit: LengthUnit): LengthReading {
  let plain = text;
  for (const [twin, sign] of TWINS) plain = plain.replace(twin, sign);
  if (plain.trim() === '') return { ok: false, trouble: 'empty' };
  try {
    const reader = new Reader(plain.trim());
    const { value, power } = reader.whole(METRES_PER[unit]);
    const metres = power === 0 ? value * METRES_PER[unit] : value;
    if (!Number.isFinite(metres) || power > 1 || power < 0) return { ok: false, trouble: 'unreadable' };
    return { ok: true, metres };
  } catch (error) {
    if (error instanceof Trouble) return { ok: false, trouble: error.trouble };
    throw error;
  }
}

const NUMBER = /^(?:\d+(?:[.,]\d*)?|[.,]\d+)/;
const MIXED = /^(\d+)\s+(\d+)\/(\d+)(?![\d.,])/;
const UNIT = /^\s*(mm|cm|m|ft|in|'|")(?![a-z])/i;

/** expr = term {(+|-) term}, term = atom {(*|/) atom}, atom = -atom | number unit? | feet | (expr). */
class Reader {
  private rest: string;
  private bare = 1;

  constructor(text: string) {
    this.rest = text;
  }

  whole(bare: number): Quantity {
    this.bare = bare;
    const quantity = this.expression();
    if (this.rest.trim() !== '') throw new Trouble('unreadable');
    return quantity;
  }

  private expression(): Quantity {
    let sum = this.term();
    for (let sign = this.take(/^\s*([+-])/); sign; sign = this.take(/^\s*([+-])/)) {
      const next = this.term();
      const [a, b] = sum.power === next.power ? [sum, next] : [this.asLength(sum), this.asLength(next)];
      if (a.power !== b.power) throw new Trouble('unreadable');
      sum = { value: sign === '+' ? a.value + b.value : a.value - b.value, power: a.power };
    }
    return sum;
  }

  private term(): Quantity {
    let product = this.atom();
    for (let sign = this.take(/^\s*([*/])/); sign; sign = this.take(/^\s*([*/])/)) {
      const next = this.atom();
      if (sign === '/' && next.value === 0) throw new Trouble('by zero');
      product =
        sign === '*'
          ? { value: product.value * next.value, power: product.power + next.power }
          : { value: product.value / next.value, power: product.power - next.power };
    }
    return product;
  }

  private atom(): Quantity {
    if (this.take(/^\s*(-)/)) {
      const { value, power } = this.atom();
      return { value: -value, power };
    }
    if (this.take(/^\s*(\()/)) {
      const inner = this.expression();
      if (!this.take(/^\s*(\))/)) throw new Trouble('unreadable');
      return inner;
    }
    const value = this.number();
    const unit = this.take(UNIT)?.toLowerCase();
    if (unit === undefined) return { value, power: 0 };
    if (unit === 'ft' || unit === "'") return { value: value * 0.3048 + this.inches(), power: 1 };
    return { value: value * (METRES[unit] ?? Number.NaN), power: 1 };
  }

  /** What follows feet: inches with or without their sign, or nothing. */
  private inches(): number {
    const before = this.rest;
    if (!/^\s*[\d.,]/.test(this.rest)) return 0;
    const value = this.number();
    const unit = this.take(UNIT)?.toLowerCase();
    if (unit === undefined || unit === '"' || unit === 'in') return value * 0.0254;
    this.rest = before;
    return 0;
  }

  private number(): number {
    this.rest = this.rest.trimStart();
    const mixed = MIXED.exec(this.rest);
    if (mixed) {
      this.rest = this.rest.slice(mixed[0].length);
      const [, whole, over, under] = mixed.map(Number);
      if (!under) throw new Trouble('by zero');
      return (whole ?? 0) + (over ?? 0) / under;
    }
    const plain = NUMBER.exec(this.rest)?.[0];
    if (plain === undefined) throw new Trouble('unreadable');
    this.rest = this.rest.slice(plain.length);
    // 1,234.5 could mean two things.
    if (/^[.,]/.test(this.rest)) throw new Trouble('ambiguous');
    return Number(plain.replace(',', '.'));
  }

  private asLength(quantity: Quantity): Quantity {
    return quantity.power === 0 ? { value: quantity.value * this.bare, power: 1 } : quantity;
  }

  private take(pattern: RegExp): string | undefined {
    const found = pattern.exec(this.rest);
    if (!found) return undefined;
    this.rest = this.rest.slice(found[0].length);
    return found[1];
  }
}

/** A length for the eye: `2.40` and `m`, `2400` and `mm`, `7' 10 1/2"` without a unit of its own. */
export function lengthText(
  metres: number,
  unit: LengthUnit,
): { readonly text: string; readonly unit: string } {
  if (unit === 'metres') return { text: fixed(metres, 2), unit: 'm' };
  if (unit === 'millimetres') return { text: fixed(metres * 1000, 0), unit: 'mm' };
  const eighths = Math.round((Math.abs(metres) / 0.0254) * 8);
  const feet = Math.floor(eighths / 96);
  const inches = Math.floor((eighths % 96) / 8);
  const part = PARTS[eighths % 8] ?? '';
  const sign = metres < 0 && eighths > 0 ? '−' : '';
  return { text: `${sign}${feet}' ${inches}${part === '' ? '' : ` ${part}`}"`, unit: '' };
}

const PARTS = ['', '1/8', '1/4', '3/8', '1/2', '5/8', '3/4', '7/8'] as const;

/** A decimal number without a negative nought, with a true minus sign. */
export function fixed(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}
