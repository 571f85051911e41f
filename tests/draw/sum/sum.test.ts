import { describe, expect, test } from 'vitest';
import { createSession, runSteps } from '../../../src/assess/session.ts';
import { overlap } from '../../../src/draw/labelPlaces.ts';
import { plateOf, type Words } from '../../../src/draw/section/marks.ts';
import { createShowSection } from '../../../src/draw/section/shownSection.ts';
import { solved } from '../../../src/draw/sum/solved.ts';
import { drawSum, sectionOfSum, sumNamed, sumSheet, sumView } from '../../../src/draw/sum/sumSheet.ts';
import { sumGist, sumNotes, sumRows, sumText } from '../../../src/draw/sum/sumWords.ts';
import { quickSum, reachOf, type SumAsked } from '../../../src/optics/quickSum.ts';
import { setSettings } from '../../../src/plan/commands/setSettings.ts';
import { emptyPlan } from '../../../src/plan/emptyPlan.ts';
import { chanceFrom, trials } from '../../house/seeded.ts';
import { demo } from '../../editor/plans.ts';

const named = sumNamed(demo());

const asked = (given: Partial<SumAsked> = {}): SumAsked => ({
  height: 3,
  targetHeight: 1.6,
  distance: 6,
  sensor: { width: 4.8, height: 2.7 },
  frame: { width: 2560, height: 1440 },
  lens: { focalLength: 4, hfov: null },
  tilt: null,
  roll: 0,
  ...given,
});

const valueOf = (given: SumAsked, name: string): string | undefined => {
  const sum = quickSum(given);
  return sumRows(sum, sectionOfSum(sum, named), named).find((row) => row.name === name)?.value;
};

describe('the section with no house, by the judges of every other section', () => {
  test('has near and far ends, pixels and angle of the sum, for any camera', () => {
    const chance = chanceFrom(26);
    let ended = 0;
    for (let trial = 0; trial < trials(6, 300); trial += 1) {
      const sum = quickSum(
        asked({
          height: chance.between(1.8, 8),
          distance: chance.between(1, 30),
          targetHeight: chance.pick([0, 0.5]),
          lens: chance.pick([
            { focalLength: chance.between(2, 12), hfov: null },
            { focalLength: 2.8, hfov: chance.between(82, 100) },
          ]),
          tilt: chance.pick([null, chance.between(-5, 60)]),
        }),
      );
      const [line] = sectionOfSum(sum, named).lines;
      const stretches = line?.stretches ?? [];
      const told = (stretches.at(-1)?.to ?? 0) - 2;
      const first = stretches.find(({ state, to }) => state === 'covered' && to > 0);
      const near = first === undefined ? sum.stretch?.from : Math.max(0, first.from);
      expect(near).toBeCloseTo(sum.stretch?.from ?? Number.NaN, 5);
      // Every band ends where the sum says, as far as that is told.
      for (const { density } of named.edition.bands) {
        const reach = reachOf(sum, density);
        if (reach === null || reach > told || reach === sum.stretch?.to) continue;
        const off = Math.min(...stretches.map(({ to }) => Math.abs(to - reach)));
        expect(off).toBeLessThan(1e-5);
        ended += 1;
      }
    }
    expect(ended).toBeGreaterThan(trials(6, 300));
  });

  test('begun from a camera of a plan has the pixels of the person in its Section', () => {
    const plan = demo();
    const question = {
      target: { kind: 'ground', height: 0 },
      alone: null,
      situation: null,
      causes: 'quick',
    } as const;
    const assessment = runSteps(createSession().steps(plan, question, 1));
    for (const id of plan.cameraOrder) {
      const section = createShowSection()(assessment, plan, id, 5);
      if (section === null) throw new Error(`no section of ${id}`);
      const { camera, mountingHeight } = section;
      const { sensor, frame, focalLength, k, tilt, roll } = camera;
      const lens = { focalLength, hfov: null, law: k };
      const sum = quickSum(asked({ height: mountingHeight, distance: 5, sensor, frame, lens, tilt, roll }));
      expect(sum.density).toBeCloseTo(section.person.density ?? Number.NaN, 6);
      expect(sum.above).toBeCloseTo(section.person.above, 9);
    }
  });
});

