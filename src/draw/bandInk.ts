import { contrast, hexFromLab, labFromHex, type Lab } from './colour.ts';
import { ink, type Theme } from './ink.ts';

/**
 * The colours of an edition's bands, coarsest first: the tuned four or seven, else equal steps of lightness through the
 * same hues.
 * @param levels how many bands, 1 or more
 */
export function bandColours(levels: number, theme: Theme): readonly string[] {
  const { fourBands, sevenBands } = ink[theme];
  if (levels === 4) return fourBands;
  if (levels === 7) return sevenBands;
  const ramp = (levels < 4 ? fourBands : sevenBands).map(labFromHex);
  return Array.from({ length: levels }, (_, i) =>
    hexFromLab(alongRamp(ramp, levels === 1 ? 1 : i / (levels - 1))),
  );
}

/** The ramp's colour whose lightness is that share of the way from its first to its last. */
function alongRamp(ramp: readonly Lab[], share: number): Lab {
  const first = ramp[0];
  const last = ramp.at(-1);
  if (!first || !last) throw new RangeError('a ramp needs colours');
  const wanted = first[0] + (last[0] - first[0]) * share;
  const rising = last[0] > first[0];
  for (let i = 1; i < ramp.length; i += 1) {
    const [a, b] = [ramp[i - 1], ramp[i]];
    if (!a || !b) continue;
    if (i < ramp.length - 1 && (rising ? wanted > b[0] : wanted < b[0])) continue;
    const t = (wanted - a[0]) / (b[0] - a[0]);
    return [wanted, a[1] + (b[1] - a[1]) * t, a[2] + (b[2] - a[2]) * t];
  }
  return last;
}

/** The ink that reads on a band: the sheet's ink or paper from 4.5 up, else white if that reads better. */
export function inkOnBand(band: string, theme: Theme): string {
  const { ink: line, paper, white } = ink[theme];
  const best = contrast(line, band) >= contrast(paper, band) ? line : paper;
  return contrast(best, band) < 4.5 && contrast(white, band) > contrast(best, band) ? white : best;
}

/**
 * The line between what lies below a threshold and the band that begins there: ink where it stands out from either side
 * by 3, paper where both sides are too near to ink.
 */
export function contourInk(below: string, band: string, theme: Theme): string {
  const { ink: line, paper } = ink[theme];
  return Math.max(contrast(line, below), contrast(line, band)) >= 3 ? line : paper;
}
