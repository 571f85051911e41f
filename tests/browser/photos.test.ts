import { readFile } from 'node:fs/promises';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import type { Picture, WallPicture } from '../../src/plan/plan.ts';
import { planFrom } from './demo.ts';
import { frames, visiting } from './driver.ts';
import { model, row, select } from './gestures.ts';
import { difference, pictureOf } from './picture.ts';

/** What stands in the photo's own notes, in words that nothing else holds. */
const SECRET = 'taken at 12.3456 N 65.4321 E';

/** A JPEG of 400 by 300 with notes in it, as telephones write them (an APP1 segment after the start). */
async function jpeg(page: Page): Promise<Buffer> {
  const plain = await page.evaluate(async () => {
    const canvas = new OffscreenCanvas(400, 300);
    const context = canvas.getContext('2d');
    if (!context) throw new Error('no canvas');
    context.fillStyle = '#c02080';
    context.fillRect(0, 0, 400, 300);
    context.fillStyle = '#20c040';
    context.fillRect(100, 100, 200, 100);
    const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.9 });
    return [...new Uint8Array(await blob.arrayBuffer())];
  });
  const notes = Buffer.from(`Exif\0\0${SECRET}`, 'latin1');
  const head = Buffer.from([0xff, 0xe1, (notes.length + 2) >> 8, (notes.length + 2) & 255]);
  const bytes = Buffer.from(plain);
  return Buffer.concat([bytes.subarray(0, 2), head, notes, bytes.subarray(2)]);
}

/** The plan as it is saved with its pictures, and everything else in the file. */
async function saved(page: Page): Promise<{ readonly pictures: readonly Picture[]; readonly bytes: string }> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save to a file' }).click(),
  ]);
  const files = unzipSync(await readFile(await download.path()));
  const text = Buffer.from(files['plan.json'] ?? []).toString('utf8');
  const bytes = Object.values(files).map((file) => Buffer.from(file).toString('latin1'));
  return { pictures: Object.values(planFrom(text).pictures), bytes: bytes.join('') };
}

test(
  'a photo dropped on the Model is pinned there without its notes, and its sign selects it',
  visiting(async (open) => {
    const page = await open();
    const photo = await jpeg(page);
    expect(photo.toString('latin1')).toContain(SECRET);
    const box = await model(page).boundingBox();
    if (!box) throw new Error('the Model is not in view');
    await page.evaluate(
      ({ bytes, x, y }) => {
        const dataTransfer = new DataTransfer();
        dataTransfer.items.add(new File([new Uint8Array(bytes)], 'Kerb.jpg', { type: 'image/jpeg' }));
        window.dispatchEvent(
          new DragEvent('drop', { dataTransfer, clientX: x, clientY: y, bubbles: true, cancelable: true }),
        );
      },
      { bytes: [...photo], x: box.x + box.width * 0.55, y: box.y + box.height * 0.8 },
    );
    await row(page, 'Kerb').waitFor();
    await page.getByRole('img', { name: 'Photo Kerb' }).waitFor();
    const looks = page.getByRole('textbox', { name: 'Looks towards' });
    await looks.fill('300');
    await looks.press('Enter');
    const { pictures, bytes } = await saved(page);
    expect(bytes).not.toContain(SECRET);
    expect(bytes).not.toContain('Exif');
    const [picture] = pictures;
    expect(picture?.file).toMatchObject({ type: 'image/jpeg', width: 400, height: 300 });
    expect(picture?.use).toMatchObject({ kind: 'photo', heading: 300 });
    // Where it was dropped, at the height of the eye; its sign is on the way from there to the viewer.
    await select(page, 'Van');
    await expect.poll(() => row(page, 'Kerb').getAttribute('aria-selected')).toBe('false');
    const sign = await model(page).getByText('Kerb', { exact: true }).boundingBox();
    if (!sign) throw new Error('the photo has no sign');
    await page.mouse.click(sign.x - 14, sign.y + sign.height / 2);
    await expect.poll(() => row(page, 'Kerb').getAttribute('aria-selected')).toBe('true');
  }),
);

test(
  'a photo is squared onto a wall by four points that arrows and the pointer move, and drawn there',
  visiting(async (open) => {
    const page = await open();
    await select(page, 'House');
    const bare = await pictureOf(page);
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      page.getByRole('button', { name: 'Square a photo onto this wall' }).click(),
    ]);
    await chooser.setFiles({ name: 'Front.jpg', mimeType: 'image/jpeg', buffer: await jpeg(page) });
    const point = (name: string) =>
      page.getByRole('button', { name: new RegExp(`^${name} of the rectangle`) });
    await point('Lower left').waitFor();
    await page.mouse.move(0, 0);
    await frames(page);
    const drawn = await pictureOf(page);
    expect(difference(bare, drawn)).toBeGreaterThan(400);

    const size = await point('Lower left').boundingBox();
    expect(Math.min(size?.width ?? 0, size?.height ?? 0)).toBeGreaterThanOrEqual(24);
    await point('Lower left').press('ArrowRight');
    await point('Lower left').press('Shift+ArrowUp');
    const wallOf = async (): Promise<WallPicture> => {
      const [picture] = (await saved(page)).pictures;
      if (picture?.use.kind !== 'wall') throw new Error('it is on no wall');
      return picture.use;
    };
    const use = await wallOf();
    // It began with a fifth of the photo free at each side.
    expect(use.corners).toEqual([
      [81, 230],
      [320, 240],
      [320, 60],
      [80, 60],
    ]);
    expect(use.structure).toBe('house');

    // Dragged across the opposite side it is refused in words; the wall keeps the photo as it was.
    const [from, to] = [await point('Lower left').boundingBox(), await point('Lower right').boundingBox()];
    if (!from || !to) throw new Error('the points are not in view');
    await page.mouse.move(from.x + from.width / 2, from.y + from.height / 2);
    await page.mouse.down();
    await page.mouse.move(to.x + to.width, to.y + to.height / 2 - 20, { steps: 4 });
    await page.mouse.up();
    await page.getByRole('status').filter({ hasText: 'The wall keeps the photo as it was.' }).waitFor();
    expect((await wallOf()).corners).toEqual(use.corners);
    await point('Lower left').press('Escape');
    await expect.poll(() => page.getByText('The wall keeps the photo as it was.').count()).toBe(0);

    const strength = page.getByRole('textbox', { name: 'Strength, %' });
    await strength.fill('0');
    await strength.press('Enter');
    await page.mouse.move(0, 0);
    await frames(page);
    const faint = await pictureOf(page);
    expect(difference(drawn, faint)).toBeGreaterThan(400);
  }),
);
