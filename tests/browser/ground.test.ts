import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import type { Target } from '../../src/coverage/target.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { planText } from '../../src/plan/write.ts';
import { assessed, demoText, GROUND, planFrom } from './demo.ts';
import { isThorough, trials } from '../house/seeded.ts';
import { changing, frames, visiting } from './driver.ts';
import { model, openPlan, select, typeField } from './gestures.ts';
import { Judge } from './judged.ts';
import { histogram, pictureOf, pixelAt } from './picture.ts';
import { AROUND, bandPainted, bands, CLEAR, lattice, ofEachTone, saidAt } from './painted.ts';
import type { Said } from './painted.ts';

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
    expect(met[0]).toBeGreaterThan(trials(6, 15));
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

const bent = ['much bent', withLens(2.1, 150)] as const;
// The sample's own lenses are hardly bent.
const lenses = isThorough ? [bent, ['straight', withLens(4, null)] as const] : [bent];

test.for(lenses)('with a %s lens', ([, plan]) =>
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
    const reached = site.byBand.map(({ value }) => value > 1e-6);
    expect(reached).toEqual([false, false, false, true]);
    const after = histogram(await pictureOf(page));
    const painted = bands.map((colour) => after.get(colour) ?? 0);
    expect(painted.map((pixels) => pixels > 100)).toEqual(reached);
    expect(painted.filter((pixels) => pixels > 0)).toHaveLength(1);
  }),
);
