import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { createSession, runSteps } from '../../src/assess/session.ts';
import { changeOf } from '../../src/assess/trial/change.ts';
import { trialAsked } from '../../src/assess/trial/trialAsked.ts';
import { ink } from '../../src/draw/ink.ts';
import { setLens } from '../../src/plan/commands/setLens.ts';
import { demo } from '../editor/plans.ts';
import { frames, settled, visiting } from './driver.ts';
import { histogram, pictureOf, pixelAt, type Picture } from './picture.ts';

const GROUND = {
  target: { kind: 'ground', height: 0 },
  alone: null,
  situation: null,
  causes: 'quick',
} as const;

/** What the sample's first camera gains at "recognise" with another fixed lens, as the engine says outside the browser. */
function gainedWith(focalLength: number): string {
  const plan = demo();
  const [id = ''] = plan.cameraOrder;
  const camera = plan.cameras[id];
  if (camera === undefined) throw new Error('the sample has a camera');
  const beside = {
    ...plan,
    cameras: { ...plan.cameras, other: { ...camera, id: 'other' } },
    cameraOrder: [...plan.cameraOrder, 'other'],
  };
  const assessment = runSteps(createSession().steps(setLens(beside, 'other', { focalLength }), GROUND, 1));
  const asked = trialAsked(assessment, id, 'other');
  if (asked === null) throw new Error('the sample is flat and by day');
  return changeOf(asked).byBand[2]?.gained.value.toFixed(1) ?? '';
}

/** The part of the picture without what lies over it, the divider at a share of its width. */
async function half(page: Page, share: number): Promise<Picture> {
  const knob = page.getByRole('slider', { name: 'Divider between the two settings' });
  await knob.focus();
  await page.keyboard.press('Home');
  for (let at = 2; at < share; at += 10) await page.keyboard.press('Shift+ArrowRight');
  await frames(page);
  return pictureOf(page, page.getByRole('main', { name: 'Lens trial' }).getByRole('application'));
}

test(
  'two lenses of a camera: what is gained is what the engine says, each half is its own, and keeping one is a step',
  visiting(async (open) => {
    const page = await open({ viewport: { width: 900, height: 560 } });
    await page.getByRole('button', { name: 'Lens trial', exact: true }).click();
    const trial = page.getByRole('main', { name: 'Lens trial' });
    await trial.getByRole('button', { name: 'C1', exact: true }).click();
    await trial.getByRole('button', { name: 'Another lens' }).click();
    const told = trial.locator('dl[aria-busy="false"]');
    await told.waitFor();
    const row = trial.getByRole('row', { name: /^Focal length/ });
    const [, standing = '', tried = ''] = await row.locator('th, td').allInnerTexts();
    expect(Number(tried)).toBeGreaterThan(Number(standing));
    expect(await told.innerText()).toContain(`${gainedWith(Number(tried))} m²`);

    await page.evaluate(axe.source);
    const faults: unknown = await page.evaluate(`axe.run(document).then(({ violations }) =>
      violations.map(({ id, nodes }) => id + ' ' + nodes.map(({ html }) => html.slice(0, 120)).join(' ')))`);
    expect(faults).toEqual([]);

    const [all, none, both] = [await half(page, 98), await half(page, 2), await half(page, 52)];
    const middle = Math.round(0.52 * all.width);
    const off = (one: Picture, from: number, to: number): number => {
      let count = 0;
      for (let y = 0; y < one.height - 80; y += 3)
        for (let x = Math.round(from); x < to; x += 3)
          if (pixelAt(one, x, y) !== pixelAt(both, x, y)) count += 1;
      return count;
    };
    // Left of the divider it is the picture of A, right of it that of B; the other way round it is neither.
    expect(off(all, all.width * 0.12, middle - 6)).toBe(0);
    expect(off(none, middle + 6, all.width * 0.9)).toBe(0);
    expect(off(none, all.width * 0.12, middle - 6)).toBeGreaterThan(20);
    // The longer lens identifies on half as much ground again, so it paints more in that tone.
    const finest = ink.light.fourBands[3] ?? '';
    const inked = (one: Picture): number => histogram(one).get(finest) ?? 0;
    expect(inked(all)).toBeGreaterThan(100);
    expect(inked(none)).toBeGreaterThan(1.2 * inked(all));

    await trial.getByRole('button', { name: 'Keep B', exact: true }).click();
    await settled(page);
    await page.getByRole('button', { name: 'Undo: Keep B for C1' }).waitFor();
    expect(await row.locator('td').allInnerTexts()).toEqual([tried]);
  }),
);
