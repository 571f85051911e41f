import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { faultText } from '../../src/plan/faultText.ts';
import { readPlan } from '../../src/plan/read.ts';
import { planText } from '../../src/plan/write.ts';
import { faultsOf, good, withAt } from './broken.ts';
import { wholePlan } from './wholePlan.ts';

/** Ground by cells of 1 m without a height. */
const grid = (columns: number, rows: number) => ({
  kind: 'grid',
  left: 0,
  bottom: 0,
  cell: 1,
  columns,
  rows,
  heights: [],
  got: 'mapped',
});

const photometric = (
  verticals: readonly number[],
  horizontals: readonly number[],
  candela: readonly (readonly number[])[],
) => ({ kind: 'photometric', source: 'own.ies', turn: 0, photometry: { verticals, horizontals, candela } });

describe('a file that is no JSON', () => {
  test('is told apart when it stops half-way, wherever it was cut', () => {
    const end = good.lastIndexOf('}');
    fc.assert(
      fc.property(fc.integer({ min: 1, max: end }), (length) => {
        expect(faultsOf(good.slice(0, length)).map(({ code }) => code)).toEqual(['file.truncated']);
      }),
      { numRuns: 300 },
    );
  });

  test('says where it goes wrong', () => {
    const [fault] = faultsOf('{\n  "version": 1,\n  "name": oops\n}');
    expect(fault).toMatchObject({ code: 'file.notJson', given: '“oops” at line 3, column 11' });
  });

  test.each([
    ['{"a": 1,}', 'line 1, column 9'],
    ['{"a" 1}', 'line 1, column 6'],
    ['[1, 2] 3', 'line 1, column 8'],
    ["{'a': 1}", 'line 1, column 2'],
    ['{"a": 01}', 'line 1, column 8'],
    ['{"a": "tab\there"}', 'line 1, column 7'],
    ['[1, 2}', 'line 1, column 6'],
  ])('%s is wrong at %s', (text, at) => {
    const [fault] = faultsOf(text);
    expect(fault?.code).toBe('file.notJson');
    expect(fault?.given).toContain(at);
  });

  test.each(['', ' \n ', '\uFEFF'])('is empty: %j', (text) => {
    expect(faultsOf(text)[0]?.code).toBe('file.empty');
  });

  test('is refused without overflowing however deep it nests', () => {
    expect(faultsOf('['.repeat(200_000))[0]?.code).toBe('file.truncated');
  });

  test.each(['NaN', 'Infinity', '-Infinity'])('with %s names it as no number', (word) => {
    const text = good.replace('"pan": 180', `"pan": ${word}`);
    expect(faultsOf(text)[0]).toMatchObject({ code: 'number.notFinite' });
    expect(faultsOf(text)[0]?.given).toMatch(new RegExp(`^${word} at line \\d+`));
  });
});

test('a byte order mark does no harm', () => {
  expect(readPlan(`\uFEFF${good}`).ok).toBe(true);
});

describe('version', () => {
  test.each([
    [undefined, 'plan.noVersion'],
    ['1', 'plan.version'],
    [1.5, 'plan.version'],
    [-1, 'plan.version'],
    [5, 'plan.newer'],
    [1e308, 'plan.newer'],
  ])('%s is %s', (version, code) => {
    expect(faultsOf(withAt(['version'], version))[0]?.code).toBe(code);
  });

  test.each(['[]', '7', '"plan"', 'null', 'true'])('%s is no plan', (text) => {
    expect(faultsOf(text)[0]?.code).toBe('value.type');
  });
});

