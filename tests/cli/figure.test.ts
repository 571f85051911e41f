import { writeFileSync } from 'node:fs';
import { afterAll, expect, test } from 'vitest';
import { addCamera, newCamera } from '../../src/plan/commands/addCamera.ts';
import { emptyPlan } from '../../src/plan/emptyPlan.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { planText } from '../../src/plan/write.ts';
import { barrierWith } from '../model/sampleStructures.ts';
import { scratch, soffitJson } from './ran.ts';

/*
 * A wall 1.2 m high whose far face is 10 m from a camera at 3 m. Feet are hidden up to 10 · 3 / (3 − 1.2) m, a waist up to
 * 10 · (3 − 1.02) / 1.8 m, a face above the wall nowhere: similar triangles, as facts S9 of a wall's shadow on the ground.
 */
const folder = scratch();
afterAll(() => folder.clear());

const wall = barrierWith({
  id: 'wall',
  line: [
    [-60, 9.95],
    [60, 9.95],
  ],
  closed: false,
  base: 0,
  height: 1.2,
  thickness: 0.1,
  passage: 'solid',
  openings: [],
});

test('behind a low wall feet are hidden farthest, a face nowhere', () => {
  const bare: Plan = emptyPlan('figure', 'Figure');
  const site = { ...bare, structures: { wall }, structureOrder: ['wall'] };
  const eye = [0, 0, 3] as const;
  const camera = newCamera(site, { kind: 'loose', eye }, { pan: 0, tilt: 15 });
  const file = folder.file('figure.plan.json');
  // Within a strip 4 m wide and 10 to 20 m away the whole frame is at hand.
  const boundary = [
    [-2, 10.2],
    [2, 10.2],
    [2, 20.2],
    [-2, 20.2],
  ] as const;
  writeFileSync(file, planText({ ...addCamera(site, { ...camera, range: 100 }), boundary }));
  const told = soffitJson('figure', file, '--cell', '0.05') as {
    cameras: {
      whole: { value: number; bound: number };
      inPart: { value: number; bound: number };
      byPart: Record<'feet' | 'waist' | 'face', { value: number; bound: number }>;
    }[];
  };
  const [one] = told.cameras;
  if (!one) throw new Error('no camera');
  const seenBeyond = (end: number) => 4 * (20.2 - Math.max(10.2, end));
  const near = ({ value, bound }: { value: number; bound: number }, area: number) =>
    expect(Math.abs(value - area)).toBeLessThanOrEqual(bound);
  near(one.byPart.face, 40);
  near(one.byPart.waist, seenBeyond((10 * 1.98) / 1.8));
  near(one.byPart.feet, seenBeyond(30 / 1.8));
  near(one.whole, seenBeyond(30 / 1.8));
  // The strip is all seen: what is not the whole of a person is a part.
  const { value, bound } = one.inPart;
  near({ value: one.whole.value + value, bound: one.whole.bound + bound }, 40);
  // 4 m of edge across the strip: far less than the cells beside it.
  expect(one.whole.bound).toBeLessThan(0.05);
});
