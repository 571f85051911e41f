import { expect, test } from 'vitest';
import { settled, visiting } from './driver.ts';
import { A_PIXEL, F_PIXEL, playByKeys, savedPlan, SCRIPT, trace, type Counts } from './tenMinutes.ts';
import { expectTheHouse, onPicture } from './theHouse.ts';

test(
  'the ten-minute house once more, by keys alone',
  visiting(async (open) => {
    const page = await open({ viewport: { width: 1280, height: 720 } });
    const counts: Counts = { clicks: 0, keys: 0 };
    await trace(page, counts, 'keys');
    const onIt = { A: onPicture(A_PIXEL), F: onPicture(F_PIXEL) };
    await playByKeys(page, 'click A click F 12→', counts, onIt);
    const [first, ...rest] = SCRIPT;
    // Nothing is drawn yet that A could be called by; the origin is where the picture's first point was put.
    await playByKeys(page, first, counts, { A: [0, 0] });
    for (const row of rest) await playByKeys(page, row, counts);
    process.stdout.write(`ten-minute house by keys alone: ${counts.keys} keys\n`);
    await settled(page);
    expectTheHouse(await savedPlan(page));
    expect(counts.clicks).toBe(0);
  }),
);
