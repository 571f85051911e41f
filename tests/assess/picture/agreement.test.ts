import { expect, test } from 'vitest';
import { createPicturer } from '../../../src/assess/picture/pictureOf.ts';
import { lensPicture } from '../../../src/assess/picture/lensPicture.ts';
import type { Section } from '../../../src/assess/section/section.ts';
import { createSectioner } from '../../../src/assess/section/sectioner.ts';
import { createSession, runSteps } from '../../../src/assess/session.ts';
import { bearing } from '../../../src/base/angle.ts';
import { distance, type Vec3 } from '../../../src/base/vector.ts';
import type { Target } from '../../../src/coverage/target.ts';
import { STATES } from '../../../src/coverage/state.ts';
import { imageFromUpright, quarterOf } from '../../../src/optics/upright.ts';
import { aimCamera } from '../../../src/plan/commands/aimCamera.ts';
import { demo } from '../../editor/plans.ts';
import { chanceFrom, isThorough, trials } from '../../house/seeded.ts';
import { randomSite } from '../randomSite.ts';

/** Nearer to a change along the Section than this the four may fall to either side of it, m. */
const NEAR = 0.003;

/** The pixel of a place of a section, by the angle that the Section draws and the lens law as the design states it. */
function pixelInSection({ camera, lens }: Section, t: number, h: number): readonly [number, number] | null {
  const below = Math.atan2(lens - h, t) - (camera.tilt * Math.PI) / 180;
  const theta = Math.abs(Math.atan2(Math.sin(below), Math.cos(below)));
  const { k, focalLength, sensor, frame } = camera;
  if (k !== 0 && theta >= Math.PI / 2 / Math.abs(k)) return null;
  const g = k > 0 ? Math.tan(k * theta) / k : k < 0 ? Math.sin(-k * theta) / -k : theta;
  const off = focalLength * g * Math.sign(Math.sin(below));
  const roll = (camera.roll * Math.PI) / 180;
  return [
    frame.width / 2 + off * Math.sin(roll) * (frame.width / sensor.width),
    frame.height / 2 + off * Math.cos(roll) * (frame.height / sensor.height),
  ];
}

test('a thousand random points have one state, pixel and density in Section, camera’s view, Model and numbers', () => {
  const seed = 6640;
  const chance = chanceFrom(seed);
  const told = new Map<string, number>();
  const wrong: string[] = [];
  const wanted = trials(24, 1000);
  let asked = 0;
  for (let site = 0; asked < wanted; site += 1) {
    const made = site % 5 === 4 ? demo() : randomSite(chance, 8, 1);
    const plain = { ...made, settings: { ...made.settings, screenClosing: 0 } };
    const target: Target = chance.pick([
      { kind: 'ground', height: 0 },
      { kind: 'face', height: made.settings.faceHeight },
      { kind: 'height', height: 0.5 },
    ]);
    const question = { target, alone: null, situation: null, causes: 'quick' } as const;
    const session = createSession();
    const [picturer, sectioner] = [createPicturer(), createSectioner()];
    const [id = ''] = plain.cameraOrder;
    const first = runSteps(session.steps(plain, question, 1));
    const { grid } = first.site;
    const eye = first.scene.cameras[0]?.eye;
    if (eye === undefined) continue;
    for (let shot = 0; shot < 6; shot += 1) {
      const cell = chance.whole(0, grid.columns * grid.rows - 1);
      const x = grid.left + ((cell % grid.columns) + 0.5) * grid.cell;
      const y = grid.bottom + (Math.floor(cell / grid.columns) + 0.5) * grid.cell;
      const t = Math.hypot(x - eye[0], y - eye[1]);
      // The Section is cut along the axis: the camera is panned so that the point lies in it.
      const pan = bearing((Math.atan2(x - eye[0], y - eye[1]) * 180) / Math.PI);
      const plan = aimCamera(plain, id, { pan });
      const assessment = runSteps(session.steps(plan, question, shot + 2));
      const [coverage] = assessment.cameras;
      const section = sectioner(assessment, { camera: id, host: null, person: t, settings: plan.settings });
      const line = section?.lines[0];
      if (coverage === undefined || section === null || line === undefined) continue;
      const stretch = line.stretches.find(({ from, to }) => t >= from + NEAR && t <= to - NEAR);
      if (stretch === undefined) continue;
      const point: Vec3 = [x, y, assessment.scene.ground + target.height];
      const [answer] = session.probe(assessment, point, id);
      if (answer === undefined) throw new Error('no answer');
      asked += 1;
      told.set(answer.state, (told.get(answer.state) ?? 0) + 1);
      const where = `seed ${seed}, site ${site}, shot ${shot}, cell ${cell}, ${target.kind}`;
      const { cells, camera } = coverage;
      const model = [STATES[cells.state[cell] ?? 9], cells.band[cell], nullIf(cells.hider[cell] ?? -1, -1)];
      const numbers = [answer.state, answer.band, answer.hider];
      const cut = [stretch.state, stretch.band, stretch.hider];
      if (JSON.stringify(model) !== JSON.stringify(numbers))
        wrong.push(`${where}: Model ${model.join(' ')}, numbers ${numbers.join(' ')}`);
      if (JSON.stringify(cut) !== JSON.stringify(numbers))
        wrong.push(`${where}: Section ${cut.join(' ')}, numbers ${numbers.join(' ')}`);

      // The picture: the pixel, and what is found at it.
      const lens = lensPicture(camera);
      const place = lens.place(point);
      const pixel = pixelInSection(section, t, target.height);
      if (answer.state === 'out of frame' || answer.state === 'inside') continue;
      if (place === null || pixel === null) {
        wrong.push(`${where}: no pixel`);
        continue;
      }
      const drawn = imageFromUpright({ u: place[0], v: place[1] }, camera.frame, quarterOf(camera));
      if (Math.hypot(drawn.u - pixel[0], drawn.v - pixel[1]) > 0.01)
        wrong.push(`${where}: pixel ${drawn.u}, ${drawn.v}, by the Section ${pixel.join(', ')}`);
      const spot = picturer.spot(assessment, id, place);
      if (answer.state === 'hidden') {
        const isBefore = spot !== null && distance(spot.point, camera.eye) < distance(point, camera.eye);
        if (coverage.sight.lensInside === null && (spot?.solid !== answer.hider || !isBefore))
          wrong.push(`${where}: the picture shows ${spot?.solid} before it, hidden by ${answer.hider}`);
        continue;
      }
      if (spot === null || spot.solid !== null || distance(spot.point, point) > 1e-6 * (10 + t)) {
        wrong.push(
          `${where}: the picture finds ${spot?.point.join(', ')} (${spot?.solid}), not ${point.join(', ')}`,
        );
        continue;
      }
      const [found] = session.probe(assessment, spot.point, id);
      const density = answer.density ?? 0;
      const pairs = [
        ['picture', found?.density ?? 0],
        ['Model', cells.density[cell] ?? 0],
        ...(target.kind === 'face' ? ([['Section', section.person.density ?? 0]] as const) : []),
      ] as const;
      for (const [name, value] of pairs)
        if (Math.abs(value / density - 1) > 2e-6)
          wrong.push(`${where}: ${value} px/m in ${name}, ${density} in numbers`);
    }
  }
  expect(wrong).toEqual([]);
  expect([...told.keys()]).toEqual(
    expect.arrayContaining(
      isThorough ? ['inside', 'out of frame', 'hidden', 'covered'] : ['hidden', 'covered'],
    ),
  );
});

const nullIf = (value: number, none: number): number | null => (value === none ? null : value);
