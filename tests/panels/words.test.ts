import { describe, expect, test } from 'vitest';
import type { PointAnswer } from '../../src/assess/assessment.ts';
import { createSession, runSteps } from '../../src/assess/session.ts';
import type { Target } from '../../src/coverage/target.ts';
import { areaFigures, areaText } from '../../src/panels/areaText.ts';
import { nextTarget } from '../../src/panels/nextTarget.ts';
import { sorted, stateText } from '../../src/panels/probeWords.ts';
import { detailText, footprintText, ringArea, spokenText } from '../../src/panels/structureWords.ts';
import { seenSentence, siteSentence } from '../../src/panels/seenSentence.ts';
import { targetText } from '../../src/panels/targetText.ts';
import { demo } from '../editor/plans.ts';

const plan = demo();
const structure = (id: string) => {
  const found = plan.structures[id];
  if (!found) throw new Error(`no structure ${id}`);
  return found;
};

describe('an area', () => {
  test('is printed with a bound that is rounded up, never down', () => {
    expect(areaText({ value: 41.26, bound: 0.11, how: 'between' })).toBe('41.3 ± 0.2 m²');
    expect(areaText({ value: 0, bound: 0.001, how: 'between' })).toBe('0.0 ± 0.1 m²');
  });

  test('that was only counted from cells is printed as about', () => {
    expect(areaText({ value: 41.26, bound: 0.11, how: 'cells' })).toBe('≈ 41.3 m²');
    expect(areaFigures({ value: 41.26, bound: 0.11, how: 'cells' })).toEqual({ value: '≈ 41.3', bound: '' });
  });

  test('that is exact has none', () => {
    expect(areaText({ value: 23.44, bound: 0, how: 'exact' })).toBe('23.4 m²');
    expect(areaFigures({ value: 0, bound: 0, how: 'cells' })).toEqual({ value: '0.0', bound: '' });
  });
});

describe('a structure in the list', () => {
  test.each([
    ['garage', 'Garage, building, 3.60 by 5.60, 2.60 high'],
    ['hedge', 'Front hedge, hedge, 14.10 long, 1.50 high'],
    ['van', 'Van, van, 5.20 by 2.00, 2.25 high'],
    ['tree', 'Pear tree, tree, 3.00 by 3.00, 5.20 high'],
  ])('%s is spoken as "%s"', (id, spoken) => {
    expect(spokenText(structure(id))).toBe(spoken);
  });

  test('a house turned by any angle has the same length and breadth', () => {
    const house = structure('house');
    if (house.kind !== 'building') throw new Error('the house is no building');
    const [c, s] = [Math.cos(0.7), Math.sin(0.7)];
    const turned = {
      ...house,
      outline: house.outline.map(([x, y]) => [x * c - y * s, x * s + y * c] as const),
    };
    expect(footprintText(turned)).toBe('11.00 × 7.00');
  });

  test('says what lets a view through', () => {
    expect(detailText(structure('mesh-fence'))).toBe('screen');
    expect(detailText(structure('tree'))).toBe('in leaf');
  });
});

test('the area of a boundary does not depend on which way round it was drawn', () => {
  const ring = [
    [0, 0],
    [10, 0],
    [10, 4],
    [0, 4],
  ] as const;
  expect(ringArea(ring)).toBe(40);
  expect(ringArea(ring.toReversed())).toBe(40);
});

test('the key for the next height goes round ground, plate and face', () => {
  const heights = { plateHeight: 0.5, faceHeight: 1.6 };
  const plate = nextTarget({ kind: 'ground', height: 0 }, heights);
  const face = nextTarget(plate, heights);
  expect([plate, face].map(targetText)).toEqual(['plate, 0.50 m', 'face, 1.60 m']);
  expect(nextTarget(face, heights)).toEqual({ kind: 'ground', height: 0 });
  expect(nextTarget({ kind: 'height', height: 3 }, heights)).toEqual({ kind: 'ground', height: 0 });
});

