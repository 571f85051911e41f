import { expect, test } from 'vitest';
import { frames, visiting } from './driver.ts';

const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };

/** What lies on the clipboard: the picture's size in pixels, or its text. */
const copied = {
  picture: async (): Promise<string> => {
    const [item] = await navigator.clipboard.read();
    const bitmap = await createImageBitmap((await item?.getType('image/png')) ?? new Blob());
    return `${bitmap.width} × ${bitmap.height}`;
  },
  text: (): Promise<string> => navigator.clipboard.readText(),
};

test(
  'on a phone the sum is done and copied in a few taps, and a person’s pixels are drawn',
  visiting(async (open) => {
    const page = await open(phone, (context) =>
      context.grantPermissions(['clipboard-read', 'clipboard-write']),
    );
    const shown = page.getByRole('region', { name: 'Quick sum' });
    await page.getByRole('button', { name: 'Quick sum', exact: true }).tap();
    // Four taps: a 6 mm lens, 30 cm higher.
    await shown.getByRole('group', { name: 'Common lenses, mm' }).getByText('6', { exact: true }).tap();
    for (let taps = 0; taps < 3; taps += 1)
      await shown.getByRole('button', { name: 'More: Lens height' }).tap();
    const answers = shown.getByRole('definition');
    // By hand: 6 · 2688 / 5.37 over √(6² + 1.4²) m is 487 px/m, 78 px a face; width 6.161 · 5.37 / 6 = 5.51 m.
    expect((await answers.allInnerTexts()).slice(0, 4)).toEqual(['487 px/m', '78 px', 'Identify', '5.51 m']);
    await shown.getByRole('button', { name: 'Copy picture' }).tap();
    await shown.getByText('Copied as a picture.').waitFor();
    // 760 px wide, twice as fine.
    expect(await page.evaluate(copied.picture)).toBe('1520 × 1120');
    await shown.getByRole('button', { name: 'Copy text' }).tap();
    await shown.getByText('Copied as text.').waitFor();
    const text = await page.evaluate(copied.text);
    expect(text).toContain('Lens 3.00 m up, target face, 1.60 m, 6.00 m away.');
    expect(text).toContain('IEC 62676-4:2014');

    // Whoever stands there is dragged by keys, and the distance follows.
    const person = shown.getByRole('slider', { name: 'Standing person' });
    await person.focus();
    await page.keyboard.press('Shift+ArrowRight');
    expect(await shown.getByRole('textbox', { name: 'Distance' }).inputValue()).toBe('7.00');
    const { wide, fits } = await page.evaluate(() => ({
      wide: document.documentElement.scrollWidth,
      fits: document.documentElement.clientWidth,
    }));
    expect(wide).toBeLessThanOrEqual(fits);

    // The person at true pixels, of a camera of the plan.
    await shown.getByRole('button', { name: 'Close the quick sum' }).tap();
    await page.getByRole('button', { name: 'Site', exact: true }).tap();
    await page.getByRole('treeitem', { name: /^C1/ }).tap();
    await page.getByRole('button', { name: 'Section', exact: true }).tap();
    await page.getByText('Person at true pixels').tap();
    const card = page.getByRole('article', { name: /^C1, 2.8 mm/ });
    await card.and(page.locator('[data-behind="false"]')).waitFor();
    const face = card.getByRole('img', { name: /^Face by day: 54 px across the face/ });
    await frames(page);
    // A face has more than one tone.
    const tones = await face.evaluate((canvas) => {
      if (!(canvas instanceof HTMLCanvasElement)) return 0;
      const bytes = canvas.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height).data ?? [];
      return new Set(Array.from(bytes).filter((_, at) => at % 4 === 0)).size;
    });
    expect(tones).toBeGreaterThan(50);
  }),
);
