import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { createPicturer } from '../../src/assess/picture/pictureOf.ts';
import { createSession } from '../../src/assess/session.ts';
import type { Vec2 } from '../../src/base/vector.ts';
import { rgbFromHex } from '../../src/draw/colour.ts';
import { ink } from '../../src/draw/ink.ts';
import { TINT } from '../../src/panels/picture/painter.ts';
import { chanceFrom, trials } from '../house/seeded.ts';
import { plainImage } from '../oracle/plainCamera.ts';
import { assessed, demoText, planFrom } from './demo.ts';
import { changing, frames, visiting } from './driver.ts';
import { savedText } from './gestures.ts';
import { fromPng, pixelAt, type Picture } from './picture.ts';

const stage = (page: Page) => page.getByRole('application', { name: /^Picture of/ });

/** Shows the camera's view and waits until it is painted. */
async function look(page: Page) {
  await page.getByText('Camera’s view', { exact: true }).click();
  await page.locator('[data-picture] canvas[data-painted]').waitFor();
  await frames(page);
  const box = await stage(page).boundingBox();
  if (box === null) throw new Error('no picture is in view');
  return box;
}

/** The painted picture without what is drawn over it. */
const painted = async (page: Page): Promise<Picture> =>
  fromPng(
    await stage(page).screenshot({
      style: '[data-picture] > :not(canvas) { visibility: hidden !important; }',
    }),
  );

/** The tone of the ground, bare and in each band. */
const TONES = [ink.light.ground, ...ink.light.fourBands].map((hex, k) => {
  const ground = rgbFromHex(ink.light.ground);
  const full = rgbFromHex(hex);
  return ground.map((part, i) => 255 * (k === 0 ? part : part * (1 - TINT) + (full[i] ?? 0) * TINT));
});

/** Which tone a pixel is nearest to, and how far off, allowing for a shade beside footprints. */
function toneOf(pixel: string): { readonly band: number; readonly off: number } {
  const parts = [1, 3, 5].map((at) => Number.parseInt(pixel.slice(at, at + 2), 16));
  const offs = TONES.map((tone) => {
    const light = Math.min(
      1,
      parts.reduce((sum, part) => sum + part, 0) / tone.reduce((sum, part) => sum + part, 0),
    );
    return Math.max(1 - light, 0) > 0.25
      ? Infinity
      : Math.max(...parts.map((part, i) => Math.abs(part - light * (tone[i] ?? 0))));
  });
  const off = Math.min(...offs);
  return { band: offs.indexOf(off), off };
}

test(
  'the painted picture has the band of the judge at each pixel, and follows the hand exactly',
  visiting(async (open) => {
    const page = await open();
    const box = await look(page);
    const plan = planFrom(demoText);
    const assessment = assessed(plan);
    const [id = ''] = plan.cameraOrder;
    const camera = assessment.scene.cameras.find((one) => one.id === id);
    if (camera === undefined) throw new Error('the plan has a camera');
    const [picturer, session] = [createPicturer(), createSession()];
    const scale = camera.frame.width / box.width;
    /** Band of the ground at a place of the window; null on a solid, in the sky and where something hides. */
    const judged = ([x, y]: Vec2): number | null => {
      const spot = picturer.spot(assessment, id, [x * scale, y * scale]);
      if (spot === null || spot.solid !== null) return null;
      const [answer] = session.probe(assessment, spot.point, id);
      return answer && (answer.state === 'covered' || answer.state === 'too coarse') ? answer.band : null;
    };
    const chance = chanceFrom(7750);
    const picture = await painted(page);
    const told = new Map<number, number>();
    const wrong: string[] = [];
    for (let shot = 0; shot < trials(140, 600); shot += 1) {
      const at: Vec2 = [
        chance.whole(4, Math.floor(box.width) - 5) + 0.5,
        chance.whole(4, Math.floor(box.height) - 5) + 0.5,
      ];
      const band = judged(at);
      // Where nothing changes within the width of a line.
      const around = [
        [4, 0],
        [-4, 0],
        [0, 4],
        [0, -4],
      ].map(([dx = 0, dy = 0]) => judged([at[0] + dx, at[1] + dy]));
      if (band === null || around.some((one) => one !== band)) continue;
      told.set(band, (told.get(band) ?? 0) + 1);
      const tone = toneOf(pixelAt(picture, ...at));
      if (tone.band !== band || tone.off > 9)
        wrong.push(`${at.join(', ')}: band ${band}, ${JSON.stringify(tone)}`);
    }
    expect(wrong).toEqual([]);
    expect([...told.values()].reduce((sum, times) => sum + times, 0)).toBeGreaterThan(36);
    expect([...told].filter(([, times]) => times > 5).length).toBeGreaterThan(1);

    // The seized place stays under the pointer, in one step of history; the picture is painted in the frame of the answer.
    const [from, to]: [Vec2, Vec2] = [
      [Math.floor(box.width * 0.4), Math.floor(box.height * 0.7)],
      [Math.floor(box.width * 0.55), Math.floor(box.height * 0.6)],
    ];
    const seized = picturer.spot(assessment, id, [from[0] * scale, from[1] * scale]);
    if (seized === null) throw new Error('nothing was seized');
    await changing(page, async () => {
      await page.mouse.move(box.x + from[0], box.y + from[1]);
      await page.mouse.down();
      for (let step = 1; step <= 5; step += 1) {
        const t = step / 5;
        await page.mouse.move(
          box.x + from[0] + (to[0] - from[0]) * t,
          box.y + from[1] + (to[1] - from[1]) * t,
        );
        await frames(page);
        const [shown, held] = await page.evaluate(() => [
          document.querySelector('[data-revision]')?.getAttribute('data-revision'),
          document.querySelector('[data-picture] canvas')?.getAttribute('data-painted'),
        ]);
        expect(held).toBe(shown);
      }
      await page.mouse.up();
    });
    const aimed = planFrom(await savedText(page)).cameras[id];
    const image = aimed && plainImage({ ...camera, pan: aimed.pan, tilt: aimed.tilt }, seized.point);
    // Angles are kept to a hundredth of a degree: half a pixel of this window.
    expect(Math.hypot((image?.[0] ?? 0) / scale - to[0], (image?.[1] ?? 0) / scale - to[1])).toBeLessThan(
      0.6,
    );
    await changing(page, () => page.keyboard.press('Control+z'));
    expect(planFrom(await savedText(page)).cameras[id]?.pan).toBe(plan.cameras[id]?.pan);
  }),
);
