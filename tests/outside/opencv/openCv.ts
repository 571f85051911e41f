/*
 * Source: OpenCV 4.12.0, module calib3d, as the npm package @techstark/opencv-js 4.12.0-release.1. Apache-2.0.
 * Run here by the tests, not read off. Its camera has x right, y down, z ahead, like ours; with distortion 0 projectPoints
 * is the rectilinear lens and fisheye::projectPoints the equidistant one (k1 to k4 = 0: θd = θ).
 */
import { createRequire } from 'node:module';
import type openCvTypes from '@techstark/opencv-js';
import { z } from 'zod';
import type { Vec3 } from '../../../src/base/vector.ts';
import type { Camera } from '../../../src/optics/camera.ts';

type Pixel = readonly [u: number, v: number];
export interface Projections {
  readonly rectilinear: Project;
  readonly equidistant: Project;
}
type Project = (camera: Camera, points: readonly Vec3[]) => readonly Pixel[];

const doubles = z.instanceof(Float64Array);
// The package's own types leave fisheye out, and `then` is what the module calls when it is ready.
const callable = z.custom<(...given: unknown[]) => unknown>((value) => typeof value === 'function');

const library = z.custom<typeof openCvTypes>((value) => typeof value === 'object' && value !== null);

/**
 * OpenCV once it is ready. Its module keeps a `then`, so that an `await` or an `import` of it would never end: it is
 * required, and the `then` goes before it is handed on.
 */
export async function ready(): Promise<typeof openCvTypes> {
  const cv = library.parse(createRequire(import.meta.url)('@techstark/opencv-js'));
  const then = callable.safeParse(Reflect.get(cv, 'then'));
  if (then.success)
    await new Promise<void>((done) => {
      Reflect.apply(then.data, cv, [() => done()]);
    });
  Reflect.deleteProperty(cv, 'then');
  return cv;
}

/** The two projections. Points and poses are those of the site; the rotation is handed over as a vector by Rodrigues. */
export async function openCv(): Promise<Projections> {
  return bound(await ready());
}

function bound(cv: typeof openCvTypes): Projections {
  const fisheye = callable.parse(Reflect.get(cv, 'fisheye_projectPoints'));
  const [double, triple] = [z.number().parse(cv.CV_64F), z.number().parse(cv.CV_64FC3)];
  const matrix = (rows: number, columns: number, type: number, numbers: readonly number[]) =>
    cv.matFromArray(rows, columns, type, [...numbers]);
  const run =
    (isFisheye: boolean): Project =>
    (camera, points) => {
      const turn = rotationOf(camera);
      const eye = turn.map(
        (row) => -(row[0] * camera.eye[0] + row[1] * camera.eye[1] + row[2] * camera.eye[2]),
      );
      const { focalLength, sensor, frame } = camera;
      const fx = (focalLength * frame.width) / sensor.width;
      const fy = (focalLength * frame.height) / sensor.height;
      const made = {
        points: matrix(points.length, 1, triple, points.flat()),
        turn: matrix(3, 3, double, turn.flat()),
        rodrigues: new cv.Mat(),
        shift: matrix(3, 1, double, eye),
        inner: matrix(3, 3, double, [fx, 0, frame.width / 2, 0, fy, frame.height / 2, 0, 0, 1]),
        distortion: matrix(4, 1, double, [0, 0, 0, 0]),
        image: new cv.Mat(),
      };
      cv.Rodrigues(made.turn, made.rodrigues);
      if (isFisheye)
        fisheye(made.points, made.image, made.rodrigues, made.shift, made.inner, made.distortion);
      else cv.projectPoints(made.points, made.rodrigues, made.shift, made.inner, made.distortion, made.image);
      const found = Array.from(doubles.parse(made.image.data64F));
      for (const mat of Object.values(made)) mat.delete();
      return points.map((_, at): Pixel => [found[at * 2] ?? Number.NaN, found[at * 2 + 1] ?? Number.NaN]);
    };
  return { rectilinear: run(false), equidistant: run(true) };
}

/** Site to camera: rows right, down, forward by the design's words, written anew. Roll turns right towards down. */
function rotationOf({ pan, tilt, roll }: Camera): [Row, Row, Row] {
  const [p, t, r] = [pan, tilt, roll].map((degrees) => (degrees * Math.PI) / 180);
  if (p === undefined || t === undefined || r === undefined) throw new Error('a pose has three angles');
  const forward: Row = [Math.cos(t) * Math.sin(p), Math.cos(t) * Math.cos(p), -Math.sin(t)];
  const level: Row = [Math.cos(p), -Math.sin(p), 0];
  const below: Row = [
    forward[1] * level[2] - forward[2] * level[1],
    forward[2] * level[0] - forward[0] * level[2],
    forward[0] * level[1] - forward[1] * level[0],
  ];
  const mix = (a: Row, b: Row, x: number, y: number): Row => [
    x * a[0] + y * b[0],
    x * a[1] + y * b[1],
    x * a[2] + y * b[2],
  ];
  return [mix(level, below, Math.cos(r), Math.sin(r)), mix(below, level, Math.cos(r), -Math.sin(r)), forward];
}

type Row = [number, number, number];
