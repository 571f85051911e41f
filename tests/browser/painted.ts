import type { Page } from 'playwright-core';
import { ink } from '../../src/draw/ink.ts';
import { chanceFrom, trials } from '../house/seeded.ts';
import type { Spot } from './gestures.ts';
import { pixelAt } from './picture.ts';
import type { Picture } from './picture.ts';

/** The tones of the bands, coarsest first. */
export const bands = ink.light.fourBands;
const { contactShade } = ink.light;
const [COLUMNS, ROWS] = [trials(6, 9), trials(6, 8)];
/** How much of a surface above the ground covers what is beneath it. */
const FILL = 0.84;

/** The band (index + 1) whose tone a pixel has, 0 for none: shaded beside footprints, or with something shining through. */
export function bandPainted(pixel: string, raised: boolean): number {
  const parts = partsOf(pixel);
  return (
    1 +
    bands.findIndex((colour) => {
      const tone = partsOf(colour);
      if (raised)
        return parts.every((part, at) => {
          const least = FILL * (tone[at] ?? 0);
          return part >= least - 1 && part <= least + (1 - FILL) * 255 + 1;
        });
      const light = parts.reduce((sum, part) => sum + part, 0) / tone.reduce((sum, part) => sum + part, 0);
      return (
        light > 1 - contactShade && parts.every((part, at) => Math.abs(part - light * (tone[at] ?? 0)) < 1.5)
      );
    })
  );
}

const partsOf = (hex: string): readonly number[] =>
  [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));

/** What the app says of the spot under the pointer, and of what it points at there. */
export interface Said {
  readonly x: number;
  readonly y: number;
  /** Camera and word of the best band, lower case; null where no camera covers it. */
  readonly best: { readonly camera: string; readonly word: string; readonly density: number } | null;
}

/** Points at a spot of the window; null off the board, and where a structure or a camera lies under the pointer. */
export async function saidAt(page: Page, x: number, y: number): Promise<Said | null> {
  await page.mouse.move(x, y);
  const { text, things } = await page.evaluate(
    () =>
      new Promise<{ text: string; things: number }>((done) =>
        requestAnimationFrame(() =>
          requestAnimationFrame(() =>
            done({
              text: document.querySelector('[aria-label="What is here"]')?.textContent ?? '',
              things: document.querySelectorAll('[role="treeitem"][data-hovered="true"]').length,
            }),
          ),
        ),
      ),
  );
  const place = /(-?[\d.]+) east, (-?[\d.]+) north/.exec(text.replaceAll('−', '-'));
  if (place === null || things > 0) return null;
  const best = /^(\w+) (\w+), (\d+) px\/m/.exec(text);
  return {
    x: Number(place[1]),
    y: Number(place[2]),
    best: best === null ? null : { camera: best[1] ?? '', word: best[2] ?? '', density: Number(best[3]) },
  };
}

/** Spots all over the picture; a pixel has its middle at a half. They lie askew to walls and cells. */
export const lattice = ({ width, height }: Picture): readonly Spot[] =>
  Array.from({ length: COLUMNS * ROWS }, (_, at) => {
    const [column, row] = [at % COLUMNS, Math.floor(at / COLUMNS)];
    return {
      x: Math.floor((width * (column + 0.31 + (row % 3) * 0.2)) / COLUMNS) + 0.5,
      y: Math.floor((height * (row + 0.27 + (column % 3) * 0.2)) / ROWS) + 0.5,
    };
  });

const OF_A_TONE = trials(5, 8);

/** Places nearer to a change than this are left out: the width of a drawn line, and what a figure is rounded to, m. */
export const CLEAR = 0.16;
export const AROUND = [0, 45, 90, 135, 180, 225, 270, 315].map(
  (turn) => [CLEAR * Math.cos((turn * Math.PI) / 180), CLEAR * Math.sin((turn * Math.PI) / 180)] as const,
);

/** Some spots of each band's tone, so that small regions come too. */
export function ofEachTone(picture: Picture, raised: boolean): readonly Spot[] {
  const chance = chanceFrom(62676);
  const found = bands.map((): Spot[] => []);
  for (let shot = 0; shot < 20_000; shot += 1) {
    const spot = {
      x: chance.whole(0, picture.width - 1) + 0.5,
      y: chance.whole(0, picture.height - 1) + 0.5,
    };
    const spots = found[bandPainted(pixelAt(picture, spot.x, spot.y), raised) - 1];
    if (spots && spots.length < OF_A_TONE) spots.push(spot);
  }
  return found.flat();
}
