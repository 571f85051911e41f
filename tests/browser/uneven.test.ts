import { expect, test } from 'vitest';
import type { Plan } from '../../src/plan/plan.ts';
import { planText } from '../../src/plan/write.ts';
import { demoText, planFrom } from './demo.ts';
import { frames, visiting } from './driver.ts';
import { model, openPlan } from './gestures.ts';
import { bandPainted, bands, saidAt } from './painted.ts';
import { pictureOf, pixelAt, type Picture } from './picture.ts';

const demo = planFrom(demoText);

/** The sample on ground that falls to the street and rises behind the house. */
const uneven: Plan = {
  ...demo,
  id: 'uneven',
  name: 'Uneven',
  ground: {
    kind: 'spots',
    spots: [-18, -6, 6, 18, 30].flatMap((x) =>
      [-14, -8, -2, 4, 8, 14, 22].map((y) => ({
        at: [x, y] as const,
        height: (y < -2 ? 0.1 * (y + 2) : 0) + (y > 8 ? 0.15 * (y - 8) : 0) + 0.01 * x,
        got: 'measured' as const,
      })),
    ),
  },
};

/** The band painted all around a spot; −1 at an edge. */
function bandAround(picture: Picture, x: number, y: number): number {
  const band = bandPainted(pixelAt(picture, x, y), false);
  for (let dx = -4; dx <= 4; dx += 2)
    for (let dy = -4; dy <= 4; dy += 2)
      if (bandPainted(pixelAt(picture, x + dx, y + dy), false) !== band) return -1;
  return band;
}

test(
  'uneven ground is painted with the bands that rays find on it, and a place on it is told by its own height',
  visiting(async (open) => {
    const page = await open();
    await openPlan(page, planText(uneven));
    await model(page).press('p');
    await frames(page);
    const picture = await pictureOf(page);
    const box = await model(page).boundingBox();
    if (box === null) throw new Error('the Model is not in view');
    const met = bands.map(() => 0);
    const wrong: string[] = [];
    for (let x = 24; x < picture.width - 24; x += 31)
      for (let y = 60; y < picture.height - 60; y += 27) {
        const band = bandAround(picture, x, y);
        // Bare places are many; what is painted counts.
        if (band < 1) continue;
        const said = await saidAt(page, box.x + x, box.y + y);
        if (said === null) continue;
        met[band - 1] = (met[band - 1] ?? 0) + 1;
        const words = said.best?.word ?? 'nothing';
        if (words !== (['detect', 'observe', 'recognise', 'identify'][band - 1] ?? ''))
          wrong.push(`${said.x} east, ${said.y} north: painted ${band}, said ${words}`);
      }
    expect(wrong).toEqual([]);
    for (const band of [2, 3, 4]) expect(met[band - 1], `band ${band}`).toBeGreaterThan(2);
  }),
);