describe('words', () => {
  // By hand: 2.8 · 2560 / 4.8 = 1493.33 px; slant √(6² + 1.4²) = 6.1612 m; 242.4 px/m, 38.8 px, 10.56 m, 13.1°.
  const wide = asked({ lens: { focalLength: 2.8, hfov: null } });

  test('say what a pocket calculator does', () => {
    expect(valueOf(wide, 'Pixels')).toBe('242 px/m');
    expect(valueOf(wide, 'On a face, 16 cm')).toBe('39 px');
    expect(valueOf(wide, 'Width of view')).toBe('10.56 m');
    expect(valueOf(wide, 'Seen from above')).toBe('13.1°');
    expect(valueOf(wide, 'Tilt')).toBe('13.1° down');
    expect(valueOf(wide, 'Enough for')).toBe('Recognise');
    expect(sumGist(quickSum(wide), named)).toBe('242 px/m, 39 px a face, 10.56 m wide, 13° above');
  });

  test('let a face seen from too steep count for less, and say so', () => {
    const steep = quickSum(asked({ distance: 2, height: 4 }));
    const row = sumRows(steep, sectionOfSum(steep, named), named).find(({ name }) => name === 'Enough for');
    expect(row).toEqual({ name: 'Enough for', value: 'Observe', note: 'no more, seen from too steep' });
  });

  test('name the edition and promise nothing wherever a sum goes out', () => {
    const edition = setSettings(emptyPlan('p', 'P'), { edition: 'iec-62676-4-2025' });
    const other = sumNamed(edition);
    const sum = quickSum(wide);
    const section = sectionOfSum(sum, other);
    const sheet = sumSheet(sum, section, other).marks.flatMap((mark) =>
      mark.kind === 'words' ? [mark.text] : [],
    );
    for (const text of [sumText(sum, section, other), sheet.join('\n')]) {
      expect(text).toContain('IEC 62676-4:2025');
      expect(text).toContain('Characterise to');
      expect(text).toContain('No promise');
      expect(text).not.toContain('will ');
    }
  });

  test('say what contradicts, what is beside the picture, and what a lens is taken for', () => {
    const notes = (given: Partial<SumAsked>) => sumNotes(quickSum(asked(given))).join(' ');
    expect(notes({ lens: { focalLength: 4, hfov: 60 } })).toContain('that angle would go with 4.16 mm');
    expect(notes({ tilt: 80 })).toContain('beside the picture');
    expect(notes({})).toContain('straight');
    expect(notes({ lens: { focalLength: null, hfov: 180 } })).toContain('spreads angles evenly');
    expect(notes({ lens: { focalLength: 2.8, hfov: 90 } })).toBe('');
  });
});

test('distance and lens are found from pixels, and there is a sentence where there are none', () => {
  const distance = solved(asked(), 'distance', 250);
  // By hand: slant 4 · 2560 / 4.8 / 250 = 8.5333 m, 1.4 m up.
  expect(distance.ok && distance.sum.asked.distance).toBeCloseTo(Math.sqrt(8.53333 ** 2 - 1.4 ** 2), 4);
  const lens = solved(asked(), 'lens', 250);
  expect(lens.ok && lens.sum.camera.focalLength).toBeCloseTo((250 * Math.hypot(6, 1.4) * 4.8) / 2560, 9);
  expect(solved(asked({ height: 9 }), 'distance', 5000)).toMatchObject({ ok: false });
  expect(solved(asked({ tilt: -89 }), 'lens', 250)).toMatchObject({ ok: false });
});

test('whoever stands there is in sight and labels keep off one another, near and far, on a desk and on a phone', () => {
  const isWords = (mark: { readonly kind: string }): mark is Words => mark.kind === 'words';
  for (const distance of [0.5, 3, 12, 60, 400])
    for (const width of [390, 712, 1120]) {
      const sum = quickSum(asked({ distance }));
      const section = sectionOfSum(sum, named);
      const drawing = drawSum(section, sumView(section, width, 240, width < 600), named);
      expect(drawing.handles.person[0]).toBeGreaterThan(0);
      expect(drawing.handles.person[0]).toBeLessThan(width);
      const plates = drawing.marks.filter(isWords).map(plateOf);
      const both = plates.flatMap((one, at) => plates.slice(at + 1).filter((two) => overlap(one, two)));
      expect({ distance, width, both }).toEqual({ distance, width, both: [] });
    }
});
