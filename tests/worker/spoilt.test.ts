import { expect, test } from 'vitest';
import { answers, fromWorker, toWorker } from '../../src/worker/messages.ts';
import { demo } from '../editor/plans.ts';

/*
 * Every kind of message that goes between window and worker, spoilt in every place that its guard answers for: a key that is
 * missing, or something of another kind in its place.
 */
const target = { kind: 'ground', height: 0 };
const area = { value: 1, bound: 0, how: 'exact' };
const { structures, cameras, settings, version } = demo();
/** As much of a plan as a message is asked for; what is in it was checked where it came from. */
const plan = { structures: {}, cameras: {}, settings: {}, version };
const site = {
  seers: [{ camera: {}, seen: {} }],
  ring: [[0, 0]],
  height: 0,
  target,
  bands: [{ key: 'observation', density: 62.5 }],
  caps: [{ above: 20, side: 90, band: 3 }],
};
const question = { target, alone: null, situation: null, causes: 'quick' };
const ask = (job: string, asked: unknown) => ({ kind: 'ask', id: 1, ask: { job, question: asked } });

const MESSAGES: readonly (readonly [string, (message: unknown) => unknown, unknown])[] = [
  ['cancel', toWorker, { kind: 'cancel', id: 2 }],
  [
    'ask for coverage',
    toWorker,
    ask('cover', { plan, question, wanted: { whole: ['C1'], causes: ['C2'] }, laid: true }),
  ],
  ['ask for a site', toWorker, ask('site', site)],
  ['ask for a trial', toWorker, ask('trial', site)],
  ['ask for a file', toWorker, ask('openFile', { name: 'a.json', bytes: new Uint8Array(2) })],
  ['progress', fromWorker, { kind: 'progress', id: 1, share: 0.5, doing: 'Reading' }],
  ['done', fromWorker, { kind: 'done', id: 1, answer: null }],
  ['cancelled', fromWorker, { kind: 'cancelled', id: 1 }],
  ['failed', fromWorker, { kind: 'failed', id: 1, message: 'a corner is missing' }],
  [
    'coverage',
    answers.cover,
    {
      laid: { scene: {}, ground: null },
      whole: [{ coverage: {}, cells: {}, shadows: 3 }],
      causes: [{ camera: 'C2', areas: {} }],
    },
  ],
  ['area of a site', answers.site, { atLeast: [area], byCount: [area] }],
  [
    'exchange of a trial',
    answers.trial,
    { byBand: [{ gained: area, lost: area }], finer: area, coarser: area },
  ],
  [
    'opened file',
    answers.openFile,
    { ok: true, value: { plan, report: null, pictures: {} }, notes: [{ code: 'plan.older' }] },
  ],
  ['refused file', answers.openFile, { ok: false, faults: [{ code: 'file.unknown' }] }],
];

/** Keys of which a guard asks only that they are there: what they hold was made by this program and is handed on as it is. */
const THERE = new Set(
  'answer scene ground coverage cells shadows areas camera seen report pictures code value bound how key density above side band'.split(
    ' ',
  ),
);

const isPart = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !(value instanceof Uint8Array);

/** A message with something done to one of its places, for each of them: the path, and the spoilt copy. */
function* spoilt(
  value: unknown,
  of: (part: Record<string, unknown>, key: string) => void,
  path = '',
): Generator<readonly [string, unknown]> {
  if (!isPart(value)) return;
  for (const key of Object.keys(value)) {
    // Lists may be of any length.
    const copy: unknown = Array.isArray(value) ? [...(value as readonly unknown[])] : { ...value };
    if (!isPart(copy)) continue;
    of(copy, key);
    yield [`${path}.${key}`, copy];
    for (const [inner, changed] of spoilt(value[key], of, `${path}.${key}`)) {
      const outer: unknown = Array.isArray(value) ? [...(value as readonly unknown[])] : { ...value };
      if (isPart(outer)) outer[key] = changed;
      yield [inner, outer];
    }
  }
}

const refuses = (read: (message: unknown) => unknown, message: unknown): boolean => {
  try {
    read(message);
    return false;
  } catch (fault) {
    return fault instanceof TypeError;
  }
};

test.each(MESSAGES)(
  '%s: the very message, and it is refused with any of its parts missing',
  (_, read, message) => {
    expect(read(message)).toBe(message);
    const broken = [
      ...spoilt(message, (part, key) => {
        if (Array.isArray(part)) part[Number(key)] = undefined;
        else Reflect.deleteProperty(part, key);
      }),
    ];
    expect(broken.length).toBeGreaterThan(1);
    expect(broken.flatMap(([path, one]) => (refuses(read, one) ? [] : [path]))).toEqual([]);
  },
);

test.each(MESSAGES)(
  '%s: is refused with something of another kind in any of its parts',
  (_, read, message) => {
    const broken = [Symbol('odd'), undefined].flatMap((odd) => [
      ...spoilt(message, (part, key) => (part[key] = odd)),
    ]);
    const looked = broken.filter(([path]) => path === '.value' || !THERE.has(path.split('.').at(-1) ?? ''));
    expect(looked.length).toBeGreaterThan(1);
    expect(looked.flatMap(([path, one]) => (refuses(read, one) ? [] : [path]))).toEqual([]);
  },
);

test.each([7, 'text', true, null, [], {}])('no message is %j', (message) => {
  for (const read of [toWorker, fromWorker, ...Object.values(answers)])
    expect(() => read(message)).toThrow(TypeError);
});

test('a whole plan, with all its structures and cameras, is taken as it is', () => {
  const whole = { structures, cameras, settings, version };
  const message = ask('cover', { plan: whole, question, wanted: { whole: [], causes: [] }, laid: false });
  expect(toWorker(message)).toBe(message);
});