describe('a value that no plan may hold is named with its place and its thing', () => {
  test.each<[string, readonly (string | number)[], unknown]>([
    ['coordinate.far', ['structures', 'house', 'outline', 2, 0], 1e308],
    ['coordinate.far', ['cameras', 'C2', 'mount', 'eye', 2], -1e6],
    ['value.type', ['structures', 'house', 'height'], null],
    ['value.type', ['structures', 'house', 'height'], '3'],
    ['number.range', ['structures', 'house', 'height'], 0],
    ['number.range', ['cameras', 'C1', 'tilt'], 91],
    ['number.range', ['cameras', 'C1', 'device', 'lens', 'focalLength'], -2.8],
    ['number.whole', ['cameras', 'C1', 'mount', 'face'], 0.5],
    ['number.range', ['cameras', 'C1', 'mount', 'face'], -1],
    ['value.missing', ['cameras', 'C1', 'range'], undefined],
    ['value.choice', ['structures', 'house', 'roof', 'kind'], 'onion'],
    ['value.choice', ['structures', 'house', 'kind'], 'castle'],
    [
      'ring.short',
      ['structures', 'house', 'outline'],
      [
        [0, 0],
        [1, 0],
      ],
    ],
    ['list.length', ['structures', 'house', 'outline', 0], [0]],
    ['name.empty', ['structures', 'house', 'name'], ''],
    ['name.long', ['structures', 'house', 'name'], 'x'.repeat(121)],
    ['name.unprintable', ['structures', 'house', 'name'], 'two\nlines'],
    ['name.unprintable', ['structures', 'house', 'name'], 'turned \u202E back'],
    ['id.key', ['structures', 'house', 'id'], 'barn'],
    ['id.form', ['cameras', 'C1', 'id'], 'my camera'],
    ['id.form', ['cameras', 'C1', 'id'], 'constructor'],
    ['mode.missing', ['cameras', 'C1', 'device', 'recorded'], 'other'],
    ['lens.range', ['cameras', 'C1', 'device', 'lens', 'focalLength'], 4],
    ['value.missing', ['cameras', 'C1', 'infrared'], undefined],
    ['number.range', ['cameras', 'C1', 'infrared'], { range: 12, beam: 0 }],
    ['number.range', ['cameras', 'C1', 'exposure'], { day: 5, night: 0 }],
    ['number.range', ['patches', 'drive', 'pitch'], 81],
    ['value.choice', ['patches', 'drive', 'got'], 'drawn'],
    ['number.range', ['lamps', 'porch-lamp', 'height'], 0],
    ['value.choice', ['lamps', 'porch-lamp', 'light', 'kind'], 'moon'],
    ['number.range', ['settings', 'screenClosing'], 91],
    ['number.range', ['settings', 'leastLux'], 0],
    ['value.choice', ['requirements', 'path', 'looks', 'kind'], 'up'],
    ['spots.few', ['ground'], { kind: 'spots', spots: [] }],
    ['list.length', ['ground'], { ...grid(1001, 1000), heights: Array.from({ length: 1_001_000 }, () => 0) }],
    ['mode.crop', ['cameras', 'C1', 'device', 'modes', 0, 'crop'], { x: 0.5, y: 0, width: 0.6, height: 1 }],
  ])('%s at %j', (code, path, value) => {
    const [fault] = faultsOf(withAt(path, value));
    expect(fault?.code).toBe(code);
    expect(fault?.path.slice(0, path.length)).toEqual(path);
    expect(faultText(fault ?? { code: '', path: [] })).toMatch(/[A-Z“].+\.$/);
  });

  test('1e999, which JSON reads as infinite, is no number', () => {
    const text = good.replace('"pan": 180', '"pan": 1e999');
    expect(faultsOf(text)[0]).toMatchObject({ code: 'number.notFinite', path: ['cameras', 'C1', 'pan'] });
  });

  test('everything wrong is reported at once', () => {
    const root = JSON.parse(withAt(['structures', 'house', 'height'], -1)) as {
      cameras: { C1: { pan: unknown } };
    };
    root.cameras.C1.pan = 'north';
    expect(faultsOf(JSON.stringify(root)).map(({ code }) => code)).toEqual(['number.range', 'value.type']);
  });

  test('a fault carries the name of its thing', () => {
    expect(faultsOf(withAt(['structures', 'house', 'roof', 'pitch'], 89))[0]?.subject).toBe('House');
  });
});

