import { expect, test } from 'vitest';
import type { Question } from '../../src/assess/assessment.ts';
import { createSession, runSteps } from '../../src/assess/session.ts';
import { demo } from '../editor/plans.ts';

/** What a cell may cost for each camera, bytes. */
const MOST = 1;

const FACE: Question = {
  target: { kind: 'face', height: 1.6 },
  alone: null,
  situation: null,
  causes: 'exact',
};

/** The bytes of all buffers that a value reaches, each once. */
function bytesOf(value: unknown, seen = new Set<unknown>()): number {
  if (typeof value !== 'object' || value === null) return 0;
  const held = ArrayBuffer.isView(value) ? value.buffer : value;
  if (seen.has(held)) return 0;
  seen.add(held);
  if (ArrayBuffer.isView(value)) return value.buffer.byteLength;
  return Object.values(value).reduce<number>((sum, part) => sum + bytesOf(part, seen), 0);
}

test('bytes are counted once a buffer, however it is reached', () => {
  const array = new Float64Array(10);
  expect(bytesOf({ a: array, b: [array, array.subarray(2)], c: new Uint8Array(3) })).toBe(83);
});

test('what an answer holds a camera stays below a byte a cell', () => {
  const plan = demo();
  const { cameras, site } = runSteps(createSession().steps(plan, FACE, 1));
  const cells = site.grid.columns * site.grid.rows;
  const each = bytesOf(cameras) / cells / cameras.length;
  expect(each).toBeGreaterThan(0.05);
  expect(each).toBeLessThan(MOST);
});

test('an answer after a change shares with the former what has not changed, and leaves it as it was', () => {
  const session = createSession();
  const plan = demo();
  const before = runSteps(session.steps(plan, FACE, 1));
  const copy = structuredClone(before.cameras);
  const id = plan.cameraOrder[0] ?? '';
  const camera = plan.cameras[id];
  if (camera === undefined) throw new Error('the demo plan has cameras');
  const turned = { ...plan, cameras: { ...plan.cameras, [id]: { ...camera, pan: camera.pan + 5 } } };
  const after = runSteps(session.steps(turned, FACE, 2));
  const cells = before.site.grid.columns * before.site.grid.rows;
  const added = bytesOf([before.cameras, after.cameras]) - bytesOf(before.cameras);
  expect(added / cells).toBeLessThan(MOST);
  expect(before.cameras).toEqual(copy);
});
