import { expect, test } from 'vitest';
import { chosenLandmarks } from '../../../src/assess/picture/landmarks.ts';
import { createPicturer } from '../../../src/assess/picture/pictureOf.ts';
import { createSession, runSteps } from '../../../src/assess/session.ts';
import { pictureDrawing } from '../../../src/draw/picture/pictureDrawing.ts';
import { letterOf } from '../../../src/draw/picture/pictureLabels.ts';
import { pictureSvg } from '../../../src/draw/picture/pictureSvg.ts';
import { namedInPicture, pictureSheet } from '../../../src/draw/picture/shownPicture.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { demo } from '../../editor/plans.ts';
import { plainImage } from '../../oracle/plainCamera.ts';

const question = {
  target: { kind: 'ground', height: 0 },
  alone: null,
  situation: null,
  causes: 'quick',
} as const;

function pictured(plan: Plan, id = 'C1') {
  const assessment = runSteps(createSession().steps(plan, question, 1));
  const picturer = createPicturer();
  const picture = picturer.picture(assessment, plan, id);
  if (picture === null) throw new Error('no picture');
  return { assessment, picturer, picture, named: namedInPicture(assessment, plan) };
}

/** The demo plan's, made once. */
let made: ReturnType<typeof pictured> | null = null;
const ofDemo = () => (made ??= pictured(demo()));

const withFirst = (change: (camera: Plan['cameras'][string]) => Plan['cameras'][string]): Plan => {
  const plan = demo();
  const camera = plan.cameras['C1'];
  if (camera === undefined) throw new Error('the demo has C1');
  return { ...plan, cameras: { ...plan.cameras, C1: change(camera) } };
};

test('landmarks lie where a plain camera puts them, in per cent of the picture, and are named as one stands before them', () => {
  const { picture } = ofDemo();
  const { width, height } = picture.camera.frame;
  for (const { place, left, top } of picture.landmarks) {
    const at = plainImage(picture.camera, place);
    expect(((at?.[0] ?? 0) * 100) / width).toBeCloseTo(left, 6);
    expect(((at?.[1] ?? 0) * 100) / height).toBeCloseTo(top, 6);
  }
  // Whoever stands on the camera's side of the door and looks at it has the left jamb to the left.
  const place = (words: string) =>
    picture.landmarks.find(({ name }) => name === `Front door, ${words}`)?.place ?? [Number.NaN, Number.NaN];
  const [left, right, eye] = [place('left jamb, foot'), place('right jamb, foot'), picture.camera.eye];
  const [dx, dy] = [(right[0] ?? 0) - (left[0] ?? 0), (right[1] ?? 0) - (left[1] ?? 0)];
  const [ex, ey] = [eye[0] - (left[0] ?? 0), eye[1] - (left[1] ?? 0)];
  // Clockwise from left-to-right lies whoever looks.
  expect(dx * ey - dy * ex).toBeLessThan(0);
});

test('the landmarks to aim by are seen, within the picture, and far from one another', () => {
  const { picture } = ofDemo();
  const chosen = chosenLandmarks(picture.landmarks, 5);
  expect(chosen).toHaveLength(5);
  expect(chosen.every(({ seen }) => seen)).toBe(true);
  const apart = chosen.flatMap((one, k) =>
    chosen.slice(k + 1).map((two) => Math.hypot(one.left - two.left, one.top - two.top)),
  );
  expect(Math.min(...apart)).toBeGreaterThan(10);
  expect([letterOf(0), letterOf(25), letterOf(26), letterOf(27)]).toEqual(['a', 'z', 'aa', 'ab']);
});

test('a drawing says in words what is in it, names the edition, and promises nothing', () => {
  const plan = demo();
  const { assessment, picture, named } = ofDemo();
  const drawing = pictureDrawing(picture, named, {
    width: 800,
    landmarks: chosenLandmarks(picture.landmarks, 3),
  });
  expect(drawing.height).toBeCloseTo((800 * 1520) / 2688, 9);
  expect(drawing.sentence).toMatch(/^Picture of C1, 2688 × 1520 pixels, .* In it: .*House/);
  const svg = pictureSvg(drawing, pictureSheet(assessment, plan, picture.camera), 'light');
  expect(svg).toContain('IEC 62676-4:2014');
  expect(svg).toContain('No promise');
  expect(svg).not.toMatch(/will identify|NaN|Infinity|undefined/);
  const texts = drawing.marks.flatMap((mark) => (mark.kind === 'words' ? [mark.text] : []));
  expect(texts).toEqual(expect.arrayContaining(['Identify 250', 'a', 'b', 'c']));
});

test('a camera that is rolled by a quarter gives an upright corridor picture', () => {
  const { picture, named } = pictured(withFirst((camera) => ({ ...camera, roll: 90 })));
  expect([picture.turn, picture.width, picture.height]).toEqual([90, 1520, 2688]);
  const { sentence } = pictureDrawing(picture, named, { width: 400 });
  expect(sentence).toContain('turned 90° clockwise');
  // Upright: the foot of a jamb is below its top.
  const y = (words: string) => picture.landmarks.find(({ name }) => name === words)?.y;
  const [foot, top] = [y('Pear tree, foot of the trunk'), y('Front gate, left post, top')];
  if (foot === undefined) throw new Error('the tree is in the picture');
  expect(foot).toBeGreaterThan(top ?? 0);
});

test('a lens inside a wall sees nothing, and says in what it stands', () => {
  const house = Object.values(demo().structures).find(({ name }) => name === 'House');
  if (house?.kind !== 'building') throw new Error('the demo has a house');
  const [[x0, y0] = [0, 0], , [x1, y1] = [0, 0]] = house.outline;
  const { picture, picturer, assessment, named } = pictured(
    withFirst((camera) => ({ ...camera, mount: { kind: 'loose', eye: [(x0 + x1) / 2, (y0 + y1) / 2, 2] } })),
  );
  expect([picture.visible.length, picture.bands.length, picture.hiding.length]).toEqual([0, 0, 0]);
  expect(picture.landmarks.some(({ seen }) => seen)).toBe(false);
  expect(pictureDrawing(picture, named, { width: 400 }).sentence).toContain('stands inside House');
  expect(picturer.spot(assessment, 'C1', [1300, 800])).toBeNull();
});

test('the lines of bands have their band’s density, and the person has that of the judge at face height', () => {
  const plan = demo();
  const { assessment, picturer, picture } = ofDemo();
  const session = createSession();
  const own = picture.bands.filter(({ limit }) => !limit);
  expect(own.length).toBeGreaterThan(0);
  for (const { band, at } of own) {
    const half = 2 * Math.floor(at.length / 4);
    const spot = picturer.spot(assessment, 'C1', [at[half] ?? 0, at[half + 1] ?? 0]);
    const [answer] = spot ? session.probe(assessment, spot.point, 'C1') : [];
    const wanted = assessment.edition.bands[band - 1]?.density ?? 0;
    expect(Math.abs((answer?.density ?? 0) / wanted - 1)).toBeLessThan(1e-3);
  }
  const person = picturer.person(assessment, plan, 'C1', { ahead: 5, at: null });
  const [x = 0, y = 0] = person?.at ?? [];
  const [face] = session.probe(assessment, [x, y, plan.settings.faceHeight], 'C1');
  expect(person?.density).toBeCloseTo(face?.density ?? 0, 9);
});