describe('parts that speak of one another', () => {
  test.each<[string, readonly (string | number)[], unknown]>([
    ['order.noRecord', ['structureOrder'], ['house', 'hedge', 'shed']],
    ['order.noRecord', ['cameraOrder'], ['C1', 'C2', 'toString-1']],
    ['order.unlisted', ['structureOrder'], ['house']],
    ['order.twice', ['structureOrder'], ['house', 'hedge', 'house']],
    ['situation.noStructure', ['situations', 'as-drawn', 'away'], ['shed']],
    ['situation.noOpening', ['situations', 'as-drawn', 'leaves'], { hatch: 'open' }],
    ['edition.unknown', ['settings', 'edition'], 'of-1066'],
    ['order.unlisted', ['lampOrder'], []],
    ['order.noRecord', ['patchOrder'], ['drive', 'ramp']],
    ['id.key', ['lamps', 'porch-lamp', 'id'], 'lamp'],
    ['ground.heights', ['ground'], { ...grid(2, 2), heights: [1, 2, 3] }],
    ['ground.cells', ['ground'], grid(100_000, 11)],
    ['photometry.rising', ['lamps', 'porch-lamp', 'light'], photometric([0, 45, 30], [0], [[9, 5, 1]])],
    ['photometry.count', ['lamps', 'porch-lamp', 'light'], photometric([0, 45], [0, 90], [[9, 5]])],
    ['photometry.count', ['lamps', 'porch-lamp', 'light'], photometric([0, 45], [0], [[9, 5, 1]])],
    ['looks.along', ['requirements', 'path', 'shape'], 'area'],
  ])('%s at %j refuses the plan', (code, path, value) => {
    expect(faultsOf(withAt(path, value)).map((fault) => fault.code)).toContain(code);
  });

  test('a structure and a camera may not share an id', () => {
    const plan = wholePlan();
    const hedge = plan.structures['hedge'];
    if (!hedge) throw new Error('the plan lost its hedge');
    const text = planText({
      ...plan,
      structures: { ...plan.structures, C1: { ...hedge, id: 'C1' } },
      structureOrder: [...plan.structureOrder, 'C1'],
    });
    expect(faultsOf(text)[0]).toMatchObject({ code: 'id.shared', given: 'C1', subject: 'Hedge' });
  });

  test('a camera whose wall is gone opens with a note and keeps its mount', () => {
    const read = readPlan(withAt(['cameras', 'C1', 'mount', 'host'], 'barn'));
    expect(read).toMatchObject({
      ok: true,
      notes: [{ code: 'mount.host', given: 'barn', subject: 'C1' }],
    });
    expect(read.ok && read.value.cameras['C1']?.mount).toMatchObject({ host: 'barn', height: 2.7 });
  });
});

test('a building ten kilometres wide is refused with the way to mend it', () => {
  const [fault] = faultsOf(
    withAt(
      ['structures', 'house', 'outline'],
      [
        [0, 0],
        [10_000, 0],
        [10_000, 6],
        [0, 6],
      ],
    ),
  );
  expect(fault).toMatchObject({ code: 'structure.vast', given: 10_000, subject: 'House' });
  expect(faultText(fault ?? { code: '', path: [] })).toContain('divide by 1000');
});

test('a key that no plan has is left out with a note', () => {
  const read = readPlan(withAt(['structures', 'house', 'colour'], 'red'));
  expect(read).toEqual({
    ok: true,
    value: wholePlan(),
    notes: [
      { code: 'value.extra', path: ['structures', 'house', 'colour'], given: 'colour', subject: 'House' },
    ],
  });
});

test('HTML in a name stays the text it is', () => {
  const name = '<img src=x onerror=alert(1)>';
  const read = readPlan(withAt(['structures', 'house', 'name'], name));
  expect(read.ok && read.value.structures['house']?.name).toBe(name);
});

test('ground by its heights opens as it was', () => {
  const ground = { ...grid(2, 3), heights: [0, null, 2, 2.5, null, 4] };
  const read = readPlan(withAt(['ground'], ground));
  expect(read).toMatchObject({ ok: true, notes: [] });
  expect(read.ok && read.value.ground).toEqual(ground);
});

test('a camera past the end of its wall opens with a note that says what fits', () => {
  const read = readPlan(withAt(['cameras', 'C1', 'mount', 'distance'], 11));
  expect(read).toMatchObject({
    ok: true,
    notes: [{ code: 'mount.distance', subject: 'C1', path: ['cameras', 'C1', 'mount', 'distance'] }],
  });
});
