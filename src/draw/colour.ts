/** Red, green, blue in [0, 1], as encoded for the screen (sRGB). */
export type Rgb = readonly [r: number, g: number, b: number];

/**
 * The parts of a #RRGGBB colour.
 * @throws RangeError on anything else
 */
export function rgbFromHex(hex: string): Rgb {
  if (!/^#[0-9a-f]{6}$/i.test(hex)) throw new RangeError(`a colour is #RRGGBB, got ${hex}`);
  const n = Number.parseInt(hex.slice(1), 16);
  return [((n >> 16) & 255) / 255, ((n >> 8) & 255) / 255, (n & 255) / 255];
}

/** The colour that is a share of the way from one to another, as encoded for the screen. */
export function between(from: string, to: string, share: number): string {
  const [a, b] = [rgbFromHex(from), rgbFromHex(to)];
  return hexFromRgb([
    a[0] + (b[0] - a[0]) * share,
    a[1] + (b[1] - a[1]) * share,
    a[2] + (b[2] - a[2]) * share,
  ]);
}

/** The colour as one number, red highest. */
export const numberFromHex = (hex: string): number => {
  const [r, g, b] = rgbFromHex(hex);
  return Math.round(r * 255) * 65536 + Math.round(g * 255) * 256 + Math.round(b * 255);
};

const byte = (share: number): string =>
  Math.round(Math.min(1, Math.max(0, share)) * 255)
    .toString(16)
    .padStart(2, '0')
    .toUpperCase();

/** #RRGGBB; parts outside [0, 1] end at the nearest that the screen has. */
const hexFromRgb = ([r, g, b]: Rgb): string => `#${byte(r)}${byte(g)}${byte(b)}`;

const linear = (c: number): number => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
const encoded = (c: number): number => (c <= 0.0031308 ? c * 12.92 : 1.055 * c ** (1 / 2.4) - 0.055);

/** Contrast of two colours, 1 to 21. Source: WCAG 2.2, relative luminance. */
export function contrast(a: string, b: string): number {
  const light = (hex: string): number => {
    const [r, g, bl] = rgbFromHex(hex);
    return 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(bl);
  };
  const [la, lb] = [light(a), light(b)];
  return (Math.max(la, lb) + 0.05) / (Math.min(la, lb) + 0.05);
}

/** Lightness and two hue axes, CIE 1976, white point D65. */
export type Lab = readonly [lightness: number, a: number, b: number];

const WHITE = [0.950456, 1, 1.089058] as const;
const bent = (t: number): number => (t > (6 / 29) ** 3 ? Math.cbrt(t) : t / (3 * (6 / 29) ** 2) + 4 / 29);
const straight = (t: number): number => (t > 6 / 29 ? t ** 3 : 3 * (6 / 29) ** 2 * (t - 4 / 29));

/** Source: IEC 61966-2-1 for the matrix, CIE 15 for L*a*b*; both from memory, held against culori in the tests. */
export function labFromHex(hex: string): Lab {
  const [r, g, b] = rgbFromHex(hex).map(linear) as [number, number, number];
  const x = bent((0.4123908 * r + 0.35758434 * g + 0.18048079 * b) / WHITE[0]);
  const y = bent((0.21263901 * r + 0.71516868 * g + 0.07219232 * b) / WHITE[1]);
  const z = bent((0.01933082 * r + 0.11919478 * g + 0.95053215 * b) / WHITE[2]);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

export function hexFromLab([lightness, a, b]: Lab): string {
  const fy = (lightness + 16) / 116;
  const x = straight(fy + a / 500) * WHITE[0];
  const y = straight(fy) * WHITE[1];
  const z = straight(fy - b / 200) * WHITE[2];
  return hexFromRgb([
    encoded(3.24096994 * x - 1.53738318 * y - 0.49861076 * z),
    encoded(-0.96924364 * x + 1.8759675 * y + 0.04155506 * z),
    encoded(0.05563008 * x - 0.20397696 * y + 1.05697151 * z),
  ]);
}