describe('what is at a spot is said in the words of a homeowner', () => {
  const assessment = runSteps(
    createSession().steps(
      plan,
      { target: { kind: 'ground', height: 0 }, alone: null, situation: null, causes: 'exact' },
      1,
    ),
  );
  const van = assessment.scene.solids.findIndex(({ name }) => name === 'Van');
  const answer = (change: Partial<PointAnswer>): PointAnswer => ({
    camera: 'C1',
    state: 'covered',
    band: 3,
    density: 131.4,
    depression: 24.2,
    hider: null,
    before: null,
    lost: 0,
    ...change,
  });

  test('what a camera sees is one sentence', () => {
    const [camera] = assessment.cameras;
    if (!camera) throw new Error('no camera');
    const identify = camera.areas.byBand.at(-1)?.value.toFixed(1);
    expect(seenSentence(assessment, 'C1')).toMatch(
      new RegExp(
        `^C1: identify ${identify}, .* square metres\\. Nothing seen nearer than \\d\\.\\d\\d metres\\.$`,
      ),
    );
    expect(seenSentence({ ...assessment, cameras: [] }, 'C1')).toBe('');
  });

  test('what all cameras see is one sentence too, with the conditions and what is too dark', () => {
    const { C1: first } = plan.cameras;
    if (!first) throw new Error('no camera');
    const dim = {
      ...plan,
      cameras: { ...plan.cameras, C1: { ...first, infrared: { range: 5, beam: 110 } } },
    };
    const ask = (target: Target, situation: string | null) =>
      runSteps(createSession().steps(dim, { target, alone: null, situation, causes: 'quick' }, 1));
    const night = ask({ kind: 'ground', height: 0 }, 'night');
    expect(siteSentence(night, plan)).toMatch(
      /^Whole site, at ground, Night: identify \d+\.\d, .* square metres\. Seen by no camera \d+\.\d\.$/,
    );
    const dark = night.cameras[0]?.areas.byState['too dark'].value ?? 0;
    expect(dark).toBeGreaterThan(0.05);
    expect(seenSentence(night, 'C1')).toContain(` Too dark ${dark.toFixed(1)} square metres.`);
    const wall = ask(
      { kind: 'surface', height: 0, surface: { of: 'wall', structure: 'house', face: 0 } },
      null,
    );
    expect(siteSentence(wall, plan)).toMatch(/^Whole site, at House, south wall: identify /);
    // Across the wall there are fewer pixels than across the way of looking: the camera sees it from the side.
    const said = stateText(wall, answer({ density: 263.2 }), [3.32, -1e-5, 0.09]);
    expect(said).toMatch(/^recognise, 263 px\/m, \d+ px\/m across the face, seen from 24° above$/);
  });

  test('which way faces look is told with their height', () => {
    const face = { kind: 'face', height: 1.6 } as const;
    expect(targetText({ ...face, looks: { kind: 'bearing', bearing: 200 } })).toBe(
      'face, 1.60 m, looking to 200°',
    );
    expect(targetText({ ...face, looks: { kind: 'place', at: [3.24, -4] } })).toBe(
      'face, 1.60 m, looking to 3.2 east, −4.0 north',
    );
  });

  test('why a face counts for less comes last', () => {
    expect(stateText(assessment, answer({ lost: 2 }), [0, 0, 0])).toBe(
      'recognise, 131 px/m, seen from 24° above, no more since the face is seen from the side',
    );
  });

  test('the best camera first, then what comes nearest, those that look elsewhere apart', () => {
    const answers = [
      answer({ camera: 'A' }),
      answer({ camera: 'B', state: 'out of frame', band: 0 }),
      answer({ camera: 'C', state: 'hidden', band: 0 }),
      answer({ camera: 'D', state: 'too coarse', band: 0 }),
      answer({ camera: 'E', band: 2 }),
    ];
    const { best, others, unframed } = sorted(answers);
    expect([best?.camera, ...others.map(({ camera }) => camera)]).toEqual(['A', 'E', 'D', 'C']);
    expect(unframed).toEqual(['B']);
    expect(sorted(answers.slice(1, 4)).best).toBeNull();
  });

  test.each([
    [{}, 'recognise, 131 px/m, seen from 24° above'],
    [{ depression: -3 }, 'recognise, 131 px/m, seen from 3° below'],
    [{ state: 'too coarse', band: 0, density: 12 }, 'too few pixels, 12 px/m, seen from 24° above'],
    [{ state: 'hidden', band: 0, hider: van, before: 4.12 }, 'hidden by Van, 4.1 m before it'],
    [{ state: 'screened', band: 0, hider: van }, 'through leaves or mesh of Van'],
    [{ state: 'out of frame', band: 0, density: null }, 'out of frame'],
  ] satisfies [Partial<PointAnswer>, string][])('%j: %s', (change, words) => {
    expect(stateText(assessment, answer(change), [0, 0, 0])).toBe(words);
  });
});
