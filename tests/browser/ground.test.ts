import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import type { Target } from '../../src/coverage/target.ts';
import { ink } from '../../src/draw/ink.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { planText } from '../../src/plan/write.ts';
import { assessed, demoText, GROUND, planFrom } from './demo.ts';
import { changing, frames, visiting } from './driver.ts';
import { model, openPlan, select, typeField } from './gestures.ts';
import type { Spot } from './gestures.ts';
import { Judge } from './judged.ts';
import { histogram, pictureOf, pixelAt } from './picture.ts';
import type { Picture } from './picture.ts';
import { chanceFrom } from '../house/seeded.ts';

const bands = ink.light.fourBands;
const { contactShade } = ink.light;
const [COLUMNS, ROWS, OF_A_TONE] = [9, 8, 8];
/** How much of a surface above the ground covers what is beneath it. */
const FILL = 0.84;

/** The band (index + 1) whose tone a pixel has, 0 for none: shaded beside footprints, or with something shining through. */
function bandPainted(pixel: string, raised: boolean): number {
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
interface Said {
  readonly x: number;
  readonly y: number;
  /** Camera and word of the best band, lower case; null where no camera covers it. */
  readonly best: { readonly camera: string; readonly word: string; readonly density: number } | null;
}

/** Points at a spot of the window; null off the board, and where a structure or a camera lies under the pointer. */
async function saidAt(page: Page, x: number, y: number): Promise<Said | null> {
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

/** Places nearer to a change than this are left out: the width of a drawn line, and what a figure is rounded to, m. */
const CLEAR = 0.16;
const AROUND = [0, 45, 90, 135, 180, 225, 270, 315].map(
  (turn) => [CLEAR * Math.cos((turn * Math.PI) / 180), CLEAR * Math.sin((turn * Math.PI) / 180)] as const,
);

/** Spots all over the picture; a pixel has its middle at a half. They lie askew to walls and cells. */
const lattice = ({ width, height }: Picture): readonly Spot[] =>
  Array.from({ length: COLUMNS * ROWS }, (_, at) => {
    const [column, row] = [at % COLUMNS, Math.floor(at / COLUMNS)];
    return {
      x: Math.floor((width * (column + 0.31 + (row % 3) * 0.2)) / COLUMNS) + 0.5,
      y: Math.floor((height * (row + 0.27 + (column % 3) * 0.2)) / ROWS) + 0.5,
    };
  });

/** Some spots of each band's tone, so that small regions come too. */
function ofEachTone(picture: Picture, raised: boolean): readonly Spot[] {
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

/** Looks from above at a many spots: picture, spoken answer and the judge must agree at each. Returns how often each band came. */
async function compare(page: Page, plan: Plan, target: Target): Promise<readonly number[]> {
  const assessment = assessed(plan, target);
  const judge = new Judge(assessment);
  const best = (x: number, y: number): number => {
    const judged = judge.at(x, y);
    return judged === null ? -1 : Math.max(0, ...[...judged.values()].map(({ band }) => band));
  };
  const { board, boundary } = assessment.scene;
  const xs = [board.left, board.right, ...(boundary ?? []).map(([x]) => x)];
  const ys = [board.bottom, board.top, ...(boundary ?? []).map(([, y]) => y)];
  // The demo plan's board and boundary are rectangles along the axes.
  const onEdge = ({ x, y }: Said): boolean =>
    xs.some((edge) => Math.abs(edge - x) < CLEAR) || ys.some((edge) => Math.abs(edge - y) < CLEAR);
  await model(page).press('p');
  await frames(page);
  const picture = await pictureOf(page);
  const box = await model(page).boundingBox();
  if (box === null) throw new Error('the Model is not in view');
  const wrong: string[] = [];
  const met = [0, 0, 0, 0, 0];
  for (const spot of [...lattice(picture), ...ofEachTone(picture, target.height > 0)]) {
    const said = await saidAt(page, box.x + spot.x, box.y + spot.y);
    if (said === null || onEdge(said)) continue;
    const band = best(said.x, said.y);
    if (band < 0 || AROUND.some(([dx, dy]) => best(said.x + dx, said.y + dy) !== band)) continue;
    met[band] = (met[band] ?? 0) + 1;
    const place = `${said.x} east, ${said.y} north, judged ${band}`;
    const pixel = pixelAt(picture, spot.x, spot.y);
    if (bandPainted(pixel, target.height > 0) !== band) wrong.push(`${place}: painted ${pixel}`);
    const word = assessment.edition.bands[band - 1]?.name.toLowerCase() ?? null;
    if (word !== (said.best?.word ?? null)) wrong.push(`${place}: said ${said.best?.word ?? 'nothing'}`);
    if (said.best === null) continue;
    const density = judge.at(said.x, said.y)?.get(said.best.camera)?.density ?? 0;
    // The place is told to a centimetre and the figure to a whole number.
    if (Math.abs(said.best.density - density) > 0.5 + density / 100)
      wrong.push(`${place}: said ${said.best.density} px/m, judged ${density}`);
  }
  expect(wrong).toEqual([]);
  return met;
}

const demo = planFrom(demoText);

/** The demo plan with another lens in all cameras. */
const withLens = (focalLength: number, angle: number | null): Plan => ({
  ...demo,
  cameras: Object.fromEntries(
    Object.entries(demo.cameras).map(([id, camera]) => {
      const lens = { ...camera.device.lens, focalLength, shortest: focalLength, longest: focalLength };
      const stated = angle === null ? null : { atShortest: angle, atLongest: angle };
      return [id, { ...camera, device: { ...camera.device, lens: { ...lens, statedHfov: stated } } }];
    }),
  ),
});

test(
  'the ground has the band that rays and a plain projection give it, and the app says so',
  visiting(async (open) => {
    const page = await open();
    const met = await compare(page, demo, GROUND);
    expect(met[0]).toBeGreaterThan(15);
    for (const band of [2, 3, 4]) expect(met[band], `band ${band}`).toBeGreaterThan(2);
  }),
);

test(
  'at face height too, with its limits from above',
  visiting(async (open) => {
    const page = await open();
    await changing(page, () => page.getByText('Face 1.6 m').click());
    const met = await compare(page, demo, { kind: 'face', height: 1.6 });
    for (const band of [2, 3, 4]) expect(met[band], `band ${band}`).toBeGreaterThan(2);
  }),
);

test.for([
  ['straight', withLens(4, null)],
  ['much bent', withLens(2.1, 150)],
] as const)('with a %s lens', ([, plan]) =>
  visiting(async (open) => {
    const page = await open();
    await openPlan(page, planText(plan));
    const met = await compare(page, plan, GROUND);
    expect(met.filter((count) => count > 2).length).toBeGreaterThan(2);
  })(),
);

test(
  'bands that no camera reaches have no tone in the picture',
  visiting(async (open) => {
    const page = await open();
    const before = histogram(await pictureOf(page));
    for (const band of [2, 3, 4])
      expect(before.get(bands[band - 1] ?? ''), `band ${band}`).toBeGreaterThan(100);
    // C1 alone sees to identify only nearby: with a range of 4.2 m nothing coarser is left.
    for (const camera of ['C2', 'C3']) {
      await select(page, camera);
      await changing(page, () => page.getByRole('button', { name: 'Leave out' }).click());
    }
    await select(page, 'C1');
    await typeField(page, 'Counts as far as', '4.2');
    const { site } = assessed({
      ...demo,
      cameras: Object.fromEntries(
        Object.entries(demo.cameras).map(([id, camera]) => [
          id,
          { ...camera, range: 4.2, hidden: id !== 'C1' },
        ]),
      ),
    });
    const reached = site.byBand.map(({ value }) => value > 0);
    expect(reached).toEqual([false, false, false, true]);
    const after = histogram(await pictureOf(page));
    const painted = bands.map((colour) => after.get(colour) ?? 0);
    expect(painted.map((pixels) => pixels > 100)).toEqual(reached);
    expect(painted.filter((pixels) => pixels > 0)).toHaveLength(1);
  }),
);
