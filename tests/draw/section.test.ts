import { readFileSync, rmSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { createSession, runSteps } from '../../src/assess/session.ts';
import { overlap } from '../../src/draw/labelPlaces.ts';
import { plateOf, type Words } from '../../src/draw/section/marks.ts';
import { drawSection } from '../../src/draw/section/sectionDrawing.ts';
import { firstView, frameOf } from '../../src/draw/section/sectionView.ts';
import { createShowSection, namedIn } from '../../src/draw/section/shownSection.ts';
import { aimCamera } from '../../src/plan/commands/aimCamera.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { DEMO, scratch, soffit, soffitJson } from '../cli/ran.ts';
import { demo } from '../editor/plans.ts';

function drawn(plan: Plan, camera: string, width: number, person = 4) {
  const question = {
    target: { kind: 'ground', height: 0 },
    alone: null,
    situation: null,
    causes: 'quick',
  } as const;
  const assessment = runSteps(createSession().steps(plan, question, 1));
  const section = createShowSection()(assessment, plan, camera, person);
  if (section === null) throw new Error(`no section of ${camera}`);
  const view = firstView(section, width, width < 600 ? 340 : 196, width < 600);
  return { section, view, drawing: drawSection(section, view, namedIn(assessment, plan)) };
}

const isWords = (mark: { readonly kind: string }): mark is Words => mark.kind === 'words';

test('labels never overlap, whichever way each camera of the sample looks, on a desk and on a phone', () => {
  const plan = demo();
  for (const camera of plan.cameraOrder)
    for (const pan of [20, 110, 200, 236, 290])
      for (const width of [1180, 700, 390]) {
        const { drawing } = drawn(aimCamera(plan, camera, { pan, tilt: pan / 6 }), camera, width);
        const plates = drawing.marks.filter(isWords).map((one) => ({ text: one.text, plate: plateOf(one) }));
        const both = plates.flatMap((one, at) =>
          plates
            .slice(at + 1)
            .flatMap((two) => (overlap(one.plate, two.plate) ? [`${one.text} / ${two.text}`] : [])),
        );
        expect({ camera, pan, width, both }).toEqual({ camera, pan, width, both: [] });
      }
});

test('one scale goes both ways, and handles lie where the numbers are', () => {
  const { section, view, drawing } = drawn(demo(), 'C1', 1180);
  const { person, height, tilt } = drawing.handles;
  const frame = frameOf(section, view);
  const [ahead] = person;
  expect(ahead - frame.x(0)).toBeCloseTo(4 * view.scale, 9);
  expect(frame.y(0) - height[1]).toBeCloseTo(section.mountingHeight * view.scale, 9);
  const [lensX, lensY] = frame.place([0, section.lens]);
  const turned = (Math.atan2(tilt[1] - lensY, tilt[0] - lensX) * 180) / Math.PI;
  expect(turned).toBeCloseTo(section.camera.tilt, 9);
});

describe('soffit section', () => {
  test('tells in JSON what the drawing rests on', () => {
    const told = soffitJson('section', DEMO, 'C2', '--height', '0.5', '--person', '6');
    expect(told).toMatchObject({
      camera: 'C2',
      edition: 'IEC 62676-4:2014',
      lines: [{ target: { height: 0 } }, { target: { height: 0.5 } }, { target: { kind: 'face' } }],
      person: { distance: 6 },
    });
  });

  test('writes a drawing with plan, edition and what pixels do not promise', () => {
    const folder = scratch();
    const file = folder.file('c1.svg');
    expect(soffit('section', DEMO, 'C1', '--svg', file).code).toBe(0);
    const text = readFileSync(file, 'utf8');
    rmSync(file);
    folder.clear();
    for (const words of ['Section through C1', 'Kiln Cottage', 'IEC 62676-4:2014', 'No promise', '</svg>'])
      expect(text).toContain(words);
  });

  test('says what it cannot do', () => {
    expect(soffit('section', DEMO, 'C9')).toMatchObject({ code: 2, out: '' });
    expect(soffit('section', DEMO)).toMatchObject({ code: 2, out: '' });
  });
});
